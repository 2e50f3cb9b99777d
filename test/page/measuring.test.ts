import assert from 'node:assert/strict';
import { sceneMessage, source } from './scenes.ts';
import { usePreview } from './use-preview.ts';

describe('The preview’s page measures', () => {
  const preview = usePreview();

  /** Where a point of the scene is on the screen: the backing is 80 mm wide and 30 mm high. */
  const place = async (x: number, y: number): Promise<[number, number]> => {
    const box = (await preview.page.locator('.shape[data-id="back/body-0"]').boundingBox())!;
    return [box.x + (x / 80) * box.width, box.y + ((y + 30) / 30) * box.height];
  };
  const figure = () => preview.page.locator('.ruler-tool text').textContent();

  it('with rulers whose zero is the corner of the tag, and a grid, shown and hidden by one button', async () => {
    await preview.open();
    const zero = preview.page.locator('.rulers text', { hasText: /^0$/ });
    const [x, y] = await place(0, -30);
    const [across, down] = [(await zero.first().boundingBox())!, (await zero.last().boundingBox())!];
    assert.ok(Math.abs(across.x - x) < 8, `${across.x} at ${x}`);
    assert.ok(Math.abs(down.y + down.height - y) < 8, `${down.y + down.height} at ${y}`);
    assert.equal(await preview.page.locator('.unit').textContent(), 'mm');
    await preview.toggleLayer('grid');
    assert.equal(await preview.page.locator('.rulers').isVisible(), false);
    assert.equal(await preview.page.locator('#grid').isVisible(), false);
  });

  it('from corner to corner with the ruler: the diagonal of 80 × 30 mm is 85.44 mm (Pythagoras)', async () => {
    await preview.open();
    await preview.page.getByRole('button', { name: 'Measure' }).click();
    const [from, to] = [await place(0.4, -29.6), await place(79.7, -0.3)];
    await preview.page.mouse.click(...from);
    await preview.page.mouse.click(...to);
    await preview.transform();
    assert.equal(await figure(), '85.44 mm (80.00 mm across, 30.00 mm down)');
    assert.equal(await preview.page.locator('#announcer').textContent(), '85.44 mm (80.00 mm across, 30.00 mm down)');
    assert.ok(!(await preview.messages()).some(({ type }) => type === 'reveal'), 'a click only measures');
    await preview.page.keyboard.press('Escape');
    await preview.transform();
    assert.equal(await preview.page.locator('.ruler-tool text').isVisible(), false);
    await preview.page.keyboard.press('Escape');
    assert.equal(await preview.page.locator('#measure').getAttribute('aria-pressed'), 'false');
  });

  it('from edge to edge by the shortest way', async () => {
    await preview.open();
    await preview.page.keyboard.press('m');
    await preview.page.mouse.click(...(await place(75, -29.8)));
    await preview.page.mouse.click(...(await place(75.4, -0.3)));
    await preview.transform();
    assert.equal(await figure(), '30.00 mm');
  });

  it('from the middle of a hole', async () => {
    await preview.open();
    await preview.page.keyboard.press('m');
    await preview.page.mouse.click(...(await place(5.4, -15.3)));
    await preview.page.mouse.click(...(await place(0.2, -15.2)));
    await preview.transform();
    assert.equal(await figure(), '5.00 mm');
  });

  it('by keyboard alone', async () => {
    await preview.open();
    const { keyboard } = preview.page;
    await keyboard.press('m');
    await keyboard.press('ArrowRight');
    await keyboard.press('Enter');
    for (let press = 0; press < 5; press++) await keyboard.press('Shift+ArrowDown');
    await keyboard.press('Enter');
    assert.match((await preview.page.locator('#announcer').textContent())!, /^\d+\.\d\d mm/);
  });

  it('the thinnest wall of each piece, unless a pin tells its width already', async () => {
    await preview.open();
    const walls = [
      { piece: 'back', width: 3, points: [[0, -15] as const, [3, -15] as const] as const },
      { piece: 'name', width: 0.92, points: [[32, -20] as const, [32, -19.08] as const] as const },
    ];
    await preview.send({ type: 'measures', source, version: 1, loads: [], walls, cutPaths: [] });
    const wallTexts = () => preview.page.locator('.dimension text', { hasText: 'thinnest' }).allTextContents();
    assert.deepEqual(await wallTexts(), ['thinnest 3.00 mm']);
    await preview.send(sceneMessage(2));
    assert.deepEqual(await wallTexts(), [], 'that of an older drawing is gone');
  });

  it('the path of the beam against the finished size, asked for when it is wanted, as wide as the kerf', async () => {
    await preview.open();
    await preview.toggleLayer('beam');
    assert.deepEqual((await preview.messages()).at(-1), { type: 'want-cut-paths', source, wanted: true });
    const cutPaths = [{ piece: 'back', kerf: 0.2, data: 'M-.1 -30.1l80.2 0 0 30.2 -80.2 0z' }];
    await preview.send({ type: 'measures', source, version: 1, loads: [], walls: [], cutPaths });
    const kerf = preview.page.locator('[data-piece=back] .kerf');
    await preview.page.waitForFunction(() => document.querySelector('[data-piece=back] .kerf[d^="M-.1"]'));
    assert.equal(await kerf.getAttribute('stroke-width'), '0.2');
    const [beam, finished] = await Promise.all(
      ['[data-piece=back] .middle', '.shape[data-id="back/body-0"]'].map((selector) =>
        preview.page.locator(selector).evaluate((path) => (path as SVGPathElement).getBBox().width),
      ),
    );
    assert.ok(Math.abs(beam! - finished! - 0.2) < 1e-4, 'half a kerf on either side');
    await preview.toggleLayer('beam');
    assert.equal(await kerf.isVisible(), false);
  });
});
