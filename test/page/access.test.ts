import assert from 'node:assert/strict';
import { usePreview } from './use-preview.ts';

describe('The preview’s page can be used by everyone', () => {
  const preview = usePreview();

  it('with the keyboard alone: one stop for each group, arrows inside', async () => {
    await preview.open();
    const stops: string[] = [];
    for (let press = 0; press < 12; press++) {
      await preview.page.keyboard.press('Tab');
      const group = await preview.page.evaluate(() => {
        const { activeElement } = document;
        return activeElement === document.body ? '' : activeElement!.closest('[id]')!.id;
      });
      if (group === '') break;
      stops.push(group);
    }
    assert.deepEqual(stops, ['arrangement', 'layers', 'stage', 'pins', 'summary', 'pieces', 'issues']);
    await preview.page.locator('[data-layer=cut-outer]').focus();
    await preview.page.keyboard.press('ArrowRight');
    assert.equal(
      await preview.page.evaluate(() => (document.activeElement as HTMLElement).dataset['layer']),
      'cut-inner',
    );
  });

  it('with every button named', async () => {
    await preview.open();
    const nameless = await preview.page.locator('button').evaluateAll((buttons) =>
      buttons
        .filter((button) => button.checkVisibility())
        .filter((button) => !button.getAttribute('aria-label') && !button.textContent.trim())
        .map((button) => button.outerHTML),
    );
    assert.deepEqual(nameless, []);
    assert.equal(await preview.page.getByRole('main').count(), 1);
  });

  it('by ear: a change is told in a sentence', async () => {
    await preview.open();
    await preview.page.waitForFunction(() => document.querySelector('#announcer')!.textContent !== '');
    const said = await preview.page.locator('#announcer').textContent();
    assert.equal(said, 'Drawing up to date, 2 pieces, 2 problems.');
  });

  it('in a panel 300 px wide: nothing is cut off', async () => {
    await preview.open({ width: 300, height: 640 });
    const beyond = await preview.page.locator('header button, #summary, #dock button, #stage').evaluateAll(
      (elements) =>
        elements.filter((element) => {
          const { left, right } = element.getBoundingClientRect();
          return element.checkVisibility() && (left < 0 || right > 300.5);
        }).length,
    );
    assert.equal(beyond, 0);
  });

  for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const) {
    it(`in the ${theme} theme: lines stand out from the canvas by 3:1 (WCAG 2.2, 1.4.11)`, async () => {
      await preview.open({ theme });
      await preview.page.locator('[data-layer=finish]').click();
      for (const operation of ['cut-outer', 'cut-inner', 'score', 'engrave']) {
        const [line, canvas] = await preview.page
          .locator(`.op-${operation} .line`)
          .first()
          .evaluate((element) => [getComputedStyle(element).stroke, getComputedStyle(document.body).backgroundColor]);
        const contrast = contrastOf(line, canvas);
        assert.ok(contrast >= 3, `${operation}: ${contrast.toFixed(2)}`);
      }
    });
  }

  it('without colours: each operation has a pattern of its own', async () => {
    await preview.open();
    const patterns = await preview.page.evaluate(() =>
      ['cut-outer', 'cut-inner', 'score', 'engrave'].map((operation) => {
        const { strokeWidth, strokeDasharray, fill } = getComputedStyle(
          document.querySelector(`.op-${operation} .line`)!,
        );
        return [strokeWidth, strokeDasharray, fill].join(' ');
      }),
    );
    assert.equal(new Set(patterns).size, 4);
    assert.match(patterns[3]!, /url\(.*#hatch/);
  });
});

/** WCAG 2.2, "contrast ratio" and "relative luminance". */
function contrastOf(a: string, b: string): number {
  const luminance = (css: string): number => {
    const [r, g, blue] = (css.match(/[\d.]+/g) ?? []).map((part) => {
      const value = Number(part) / 255;
      return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * blue!;
  };
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light! + 0.05) / (dark! + 0.05);
}
