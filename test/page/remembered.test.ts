import assert from 'node:assert/strict';
import { source } from './scenes.ts';
import { usePreview } from './use-preview.ts';

describe('The preview’s page goes on as the file was looked at last', () => {
  const preview = usePreview();
  const kept = { arrangement: 'apart', hiddenLayers: ['score'], hiddenPieces: ['name'], dock: 'closed' };

  it('when it is opened anew', async () => {
    await preview.open({ remembered: { kept } });
    assert.equal(await preview.page.locator('[data-layer=score]').getAttribute('aria-pressed'), 'false');
    assert.equal(await preview.page.locator('[data-arrangement=apart]').getAttribute('aria-pressed'), 'true');
    assert.equal(await preview.page.locator('#dock').isVisible(), false);
    assert.equal(await preview.page.locator('.piece[data-piece=name]').isVisible(), false);
  });

  it('and tells the host of every choice', async () => {
    await preview.open();
    await preview.toggleLayer('engrave');
    assert.deepEqual((await preview.messages()).at(-1), {
      type: 'keep',
      source,
      kept: { arrangement: 'assembled', hiddenLayers: ['beam', 'engrave'], hiddenPieces: [], dock: 'auto' },
    });
  });

  it('unless it was only hidden, and knows better', async () => {
    await preview.open();
    await preview.toggleLayer('engrave');
    const state = await preview.state();
    await preview.close();
    await preview.open({ state, remembered: { kept } });
    assert.equal(await preview.page.locator('[data-layer=score]').getAttribute('aria-pressed'), 'true');
    assert.equal(await preview.page.locator('[data-layer=engrave]').getAttribute('aria-pressed'), 'false');
  });
});

describe('The preview’s page shows true size', () => {
  const preview = usePreview();
  const widthOf = async (selector: string) => (await preview.page.locator(selector).boundingBox())!.width;
  /** The dialog closes a moment after its button is pressed. */
  const shownState = async () => {
    await preview.page.waitForFunction(() => window.recorded.messages.some(({ type }) => type === 'screen'));
    return (await preview.messages()).at(-1);
  };
  const measureScreen = async () => {
    await preview.page.locator('#zoom-button').click();
    await preview.page.getByRole('menuitem', { name: 'Measure this screen…' }).click();
  };
  const backing = '.shape[data-id="back/body-0"]';
  /** Drawn a frame or more after it was asked for: how many, the machine decides. */
  const comesTo = async (width: number) => {
    const deadline = Date.now() + 45_000;
    for (;;) {
      const seen = await widthOf(backing);
      if (Math.abs(seen - width) < 0.2) return;
      assert.ok(Date.now() < deadline, `it stays ${seen} px wide, not ${width}`);
      await preview.page.waitForTimeout(20);
    }
  };

  it('once the screen was measured with a card (ISO/IEC 7810, ID-1: 85.60 × 53.98 mm), and keeps that', async () => {
    await preview.open();
    await measureScreen();
    assert.match((await preview.page.locator('#screen-how').textContent())!, /card, lying/);
    // Stretched by keyboard to 428 px: 5 px a millimetre.
    const slider = preview.page.locator('#card-width');
    await slider.fill('427.5');
    await slider.press('ArrowRight');
    const card = (await preview.page.locator('#card').boundingBox())!;
    assert.ok(Math.abs(card.width / card.height - 85.6 / 53.98) < 0.01);
    await preview.page.getByRole('button', { name: 'Keep' }).click();
    const kept = (await shownState()) as { readonly type: string; readonly devicePixelsPerMm: number };
    assert.equal(kept.type, 'screen');
    // The slider goes in half pixels from where it begins.
    assert.ok(Math.abs(kept.devicePixelsPerMm - 5) < 0.25 / 85.6, `${kept.devicePixelsPerMm}`);
    await preview.transform();
    // 80 mm at 5 px a millimetre.
    await comesTo(400);
    assert.match((await preview.page.locator('#zoom-button').textContent())!, /^100/);
  });

  it('that another preview measured, or an earlier one', async () => {
    await preview.open({ remembered: { devicePixelsPerMm: 6 } });
    await preview.page.keyboard.press('1');
    await preview.transform();
    await comesTo(480);
    await preview.send({ type: 'screen', source, devicePixelsPerMm: 3 });
    await preview.page.keyboard.press('1');
    await preview.transform();
    await comesTo(240);
  });

  it('by the short side of the card where the panel is narrow, and as CSS has it when told to forget', async () => {
    await preview.open({ width: 300, remembered: { devicePixelsPerMm: 4 } });
    await measureScreen();
    assert.match((await preview.page.locator('#screen-how').textContent())!, /upright/);
    assert.ok(Math.abs((await widthOf('#card')) - 4 * 53.98) < 0.02, 'the slider begins at what there is');
    await preview.page.getByRole('button', { name: 'Forget' }).click();
    assert.deepEqual(await shownState(), { type: 'screen', source });
  });
});
