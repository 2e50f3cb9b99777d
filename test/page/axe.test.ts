import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { sceneMessage, source } from './scenes.ts';
import type { Theme } from './themes.ts';
import { usePreview } from './use-preview.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const themes: readonly Theme[] = ['light', 'dark', 'high-contrast', 'high-contrast-light'];

describe('axe-core finds nothing wrong with the preview’s page (WCAG 2.2 A and AA, and good practice)', () => {
  const preview = usePreview();

  /** Runs it in the page's own world, as the policy of the page lets no script be added. */
  const violations = async (): Promise<string[]> => {
    await preview.transform();
    await preview.page.evaluate(axe);
    const { violations: found, passes } = await preview.page.evaluate<AxeResults>(
      'axe.run(document, { resultTypes: ["violations"] })',
    );
    assert.ok(passes.length > 15, 'it has looked');
    return found.flatMap(({ id, help, nodes }) => nodes.map(({ html }) => `${id}: ${help}: ${html}`));
  };

  for (const theme of themes) {
    it(`in the ${theme} theme`, async () => {
      const kept = { arrangement: 'assembled', hiddenLayers: [], hiddenPieces: [], dock: 'open' };
      await preview.open({ theme, remembered: { kept } });
      const load = {
        piece: 'back',
        headline: 'Bears 14 N',
        lines: ['For ten years: 8 N'],
        caution: 'An estimate.',
        rule: 'Try it.',
      };
      await preview.send({ type: 'measures', source, version: 1, loads: [load], walls: [], cutPaths: [] });
      await preview.send({ type: 'takes', source, version: 1, facts: [{ name: 'Cut', value: '160.6 mm' }] });
      await preview.page.locator('#takes').waitFor();
      assert.ok(await preview.page.locator('#caution').isVisible());
      assert.deepEqual(await violations(), []);
    });
  }

  it('with fixes open, something taken hold of, and the ruler out', async () => {
    await preview.open();
    await preview.page.locator('.pin').click();
    assert.deepEqual(await violations(), [], 'while fixes are tried');
    const titles = ['Thicken “word”: grow 0.30 mm'];
    await preview.send({ type: 'fixes', source, version: 1, pin: 'weak-bridge@shapes/word#0', titles });
    await preview.page.getByText(titles[0]!).waitFor();
    assert.deepEqual(await violations(), []);
    await preview.page.keyboard.press('Escape');
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('s');
    await preview.page.keyboard.press('m');
    await preview.page.keyboard.press('ArrowRight');
    assert.deepEqual(await violations(), []);
  });

  it('as a proof, exploded, out of date, with no drawing, and while the screen is measured', async () => {
    await preview.open();
    await preview.page.getByRole('button', { name: 'Exploded' }).click();
    await preview.page.getByRole('button', { name: 'Proof' }).click();
    assert.deepEqual(await violations(), []);
    await preview.send({ ...sceneMessage(2), stale: true });
    assert.deepEqual(await violations(), []);
    await preview.page.locator('#zoom-button').click();
    await preview.page.getByRole('menuitem', { name: 'Measure this screen…' }).click();
    assert.deepEqual(await violations(), []);
    await preview.page.keyboard.press('Escape');
    const { scene, ...rest } = sceneMessage(3);
    assert.ok(scene);
    await preview.send(rest);
    assert.deepEqual(await violations(), []);
  });

  it('with a menu open, and with the list of keys', async () => {
    await preview.open();
    for (const id of ['zoom-button', 'layers-button', 'more', 'export-button']) {
      await preview.page.locator(`#${id}`).click();
      await preview.page.locator(`#${id}-menu`).waitFor();
      assert.deepEqual(await violations(), [], id);
      await preview.page.keyboard.press('Escape');
    }
    await preview.page.keyboard.press('?');
    assert.deepEqual(await violations(), []);
  });

  it('with the tags of a batch', async () => {
    const batch = { labels: ['Sorrel', 'Dill', 'Borage'], row: 0 };
    await preview.open({}, { ...sceneMessage(), batch });
    const tag = { width: 80, height: 30, problems: 1, severity: 'warning', isHardToRead: true, isTall: true } as const;
    await preview.send({ type: 'batch', source, version: 1, tags: [tag, tag, tag] });
    await preview.page.locator('#batch-rows .severity').first().waitFor();
    assert.deepEqual(await violations(), []);
  });

  it('in a narrow panel', async () => {
    await preview.open({ width: 300, height: 560 });
    assert.deepEqual(await violations(), []);
  });
});
