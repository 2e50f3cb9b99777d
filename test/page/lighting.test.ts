import assert from 'node:assert/strict';
import { source } from './scenes.ts';
import { themes, type Theme } from './themes.ts';
import { usePreview } from './use-preview.ts';

const ids = ['back/mark-0', 'back/body-0', 'back/hanger-0'];
const lit = ['.part.lit .hit', '.shape.lit', '.hanger.lit'];

describe('The preview’s page lights up what the cursor stands in', () => {
  const preview = usePreview();

  /** Lights them; all animations stop in the turn in which they begin, as a slow machine may come too late for them. */
  const light = async (): Promise<void> => {
    await preview.page.evaluate(
      ({ message, count }) =>
        new Promise<void>((resolve) => {
          const look = (): void => {
            if (document.querySelectorAll('.lit').length !== count) return;
            observer.disconnect();
            for (const animation of document.getAnimations()) animation.pause();
            resolve();
          };
          const observer = new MutationObserver(look);
          observer.observe(document.body, { subtree: true, attributeFilter: ['class'] });
          window.postMessage(message, '*');
        }),
      { message: { type: 'highlight', source, ids, follow: false }, count: ids.length },
    );
  };

  /** What is computed of each at moments of its animation, which stands still at each of them. */
  const sampled = () =>
    preview.page.evaluate(
      (selectors) =>
        selectors.map((selector) => {
          const element = document.querySelector(selector)!;
          const [animation] = element.getAnimations();
          return Array.from({ length: 29 }, (_, step) => {
            if (animation) animation.currentTime = step * 50;
            const { stroke, strokeOpacity, strokeWidth } = getComputedStyle(element);
            return { stroke, opacity: Number(strokeOpacity), width: Number.parseFloat(strokeWidth) };
          });
        }),
      lit,
    );

  for (const theme of Object.keys(themes) as Theme[]) {
    it(`in one colour from first to last, in the ${theme} theme: only width and density fade`, async () => {
      await preview.open({ theme });
      await light();
      const focus = themes[theme].variables['--vscode-focusBorder']!;
      const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(focus.slice(at, at + 2), 16));
      for (const [index, steps] of (await sampled()).entries()) {
        for (const { stroke } of steps) assert.equal(stroke, `rgb(${red}, ${green}, ${blue})`, lit[index]);
        const widths = steps.map(({ width }) => width);
        assert.ok(widths[0]! > widths.at(-1)!, `${lit[index]}: ${widths.join(' ')}`);
        // Downhill all the way: nothing flickers.
        for (const of of ['width', 'opacity'] as const) {
          steps.slice(1).forEach((step, at) => {
            assert.ok(step[of] <= steps[at]![of] + 1e-3, `${lit[index]}: ${of} at ${at}`);
          });
        }
      }
    });
  }

  it('at once and at rest where motion is reduced, by the system or by the editor', async () => {
    for (const way of ['system', 'editor'] as const) {
      await preview.open({ reducedMotion: way === 'system' });
      if (way === 'editor')
        await preview.page.evaluate(() => {
          document.body.classList.add('vscode-reduce-motion');
        });
      await light();
      assert.equal(await preview.page.evaluate(() => document.getAnimations().length), 0, way);
      for (const steps of await sampled()) assert.equal(steps[0]!.width, 4, way);
      await preview.close();
    }
  });

  it('and no style sheet animates a colour', async () => {
    await preview.open();
    const moving = await preview.page.evaluate(() => {
      const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
      const inKeyframes = rules
        .filter((rule) => rule instanceof CSSKeyframesRule)
        .flatMap((rule) => [...rule.cssRules] as CSSKeyframeRule[])
        .flatMap(({ style }) => [...style]);
      const inTransitions = rules
        .filter((rule) => rule instanceof CSSStyleRule)
        .flatMap(({ style }) => style.transitionProperty.split(', '))
        .filter((name) => name !== '' && name !== 'none');
      return [...new Set([...inKeyframes, ...inTransitions])];
    });
    assert.ok(moving.includes('stroke-width') && moving.includes('transform'), moving.join(' '));
    const still = ['stroke-width', 'stroke-opacity', 'opacity', 'transform', 'translate'];
    for (const name of moving) assert.ok(still.includes(name), `${name} is animated`);
  });
});
