import assert from 'node:assert/strict';
import { usePreview } from './use-preview.ts';
import { sceneMessage } from './scenes.ts';
import type { SceneMessage } from '../../src/protocol/preview.ts';
import type { ScenePin } from '../../src/protocol/scene.ts';

const hangs: ScenePin = {
  id: 'hangs-askew@pieces/back/hanger/hole#0',
  code: 'hangs-askew',
  severity: 'info',
  message: 'Hangs askew, turned 7° clockwise: it balances 4.30 mm below the hole.',
  piece: 'back',
  points: [
    [7, -15],
    [40.5, -10.7],
  ],
  angle: 7.3,
  line: 12,
  source: 130,
};

function hangingScene(): SceneMessage {
  const message = sceneMessage();
  return { ...message, pins: [...message.pins, hangs] };
}

describe('The preview’s page draws the plumb line', () => {
  const preview = usePreview();

  it('of a tag that hangs askew, dashed, through what holds it and its balance, with the angle', async () => {
    await preview.open({}, hangingScene());
    const line = preview.page.locator('.pin-mark.plumb .bar');
    assert.equal(await line.isVisible(), true);
    assert.notEqual(await line.evaluate((element) => getComputedStyle(element).strokeDasharray), 'none');
    const label = preview.page.locator('.pin', { hasText: '7°' });
    assert.equal(await label.getAttribute('aria-label'), `info: ${hangs.message} Line 12.`);
    // In the picture's own pixels: its box holds the line from one point to the other, and goes on a little beyond.
    const [box, stage] = await Promise.all([line.boundingBox(), preview.page.locator('#stage').boundingBox()]);
    const scale = (await preview.page.locator('[data-id="back/hanger-0"]').boundingBox())!.width / 4;
    assert.ok(box && stage);
    const along = Math.hypot(33.5, 4.3) * scale;
    assert.ok(box.width > along && box.width < along + 50, `${box.width} for ${along}`);
  });

  it('for no other problem, and not while its piece or the warnings are hidden', async () => {
    await preview.open();
    assert.equal(await preview.page.locator('.pin-mark.plumb').count(), 0);
    const kept = { arrangement: 'assembled', hiddenLayers: [], hiddenPieces: ['back'], dock: 'open' };
    await preview.open({ remembered: { kept } }, hangingScene());
    assert.equal(await preview.page.locator('.pin-mark.plumb').count(), 0);
    await preview.open({}, hangingScene());
    await preview.toggleLayer('warnings');
    assert.equal(await preview.page.locator('.pin-mark.plumb .bar').isVisible(), false);
  });

  it('in every theme in a colour of its own', async () => {
    await preview.open({}, hangingScene());
    for (const theme of ['vscode-dark', 'vscode-light', 'vscode-high-contrast', 'vscode-high-contrast-light']) {
      await preview.page.evaluate((name) => {
        document.body.className = name;
      }, theme);
      const stroke = await preview.page
        .locator('.pin-mark.plumb .bar')
        .evaluate((element) => getComputedStyle(element).stroke);
      assert.match(stroke, /^(rgb|color)/, theme);
    }
  });
});
