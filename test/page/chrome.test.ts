/** How much of the page is the drawing’s, and the tools that share one row above it. */

import assert from 'node:assert/strict';
import type { SceneMessage } from '../../src/protocol/preview.ts';
import type { ScenePin } from '../../src/protocol/scene.ts';
import { sceneMessage, source } from './scenes.ts';
import { usePreview } from './use-preview.ts';

/** Of the window’s: a panel has what the editor leaves of it. */
const sizes = [
  [1500, 900],
  [1700, 900],
  [900, 700],
  [600, 700],
  [541, 700],
  [430, 600],
  [300, 600],
  [250, 600],
] as const;

const well = (version = 1): SceneMessage => ({ ...sceneMessage(version), pins: [] });
const load = {
  piece: 'back',
  headline: 'Bears 14 N',
  lines: ['For ten years: 8 N'],
  caution: 'An estimate from figures.',
  rule: 'Try it on scrap.',
};
const read = ['Strength is an estimate at best. Try it on scrap.'];

/** As long as problems are when they say what is where. */
function manyProblems(): ScenePin[] {
  const pin = sceneMessage().pins.at(-1);
  const message = 'Thin strokes: 12 of them, 134 mm in all and 0.53 mm at the narrowest at “s”; minimum 1.50 mm.';
  return Array.from({ length: 12 }, (_, nth) => ({ ...pin!, id: `pin-${nth}`, message, line: nth + 1 }));
}

describe('The preview’s page leaves the height to the drawing', () => {
  const preview = usePreview();

  const share = () =>
    preview.page.evaluate(() => document.querySelector('main')!.getBoundingClientRect().height / window.innerHeight);

  for (const [width, height] of sizes) {
    it(`at ${width} × ${height}: four fifths when all is well, three fifths with a dozen problems`, async () => {
      await preview.open({ width, height, remembered: { cautions: read } }, well());
      await preview.send({ type: 'measures', source, version: 1, loads: [load], walls: [], cutPaths: [] });
      assert.equal(await preview.page.locator('#caution').isVisible(), false);
      assert.ok((await share()) > 0.8, `${await share()}`);
      await preview.close();
      await preview.open({ width, height }, { ...well(), pins: manyProblems() });
      assert.ok((await share()) > 0.6, `${await share()}`);
      assert.equal(await preview.page.locator('#issues').isVisible(), true);
      assert.equal(await preview.page.locator('#pieces').isVisible(), false);
    });

    it(`at ${width} × ${height}: the tools are one row, and none is cut off`, async () => {
      await preview.open({ width, height, remembered: { exports: 'sheets' } });
      await preview.transform();
      const boxes = await preview.page.locator('#tools button').evaluateAll((buttons) =>
        buttons
          .filter((button) => button.checkVisibility())
          .map((button) => button.getBoundingClientRect())
          .map(({ top, bottom, left, right }) => ({ top, bottom, left, right })),
      );
      for (const { top, bottom, left, right } of boxes) {
        assert.ok(top >= 0 && bottom <= 36 && left >= 0 && right <= width, `${left}–${right}, ${top}–${bottom}`);
      }
      // WCAG 2.2, 2.5.8: targets of 24 px, or as far apart.
      boxes.sort((a, b) => a.left - b.left);
      boxes.slice(1).forEach((box, index) => {
        assert.ok(box.left >= boxes[index]!.right - 0.5, 'none lies on another');
      });
      assert.ok(boxes.length >= 5);
    });
  }

  it('with larger letters too', async () => {
    await preview.open({ width: 600, height: 700 }, well());
    await preview.page.evaluate(() => {
      document.documentElement.style.setProperty('--vscode-font-size', '20px');
    });
    await preview.transform();
    const right = await preview.page
      .locator('#export-button')
      .evaluate((button) => button.getBoundingClientRect().right);
    assert.ok(right <= 600, `${right}`);
  });

  it('opens on problems once they have stood for a moment, as high as they need, and folds when they are gone', async () => {
    await preview.open({ pausesHeld: true }, well());
    const dock = preview.page.locator('#dock');
    assert.equal(await dock.isVisible(), false);
    assert.match(await preview.page.locator('#summary').innerText(), /No problems$/);
    await preview.send(sceneMessage(2));
    assert.equal(await dock.isVisible(), false, 'it does not jump while one types');
    const before = await preview.transform();
    await preview.elapse();
    assert.equal(await dock.isVisible(), true);
    assert.equal(await preview.transform(), before, 'the drawing stays where there is room for both');
    const { height } = (await dock.boundingBox())!;
    const row = (await preview.page.locator('#issues li').first().boundingBox())!;
    assert.ok(height < 3.5 * row.height, `${height} for two rows of ${row.height}`);
    await preview.send(well(3));
    await preview.elapse();
    assert.equal(await dock.isVisible(), false);
  });

  it('but stays as someone has it: opened, or folded with problems left', async () => {
    await preview.open();
    const summary = preview.page.locator('#summary');
    const shows = () => preview.page.locator('#dock').getAttribute('data-shows');
    assert.deepEqual([await shows(), await summary.getAttribute('aria-expanded')], ['problems', 'false']);
    await summary.click();
    assert.deepEqual([await shows(), await summary.getAttribute('aria-expanded')], ['all', 'true']);
    await summary.click();
    assert.equal(await shows(), 'nothing');
    const kept = (await preview.messages()).at(-1)!;
    assert.ok(kept.type === 'keep' && kept.kept.dock === 'closed');
    await summary.click();
    await preview.send(well(2));
    await summary.click();
    const then = (await preview.messages()).at(-1)!;
    assert.ok(then.type === 'keep' && then.kept.dock === 'auto', 'all is well: it opens again by itself');
  });

  for (const width of [760, 541, 460, 400, 300, 270, 240]) {
    it(`tells each fact wholly or not at all, and all in its name, at ${width}`, async () => {
      await preview.open({ width });
      const summary = preview.page.locator('#summary');
      assert.match((await summary.textContent())!, /80\.0 × 30\.0 mm.*2 pieces.*parts.*hole.*3\.15 × 1\.181 in/);
      const facts = await summary.locator('.facts').evaluate((line) => {
        const row = line.getBoundingClientRect();
        return [...line.children].map((fact) => {
          const { top, right } = fact.getBoundingClientRect();
          return { isBelow: top >= row.bottom - 1, isWithin: right <= row.right + 0.5 };
        });
      });
      assert.ok(facts.every(({ isBelow, isWithin }) => isBelow || isWithin, JSON.stringify(facts)));
    });
  }

  it('tells the size of a single piece once', async () => {
    const { scene, ...rest } = well();
    await preview.open({}, { ...rest, scene: { ...scene!, pieces: scene!.pieces.slice(0, 1) } });
    await preview.page.locator('#summary').click();
    const footer = await preview.page.locator('footer').innerText();
    assert.equal(footer.match(/80\.0 × 30\.0 mm/g)?.length, 1);
  });
});

