import assert from 'node:assert/strict';
import { sceneMessage, source } from './scenes.ts';
import { usePreview } from './use-preview.ts';

describe('The preview’s page can be used by everyone', () => {
  const preview = usePreview();

  it('with the keyboard alone: one stop for each group, arrows inside', async () => {
    await preview.open({
      remembered: { kept: { arrangement: 'assembled', hiddenLayers: [], hiddenPieces: [], dock: 'open' } },
    });
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
    assert.deepEqual(stops, ['arrangement', 'stage', 'pins', 'summary', 'issues', 'pieces']);
    await preview.page.locator('[data-zoom=fit]').focus();
    await preview.page.keyboard.press('ArrowRight');
    assert.equal(await preview.page.evaluate(() => document.activeElement!.id), 'layers-button');
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
    const announced = await preview.page.locator('#announcer').textContent();
    assert.equal(announced, 'Drawing up to date, 2 pieces, 2 problems.');
  });

  it('by ear: the drawing says what the tag is, how large, of what, and what is wrong with it, the worst first', async () => {
    await preview.open();
    assert.equal(
      await preview.page.getByRole('img').getAttribute('aria-label'),
      'Sorrel · 80.0 × 30.0 mm (3.15 × 1.181 in) · birch plywood, 3.0 mm. Drawing up to date, 2 pieces, 2 problems. ' +
        'error, line 4: There is no such font. warning, line 9: The neck between two parts is 0.92 mm wide.',
    );
    assert.equal(await preview.page.getByRole('heading', { level: 1 }).textContent(), 'Sorrel');
  });

  it('with what the spec accepts told quietly, and why', async () => {
    const accepted = [
      { id: 'a', code: 'speck', message: 'A speck of 0.3 mm.', reason: 'it is a seed', line: 12, source: 300 },
    ];
    await preview.open({}, { ...sceneMessage(), accepted });
    const details = preview.page.locator('#accepted');
    assert.equal(await details.locator('summary').textContent(), '1 accepted');
    assert.equal(await details.getByText('it is a seed').isVisible(), false);
    await details.locator('summary').click();
    assert.equal(await details.locator('.reason').textContent(), 'Accepted: it is a seed');
    await details.getByRole('button').press('Enter');
    assert.deepEqual((await preview.messages()).at(-1), { type: 'reveal', source, offset: 300, focus: true });
    await preview.send(sceneMessage(2));
    assert.equal(await details.isVisible(), false);
  });

  it('in a panel 300 px wide: nothing is cut off', async () => {
    await preview.open({ width: 300, height: 640 });
    // Tools that have no room go into a menu once the page has been measured.
    await preview.page.waitForFunction(() =>
      [...document.querySelectorAll('header button, #summary, #dock button, #stage')].every((element) => {
        const { left, right } = element.getBoundingClientRect();
        return !element.checkVisibility() || (left >= 0 && right <= 300.5);
      }),
    );
  });

  for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const) {
    it(`in the ${theme} theme: lines stand out from the canvas by 3:1 (WCAG 2.2, 1.4.11)`, async () => {
      await preview.open({ theme });
      await preview.toggleLayer('finish');
      await preview.toggleLayer('beam');
      const cutPaths = [{ piece: 'back', kerf: 0.2, data: 'M0 0l9 0 0 9z' }];
      await preview.send({ type: 'measures', source, version: 1, loads: [], walls: [], cutPaths });
      const lines = ['cut-outer', 'cut-inner', 'score', 'engrave'].map((operation) => `.op-${operation} .line`);
      for (const operation of [...lines, '.beam .middle']) {
        const [line, canvas] = await preview.page
          .locator(operation)
          .first()
          .evaluate((element) => [getComputedStyle(element).stroke, getComputedStyle(document.body).backgroundColor]);
        const contrast = contrastOf(line, canvas);
        assert.ok(contrast >= 3, `${operation}: ${contrast.toFixed(2)}`);
      }
    });
  }

  for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const) {
    it(`in the ${theme} theme: what is written on the drawing stands out from it by 4.5:1 (WCAG 2.2, 1.4.3)`, async () => {
      await preview.open({ theme });
      await preview.page.locator('#stage').focus();
      await preview.page.keyboard.press('s');
      await preview.transform();
      const written = ['.rulers text', '.dimension text', '.words', '.unit', '#caption'];
      const colours = await preview.page.evaluate(
        (selectors) =>
          selectors.map((selector) => {
            const { fill, color } = getComputedStyle(document.querySelector(selector)!);
            return [selector.startsWith('#') ? color : fill, getComputedStyle(document.body).backgroundColor] as const;
          }),
        written,
      );
      colours.forEach(([text, canvas], index) => {
        const contrast = contrastOf(overlaid(text, canvas), canvas);
        assert.ok(contrast >= 4.5, `${written[index]!}: ${contrast.toFixed(2)}`);
      });
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

/** A colour with an alpha on an opaque one. */
function overlaid(css: string, canvas: string): string {
  const [r, g, b, alpha = 1] = (css.match(/[\d.]+/g) ?? []).map(Number);
  const below = (canvas.match(/[\d.]+/g) ?? []).map(Number);
  const mixed = [r, g, b].map((part, index) => part! * alpha + below[index]! * (1 - alpha));
  return `rgb(${mixed.join(', ')})`;
}

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
