import assert from 'node:assert/strict';
import { sceneMessage } from './scenes.ts';
import { usePreview } from './use-preview.ts';

describe('The preview’s page takes a tag apart', () => {
  const preview = usePreview();
  const box = async (selector: string) => (await preview.page.locator(selector).boundingBox())!;

  it('layer by layer: what is glued on is lifted clear of what it lies on, with lines down to its place', async () => {
    await preview.open({ reducedMotion: true });
    const together = await box('.shape[data-id="name/body-0"]');
    const scaleBefore = together.width;
    await preview.page.getByRole('button', { name: 'Exploded' }).click();
    await preview.transform();
    const [upper, lower] = [await box('.shape[data-id="name/body-0"]'), await box('.shape[data-id="back/body-0"]')];
    assert.ok(upper.y + upper.height < lower.y, 'above, and apart');
    assert.ok(upper.width > 0 && scaleBefore > 0);
    const share = (upper.x - lower.x) / lower.width;
    assert.ok(Math.abs(share - 12 / 80) < 0.01, 'straight above its place, 12 mm from the left of 80');
    const leaders = (await preview.page.locator('.leaders').getAttribute('d'))!;
    assert.equal(leaders.match(/M/g)?.length, 2);
    assert.equal(await preview.page.locator('.dimension').count(), 3, 'the sizes of the lowest layer, and its hole');
  });

  it('only where there are layers', async () => {
    const { scene, ...rest } = sceneMessage();
    const [back, name] = scene!.pieces;
    const { glueTo, ...loose } = name!;
    assert.equal(glueTo, 'back');
    await preview.open({}, { ...rest, scene: { ...scene!, pieces: [back!, loose] } });
    assert.equal(await preview.page.getByRole('button', { name: 'Exploded' }).isVisible(), false);
    assert.equal(await preview.page.getByRole('button', { name: 'Apart' }).isVisible(), true);
  });
});

describe('The preview’s page shows a proof', () => {
  const preview = usePreview();

  it('with nothing but the finished look, and what it is, how large and of what', async () => {
    await preview.open();
    await preview.toggleLayer('finish');
    await preview.page.locator('#stage').press('p');
    for (const selector of ['.op-cut-outer .line', '.pin', '.dimension', '.rulers', '#grid']) {
      assert.equal(await preview.page.locator(selector).first().isVisible(), false, selector);
    }
    for (const selector of ['.finish', '.burn']) {
      assert.equal(await preview.page.locator(selector).first().isVisible(), true, selector);
    }
    assert.equal(
      await preview.page.locator('#caption').textContent(),
      'Sorrel · 80.0 × 30.0 mm (3.15 × 1.181 in) · birch plywood, 3.0 mm',
    );
    await preview.page.getByRole('button', { name: 'Proof' }).click();
    assert.equal(await preview.page.locator('.rulers').isVisible(), true);
    assert.equal(await preview.page.locator('#caption').isVisible(), false);
  });

  it('in the colours of the sheet: acrylic shines, wood has its grain', async () => {
    await preview.open();
    const look = async () => ({
      grain: await preview.page
        .locator('#grain path')
        .first()
        .evaluate((path) => getComputedStyle(path).stroke),
      gloss: await preview.page.locator('.gloss').first().isVisible(),
    });
    const wood = await look();
    assert.equal(wood.gloss, false);
    assert.notEqual(wood.grain, 'rgba(0, 0, 0, 0)');
    const { scene, ...rest } = sceneMessage(2);
    await preview.send({ ...rest, scene: { ...scene!, material: 'blue acrylic' } });
    assert.deepEqual(await look(), { grain: 'rgba(0, 0, 0, 0)', gloss: true });
    const solid = await preview.page
      .locator('.solid')
      .first()
      .evaluate((path) => getComputedStyle(path).fill);
    assert.equal(solid, 'rgb(58, 111, 176)');
  });
});