describe('The preview’s page warns of hanging things by an estimate', () => {
  const preview = usePreview();
  const caution = () => preview.page.locator('#caution');
  const measures = { type: 'measures', source, version: 1, loads: [load], walls: [], cutPaths: [] } as const;

  it('until someone has said that they have read it, and that is kept', async () => {
    await preview.open({}, well());
    assert.equal(await caution().isVisible(), false, 'nothing is told of strength yet');
    await preview.send(measures);
    await caution().waitFor();
    assert.equal(await caution().locator('span').textContent(), read[0]);
    await caution().getByRole('button').click();
    assert.equal(await caution().isVisible(), false);
    assert.equal(await preview.page.evaluate(() => document.activeElement!.id), 'summary');
    assert.deepEqual((await preview.messages()).at(-1), { type: 'read-caution', source, caution: read[0] });
    await preview.send(well(2));
    await preview.send({ ...measures, version: 2 });
    assert.equal(await caution().isVisible(), false);
  });

  it('again where it says something else', async () => {
    await preview.open({ remembered: { cautions: ['Another.'] } }, well());
    await preview.send(measures);
    await caution().waitFor();
  });

  it('and not again when files are made, whose menu has it', async () => {
    await preview.open({ remembered: { cautions: read } }, well());
    await preview.send(measures);
    const stage = await preview.page.locator('#stage').boundingBox();
    await preview.page.locator('#export').click();
    assert.equal(await caution().isVisible(), false);
    assert.deepEqual(await preview.page.locator('#stage').boundingBox(), stage, 'the drawing stays where it is');
    await preview.page.locator('#export-button').click();
    assert.equal(await preview.page.locator('.menu:visible .note').textContent(), read[0]);
  });
});

