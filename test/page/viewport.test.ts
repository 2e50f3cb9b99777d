import assert from 'node:assert/strict';
import { usePreview } from './use-preview.ts';
import { sceneMessage, source } from './scenes.ts';

describe('The preview’s page has a viewport that updates leave alone', () => {
  const preview = usePreview();

  it('once the person has zoomed', async () => {
    await preview.open();
    await preview.page.getByRole('button', { name: 'Zoom in' }).click();
    const zoomed = await preview.transform();
    await preview.send(sceneMessage(2, 160));
    assert.equal(await preview.transform(), zoomed);
  });

  it('and fits until then, and again when told to', async () => {
    await preview.open();
    const fitted = await preview.transform();
    await preview.send(sceneMessage(2, 160));
    const wider = await preview.transform();
    assert.notEqual(wider, fitted);
    await preview.page.mouse.move(300, 200);
    await preview.page.mouse.down();
    await preview.page.mouse.move(360, 230, { steps: 4 });
    await preview.page.mouse.up();
    assert.notEqual(await preview.transform(), wider);
    await preview.page.getByRole('button', { name: 'Fit' }).click();
    assert.equal(await preview.transform(), wider);
  });

  it('and keeps below what covers it from above, as long as that is there', async () => {
    await preview.open({ height: 800 });
    const fitted = await preview.transform();
    const stage = (await preview.page.locator('#stage').boundingBox())!;
    const tops: number[] = [];
    for (const rows of [2, 9, 200]) {
      await preview.send({ type: 'covered', source, rows });
      await preview.transform();
      const shape = (await preview.page.locator('.shape[data-id="back/body-0"]').boundingBox())!;
      const least = Math.min(22 * rows, 0.4 * 800);
      assert.ok(shape.y > least && shape.y + shape.height < stage.y + stage.height, JSON.stringify(shape));
      tops.push(shape.y);
    }
    assert.ok(
      tops[0]! < tops[1]! - 40 && tops[1]! < tops[2]! - 40,
      `a short list leaves more room: ${tops.join(', ')}`,
    );
    await preview.send({ type: 'covered', source, rows: 0 });
    assert.equal(await preview.transform(), fitted);
  });

  it('that the wheel zooms at the pointer with Ctrl, and without it does not touch while all fits', async () => {
    await preview.open();
    const fitted = await preview.transform();
    await preview.page.mouse.move(200, 180);
    await preview.page.mouse.wheel(0, 200);
    assert.equal(await preview.transform(), fitted);
    await preview.page.keyboard.down('Control');
    await preview.page.mouse.wheel(0, -200);
    await preview.page.keyboard.up('Control');
    assert.notEqual(await preview.transform(), fitted);
  });

  it('that the keyboard moves, zooms and fits', async () => {
    await preview.open();
    await preview.page.locator('#stage').focus();
    const seen = [await preview.transform()];
    for (const key of ['ArrowLeft', 'ArrowUp', '+', '1']) {
      await preview.page.keyboard.press(key);
      seen.push(await preview.transform());
    }
    assert.equal(new Set(seen).size, seen.length);
    await preview.page.keyboard.press('0');
    assert.equal(await preview.transform(), seen[0]);
  });

  it('that shows a drawing at its size: 80 mm are 302.4 px (CSS Values)', async () => {
    await preview.open();
    await preview.page.keyboard.press('1');
    await preview.transform();
    const box = await preview.page.locator('.shape[data-id="back/body-0"]').boundingBox();
    assert.ok(Math.abs(box!.width - 302.36) < 0.2, `${box!.width}`);
  });

  it('that comes back with all other choices when the page is made anew', async () => {
    await preview.open();
    await preview.toggleLayer('score');
    await preview.page.locator('#summary').click();
    await preview.page.getByRole('button', { name: 'Apart' }).click();
    await preview.page.getByRole('button', { name: 'Show Letters' }).click();
    await preview.page.getByRole('button', { name: 'Zoom in' }).click();
    const [transform, state] = [await preview.transform(), await preview.state()];
    await preview.close();
    await preview.open({ state });
    assert.equal(await preview.transform(), transform);
    assert.equal(await preview.page.locator('[data-layer=score]').getAttribute('aria-pressed'), 'false');
    assert.equal(await preview.page.locator('.piece[data-piece=name]').isVisible(), false);
  });

  it('that follows the cursor only to what is out of sight, and only when it may', async () => {
    await preview.open();
    await preview.page.locator('#stage').focus();
    for (let press = 0; press < 30; press++) await preview.page.keyboard.press('ArrowLeft');
    const away = await preview.transform();
    const highlight = { type: 'highlight', source, ids: ['name/outer'], follow: false } as const;
    await preview.send(highlight);
    assert.equal(await preview.transform(), away);
    await preview.send({ ...highlight, follow: true });
    const back = await preview.transform();
    assert.notEqual(back, away);
    await preview.send({ ...highlight, ids: ['back/outer'], follow: true });
    assert.equal(await preview.transform(), back);
  });

  it('that two fingers zoom, at the place between them', async () => {
    await preview.open();
    const scaleOf = (transform: string) => Number(/scale\(([\d.]+)\)/.exec(transform)![1]);
    const before = scaleOf(await preview.transform());
    const client = await preview.page.context().newCDPSession(preview.page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', half: number) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints:
          type === 'touchEnd'
            ? []
            : [
                { x: 380 - half, y: 200, id: 1 },
                { x: 380 + half, y: 200, id: 2 },
              ],
      });
    await touch('touchStart', 60);
    for (const half of [75, 95, 120]) await touch('touchMove', half);
    await touch('touchEnd', 0);
    const after = scaleOf(await preview.transform());
    // The fingers end twice as far apart; what they moved before it counted as a drag is not in it.
    assert.ok(after > 1.4 * before && after < 2.1 * before, `${before} → ${after}`);
  });
});