describe('The menus of the preview', () => {
  const preview = usePreview();
  const focused = () => preview.page.evaluate(() => document.activeElement!.textContent);
  const isOpen = (id: string) => preview.page.locator(`#${id}-menu`).isVisible();

  it('open by keyboard, are walked through by arrows and letters, and give the focus back', async () => {
    await preview.open();
    const { keyboard } = preview.page;
    await preview.page.locator('#layers-button').focus();
    await keyboard.press('ArrowDown');
    assert.equal(await preview.page.locator('#layers-button').getAttribute('aria-expanded'), 'true');
    assert.match(await focused(), /Outer cut/);
    await keyboard.press('ArrowUp');
    assert.match(await focused(), /Grid/);
    await keyboard.press('Home');
    await keyboard.press('s');
    assert.match(await focused(), /Score/);
    await keyboard.press('s');
    assert.match(await focused(), /Sizes/);
    assert.equal(await preview.page.locator('.selection path').count(), 0, 'the letter was not the page’s');
    await keyboard.press('Space');
    assert.equal(await isOpen('layers-button'), true, 'there may be more to switch');
    assert.match(await focused(), /Sizes/);
    assert.equal(await preview.page.locator('.dimension text').first().isVisible(), false);
    await keyboard.press('Escape');
    assert.equal(await isOpen('layers-button'), false);
    assert.equal(await preview.page.evaluate(() => document.activeElement!.id), 'layers-button');
    await keyboard.press('ArrowUp');
    assert.match(await focused(), /Grid/);
    await keyboard.press('Tab');
    assert.equal(await isOpen('layers-button'), false);
    assert.equal(await preview.page.evaluate(() => document.activeElement!.id), 'stage');
  });

  it('close when something else is pressed', async () => {
    await preview.open();
    await preview.page.locator('#zoom-button').click();
    assert.equal(await isOpen('zoom-button'), true);
    await preview.page.locator('#layers-button').click();
    assert.deepEqual([await isOpen('zoom-button'), await isOpen('layers-button')], [false, true]);
    await preview.page.locator('#layers-button').click();
    assert.equal(await isOpen('layers-button'), false);
  });

  it('make files of every kind, and the button repeats the last', async () => {
    await preview.open({ remembered: { exports: 'sheets' } });
    const button = preview.page.locator('#export');
    assert.equal(await button.textContent(), 'Export sheets…');
    await preview.page.locator('#export-button').click();
    const menu = (await preview.page.locator('#export-button-menu').innerText()).replaceAll(/\s+/g, ' ');
    for (const what of ['SVG', 'proof for the customer', 'job sheet', 'assembly sheet', 'DXF', 'PDF', 'PNG'])
      assert.ok(menu.includes(what), `${what} in ${menu}`);
    await preview.page.getByRole('menuitem', { name: /^Pack/ }).click();
    assert.equal(await button.textContent(), 'Make a pack…');
    await button.click();
    const made = (await preview.messages()).filter(({ type }) => type === 'export');
    assert.deepEqual(made, [
      { type: 'export', source, what: 'pack' },
      { type: 'export', source, what: 'pack' },
    ]);
    await preview.page.locator('#export-button').click();
    await preview.page.getByRole('menuitem', { name: /^New job/ }).click();
    assert.equal((await preview.messages()).filter(({ type }) => type === 'export').length, 3);
    assert.equal(await button.textContent(), 'Make a pack…', 'a tag has one job');
    const { scene, ...rest } = sceneMessage(2);
    assert.ok(scene);
    await preview.send(rest);
    assert.deepEqual(
      [await button.isDisabled(), await preview.page.locator('#export-button').isDisabled()],
      [true, true],
    );
  });

  it('tell in a narrow page too what there is besides a proof', async () => {
    await preview.open({ width: 340 });
    await preview.page.locator('#export-button').click();
    const hint = preview.page.locator('#export-button-menu .hint', { hasText: 'assembly sheet' });
    const [menu, box] = [
      (await preview.page.locator('.menu:visible').boundingBox())!,
      await hint.evaluate((words) => {
        const { left, right } = words.getBoundingClientRect();
        return { left, right, isCut: words.scrollWidth > words.clientWidth + 1 };
      }),
    ];
    assert.ok(!box.isCut && box.left >= menu.x && box.right <= menu.x + menu.width, JSON.stringify([menu, box]));
  });

  it('have what the row has no room for', async () => {
    await preview.open({ width: 300 });
    assert.equal(await preview.page.locator('#proof').isVisible(), false);
    await preview.page.locator('#more').click();
    await preview.page.getByRole('menuitemcheckbox', { name: 'Proof' }).click();
    assert.equal(await preview.page.locator('#stage.proof').count(), 1);
    const follow = preview.page.getByRole('menuitemcheckbox', { name: /^Follow/ });
    assert.equal(await follow.getAttribute('aria-checked'), 'false');
    await follow.click();
    assert.equal(await follow.getAttribute('aria-checked'), 'true');
    assert.deepEqual((await preview.messages()).at(-1), { type: 'follow', source, follows: true });
    assert.match((await preview.page.locator('#more').getAttribute('aria-label'))!, /Follows the editor/);
  });

  it('have the arrangements of the pieces too, where there is none for them', async () => {
    await preview.open({ width: 250 });
    assert.equal(await preview.page.locator('#arrangement').isVisible(), false);
    await preview.page.locator('#more').click();
    await preview.page.getByRole('menuitemcheckbox', { name: 'Apart' }).click();
    assert.equal(await preview.page.locator('[data-arrangement=apart]').getAttribute('aria-pressed'), 'true');
  });

  it('leave one stop for the Tab key, also when the one that it was has no room any more', async () => {
    await preview.open({ width: 900 });
    await preview.page.locator('[data-zoom=in]').focus();
    const stops = () =>
      preview.page
        .locator('#tools button')
        .evaluateAll(
          (all) => all.filter((each) => each.checkVisibility() && (each as HTMLElement).tabIndex === 0).length,
        );
    assert.equal(await stops(), 1);
    for (const width of [300, 900]) {
      await preview.page.setViewportSize({ width, height: 600 });
      await preview.transform();
      assert.equal(await stops(), 1, `${width}`);
    }
  });

  it('show what is on by more than a shade where the system sets all colours', async () => {
    await preview.open();
    await preview.page.emulateMedia({ forcedColors: 'active' });
    await preview.page.locator('#measure').click();
    const colours = await preview.page
      .locator('#proof, #measure')
      .evaluateAll((buttons) => buttons.map((button) => getComputedStyle(button).backgroundColor));
    const system = await preview.page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement('i'));
      probe.style.color = 'Highlight';
      return getComputedStyle(probe).color;
    });
    assert.notEqual(colours[0], system);
    assert.equal(colours[1], system);
  });

  it('give way to pills where the row has room for them', async () => {
    const { scene, ...rest } = sceneMessage();
    await preview.open({ width: 1500 }, { ...rest, scene: { ...scene!, pieces: scene!.pieces.slice(0, 1) } });
    assert.equal(await preview.page.locator('#layers-button').isVisible(), false);
    const right = await preview.page
      .locator('#export-button')
      .evaluate((button) => button.getBoundingClientRect().right);
    assert.ok(right <= 1500, `${right}`);
    await preview.page.getByRole('button', { name: 'Score' }).first().click();
    assert.equal(await preview.page.locator('.op-score .line').first().isVisible(), false);
  });
});

describe('The keys of the preview', () => {
  const preview = usePreview();

  it('are listed by “?”, and the focus goes back to where it was', async () => {
    await preview.open();
    const { keyboard } = preview.page;
    await preview.page.locator('#stage').focus();
    await keyboard.press('?');
    const dialog = preview.page.getByRole('dialog', { name: 'Keys' });
    assert.equal(await dialog.isVisible(), true);
    assert.match(await dialog.innerText(), /next or previous problem/);
    await keyboard.press('p');
    assert.equal(await preview.page.locator('#stage.proof').count(), 0, 'keys of the page wait');
    await keyboard.press('Escape');
    assert.equal(await dialog.isVisible(), false);
    assert.equal(await preview.page.evaluate(() => document.activeElement!.id), 'stage');
    await preview.page.locator('#more').click();
    await preview.page.getByRole('menuitem', { name: 'Keys' }).click();
    assert.equal(await dialog.isVisible(), true);
    await keyboard.press('?');
    assert.equal(await dialog.isVisible(), false);
    assert.equal(await preview.page.evaluate(() => document.activeElement!.id), 'more');
  });

  it('fit into a narrow panel', async () => {
    await preview.open({ width: 300, height: 500 });
    await preview.page.keyboard.press('?');
    const { scrollWidth, clientWidth } = await preview.page
      .locator('#keys')
      .evaluate(({ scrollWidth, clientWidth }) => ({ scrollWidth, clientWidth }));
    assert.ok(scrollWidth <= clientWidth);
    for (const part of ['h1', 'h2', 'button']) {
      const box = (await preview.page.locator(`#keys ${part}`).first().boundingBox())!;
      assert.ok(box.y >= 0 && box.y + box.height <= 500, `${part} is in sight`);
    }
  });
});
