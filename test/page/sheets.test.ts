/** The page of sheets: what is looked at stays, pieces and lines find each other, and nobody needs a pointer. */

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { PNG } from 'pngjs';
import { openSheets } from './sheets-harness.ts';
import type { SheetsInBrowser, SheetsPageOptions } from './sheets-harness.ts';
import { pieceAt, sheetOf, sheetsMessage, twoSheets } from './sheets-scenes.ts';
import type { Theme } from './themes.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

function luminance(rgb: readonly number[]): number {
  const [r, g, b] = rgb.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

describe('The page of sheets', () => {
  let sheets: SheetsInBrowser;

  afterEach(async () => {
    assert.deepEqual(sheets.errors, []);
    await sheets.close();
  });

  async function open(options: SheetsPageOptions = {}, message = sheetsMessage()): Promise<void> {
    sheets = await openSheets(options);
    await sheets.send(message);
  }

  /** Of the first piece on the screen, in px. */
  function firstWidth(): Promise<number> {
    return sheets.page.evaluate(() => document.querySelector('.piece use')!.getBoundingClientRect().width);
  }

  const transform = () => sheets.page.locator('#world').evaluate((world) => world.style.transform);

  it('draws every piece where it lies, to scale', async () => {
    await open();
    const [one, three] = [await sheets.middleOf(1), await sheets.middleOf(3)];
    const sheet = await sheets.page.evaluate(
      () => document.querySelector('.sheet')!.getBoundingClientRect().toJSON() as DOMRect,
    );
    const scale = sheet.width / 200;
    // From the middle of one piece to that of another: 105 mm to the right, 45 mm up.
    assert.ok(Math.abs(three.x - one.x - 105 * scale) < 1, `${three.x - one.x} ${scale}`);
    assert.ok(Math.abs(one.y - three.y - 45 * scale) < 1);
    // The first lies 5 mm from the left and the bottom.
    assert.ok(Math.abs(one.x - sheet.x - 25 * scale) < 1);
    assert.ok(Math.abs(sheet.y + sheet.height - one.y - 15 * scale) < 1);
  });

  it('keeps zoom and place when it is drawn again, and when it was hidden', async () => {
    await open();
    const before = await firstWidth();
    const at = await sheets.middleOf(2);
    await sheets.page.mouse.move(at.x, at.y);
    await sheets.page.keyboard.down('Control');
    await sheets.page.mouse.wheel(0, -300);
    await sheets.page.keyboard.up('Control');
    await sheets.page.waitForFunction((was) => {
      return document.querySelector('.piece use')!.getBoundingClientRect().width > 1.2 * was;
    }, before);
    const seen = await transform();
    const after = await sheets.middleOf(2);
    assert.ok(Math.hypot(after.x - at.x, after.y - at.y) < 2, 'what the pointer is on stays under it');
    await sheets.send(sheetsMessage([sheetOf('ply3 sheet 1', [pieceAt(1, 20, 20), pieceAt(2, 60, 40)])]));
    await sheets.page.waitForFunction(() => document.querySelectorAll('.piece').length === 2);
    assert.equal(await transform(), seen);
    const state = await sheets.state();
    await sheets.close();
    await open({ state });
    assert.equal(await transform(), seen);
  });

  it('is steered by keys alone: pan, zoom, fit', async () => {
    await open();
    const fitted = await transform();
    const width = await firstWidth();
    await sheets.page.locator('#stage').focus();
    await sheets.page.keyboard.press('ArrowLeft');
    await sheets.page.keyboard.press('+');
    await sheets.page.waitForFunction((was) => {
      return Math.abs(document.querySelector('.piece use')!.getBoundingClientRect().width / was - 1.25) < 0.01;
    }, width);
    await sheets.page.keyboard.press('0');
    await sheets.page.waitForFunction((was) => {
      return document.querySelector<HTMLElement>('#world')!.style.transform === was;
    }, fitted);
  });

  it('shows where a piece comes from, by pointer and by key', async () => {
    await open();
    const { x, y } = await sheets.middleOf(2);
    await sheets.page.mouse.click(x, y);
    assert.deepEqual(await sheets.message('reveal'), { type: 'reveal', piece: 'piece 2', focus: false });
    const card = sheets.page.locator('#card');
    assert.match(await card.innerText(), /2 · Name 2\s+Order 102 · 40\.0 × 20\.0 mm/);
    assert.match(await card.innerText(), /60\.0 mm from the left, 5\.0 mm from the bottom/);
    await sheets.page.keyboard.press('s');
    assert.match(await card.innerText(), /3 · Name 3\s+Order 103 · rush/);
    await sheets.page.keyboard.press('Enter');
    assert.deepEqual(await sheets.message('reveal'), { type: 'reveal', piece: 'piece 3', focus: true });
    const active = await sheets.page.locator('#stage').getAttribute('aria-activedescendant');
    const option = sheets.page.locator(`#${active!}`);
    assert.equal(await option.getAttribute('aria-label'), '3: Name 3, Order 103, rush, 40.0 × 20.0 mm');
    assert.equal(await option.getAttribute('aria-selected'), 'true');
    await sheets.page.keyboard.press('Escape');
    assert.ok(await card.isHidden());
  });

  it('drags the piece that is selected, and only that, onto a place in round figures', async () => {
    await open();
    const seen = await transform();
    const one = await sheets.middleOf(1);
    const scale = await sheets.page.evaluate(
      () => document.querySelector('.sheet')!.getBoundingClientRect().width / 200,
    );
    await sheets.page.mouse.click(one.x, one.y);
    await sheets.page.mouse.move(one.x, one.y);
    await sheets.page.mouse.down();
    await sheets.page.mouse.move(one.x + 20.02 * scale, one.y - 30.03 * scale, { steps: 4 });
    assert.equal(await sheets.page.locator('.held').count(), 1);
    await sheets.page.mouse.up();
    const { places } = await sheets.message('pin');
    const [{ x, y, ...place }] = places as [(typeof places)[0]];
    assert.deepEqual(place, { piece: 'piece 1', sheet: 'ply3 sheet 1', turned: 0 });
    // From 5 and 5 mm; a pixel is about half a millimetre here.
    assert.ok(Math.abs(x - 25) < 0.6 && Math.abs(y - 35) < 0.6, `${x} ${y}`);
    assert.ok(Math.abs(x * 10 - Math.round(x * 10)) < 1e-9, 'to a tenth of a millimetre');
    assert.equal(await transform(), seen, 'the sheets stay where they are');
    // Of the others, what is dragged is the view.
    const three = await sheets.middleOf(3);
    await sheets.page.mouse.move(three.x, three.y);
    await sheets.page.mouse.down();
    await sheets.page.mouse.move(three.x + 40, three.y, { steps: 4 });
    await sheets.page.mouse.up();
    await sheets.painted();
    assert.notEqual(await transform(), seen);
    assert.equal((await sheets.messages()).filter(({ type }) => type === 'pin').length, 1);
  });

  it('takes a piece to another sheet of its stock, within the margin, and back with Escape', async () => {
    await open();
    const [one, other] = [await sheets.middleOf(1), await sheets.middleOf(4)];
    await sheets.page.mouse.click(one.x, one.y);
    const drag = async () => {
      await sheets.page.mouse.move(one.x, one.y);
      await sheets.page.mouse.down();
      await sheets.page.mouse.move(other.x - 300, other.y - 10, { steps: 5 });
    };
    await drag();
    await sheets.page.keyboard.press('Escape');
    await sheets.page.mouse.up();
    assert.equal(await sheets.page.locator('.held').count(), 0);
    assert.ok((await sheets.messages()).every(({ type }) => type !== 'pin'));
    await drag();
    await sheets.page.mouse.up();
    const { places } = await sheets.message('pin');
    // The margin of 5 mm, and what its cut reaches beyond it.
    assert.deepEqual([places[0]!.sheet, places[0]!.x], ['ply3 sheet 2', 5.1]);
  });

  it('moves, turns and pins with keys, and lets go', async () => {
    await open();
    await sheets.page.locator('#stage').focus();
    for (let i = 0; i < 2; i += 1) await sheets.page.keyboard.press('s');
    const seen = await transform();
    await sheets.page.keyboard.press('ArrowRight');
    await sheets.page.keyboard.press('Shift+ArrowUp');
    await sheets.page.keyboard.press('ArrowUp');
    const moved = await sheets.message('pin');
    assert.deepEqual(moved.places, [{ piece: 'piece 2', sheet: 'ply3 sheet 1', x: 61, y: 16.1, turned: 0 }]);
    assert.equal(await transform(), seen, 'arrows move the piece and not the view');
    const announced = () => sheets.page.locator('#announcer').textContent();
    const two = '2: Name 2, Order 102';
    assert.equal(
      await announced(),
      `${two}, 40.0 × 20.0 mm, pinned, 61.0 mm from the left, 16.1 mm from the bottom, ply3 sheet 1`,
    );
    await sheets.send(sheetsMessage([sheetOf('ply3 sheet 1', [pieceAt(2, 61, 16.1, { fixed: true })])]));
    await sheets.page.keyboard.press('r');
    const turned = await sheets.page.waitForFunction(() => {
      const all = window.recorded.messages as { type: string; places: object[] }[];
      return all.filter(({ type }) => type === 'pin')[1]?.places;
    });
    // 40 × 20 mm about the same middle, at 81 and 26.1 mm, is 20 × 40 mm.
    assert.deepEqual(await turned.jsonValue(), [
      { piece: 'piece 2', sheet: 'ply3 sheet 1', x: 71, y: 6.1, turned: 90 },
    ]);
    assert.match((await announced())!, /^2: Name 2, Order 102, 20\.0 × 40\.0 mm, pinned, 71\.0 mm from the left/);
    await sheets.page.keyboard.press('p');
    assert.deepEqual(await sheets.message('unpin'), { type: 'unpin', pieces: ['piece 2'] });
    assert.match((await announced())!, /^2: Name 2, .* mm, not pinned, /);
    await sheets.page.keyboard.press('Control+z');
    assert.deepEqual(await sheets.message('undo'), { type: 'undo', step: 'undo' });
  });

  it('says that a piece is pinned, and pins one where it lies', async () => {
    await open();
    const four = await sheets.middleOf(4);
    await sheets.page.mouse.click(four.x, four.y);
    assert.ok(await sheets.page.locator('.piece .pin').isVisible());
    assert.match((await sheets.page.locator('[aria-selected="true"]').getAttribute('aria-label'))!, /, pinned$/);
    await sheets.page.getByRole('button', { name: 'Unpin' }).click();
    assert.deepEqual(await sheets.message('unpin'), { type: 'unpin', pieces: ['piece 4'] });
    const two = await sheets.middleOf(2);
    await sheets.page.mouse.click(two.x, two.y);
    await sheets.page.getByRole('button', { name: 'Pin Here' }).click();
    const { places } = await sheets.message('pin');
    assert.deepEqual(places, [{ piece: 'piece 2', sheet: 'ply3 sheet 1', x: 60, y: 5, turned: 0 }]);
  });

  it('says of the piece in the hand how large it is as it is turned, and where it comes to lie', async () => {
    await open();
    const two = await sheets.middleOf(2);
    await sheets.page.mouse.click(two.x, two.y);
    const card = async () => (await sheets.page.locator('#card p').allTextContents()).join(' | ');
    const before = await card();
    assert.match(before, /40\.0 × 20\.0 mm \| 60\.0 mm from the left/);
    await sheets.page.keyboard.press('r');
    await sheets.painted();
    assert.match(await card(), /20\.0 × 40\.0 mm \| 70\.0 mm from the left/);
    await sheets.page.keyboard.press('Escape');
    await sheets.painted();
    assert.equal(await card(), before);
  });

  it('tells no facts of the layout before while another is looked for', async () => {
    await open();
    await sheets.page.locator('#summary').click();
    const facts = () => sheets.page.locator('#dock dd').allTextContents();
    const known = await facts();
    assert.ok(known.length > 0 && !known.includes('…'));
    await sheets.send(sheetsMessage(undefined, { facts: [] }));
    assert.deepEqual(
      await facts(),
      known.map(() => '…'),
    );
    await sheets.send(sheetsMessage());
    assert.deepEqual(await facts(), known);
  });

  it('moves nothing where nothing may be pinned', async () => {
    await open({}, sheetsMessage(undefined, { pins: false }));
    const two = await sheets.middleOf(2);
    await sheets.page.mouse.click(two.x, two.y);
    assert.equal(await sheets.page.getByRole('button', { name: /Pin|Turn/ }).count(), 0);
    await sheets.page.keyboard.press('ArrowRight');
    await sheets.page.keyboard.press('r');
    await sheets.page.keyboard.press('p');
    await sheets.painted();
    assert.equal(await sheets.page.locator('.held').count(), 0);
    assert.ok((await sheets.messages()).every(({ type }) => type !== 'pin' && type !== 'unpin'));
    // And says what to do instead: to the eye, to the ear, and in the description.
    const instead = 'To move or pin pieces, name this spec in a job.';
    assert.ok(await sheets.page.locator('#card').getByText(instead).isVisible());
    for (const id of ['announcer', 'by-hand'])
      assert.equal(await sheets.page.locator(`#${id}`).textContent(), instead, id);
    await sheets.send(sheetsMessage());
    assert.match((await sheets.page.locator('#by-hand').textContent())!, /^A piece that is selected is moved/);
    assert.equal(await sheets.page.locator('#card').getByText(instead).count(), 0);
  });

  it('says what the pointer is on', async () => {
    await open();
    const { x, y } = await sheets.middleOf(3);
    await sheets.page.mouse.move(x, y);
    const tip = sheets.page.locator('#tip');
    await tip.waitFor();
    assert.equal(await tip.innerText(), '3 · Name 3\nOrder 103 · rush\n40.0 × 20.0 mm');
    await sheets.page.mouse.move(2, 300);
    await tip.waitFor({ state: 'hidden' });
  });

  it('lights up what the cursor stands in, and goes there if it is out of sight', async () => {
    await open();
    const seen = await transform();
    await sheets.send({ type: 'light', pieces: ['piece 1', 'piece 4', 'gone'] });
    await sheets.page.waitForFunction(() => document.querySelectorAll('.lit.line').length === 2);
    assert.equal(await transform(), seen, 'in sight already');
    const { x, y } = await sheets.middleOf(4);
    await sheets.page.mouse.move(x, y);
    await sheets.page.keyboard.down('Control');
    for (let i = 0; i < 12; i += 1) await sheets.page.mouse.wheel(0, -300);
    await sheets.page.keyboard.up('Control');
    await sheets.page.waitForFunction(() => {
      return document.querySelector('.piece[data-piece="piece 3"] use')!.getBoundingClientRect().bottom < 0;
    });
    await sheets.send({ type: 'light', pieces: ['piece 3'] });
    await sheets.page.waitForFunction(() => {
      const { top, bottom } = document.querySelector('.piece[data-piece="piece 3"] use')!.getBoundingClientRect();
      return bottom > 0 && top < window.innerHeight;
    });
  });

  it('says what all comes to, and leads to problems', async () => {
    const problem = { labels: ['Ada'], message: '“a” is loose.', line: 3, offset: 7, row: 1 };
    await open({}, sheetsMessage(undefined, { problems: [problem] }));
    const summary = sheets.page.locator('#summary');
    assert.equal(
      await summary.innerText(),
      'Not in the cut files: 1 problem · 2 sheets · 4 pieces · 1 rush (») · filled 12 %, 4 %',
    );
    await sheets.page.getByRole('button', { name: 'Line 3' }).click();
    assert.deepEqual(await sheets.message('show'), { type: 'show', offset: 7, row: 1 });
    assert.match(await sheets.page.locator('#dock').innerText(), /Pieces\s+4/);
    await summary.click();
    assert.ok(await sheets.page.locator('#dock').isHidden());
    await sheets.send(sheetsMessage(undefined, { problems: [problem, problem] }));
    assert.ok(await sheets.page.locator('#dock').isHidden(), 'as it was chosen');
  });

  it('leads to a problem of another file there', async () => {
    const problem = { labels: [], message: 'No quantity.', file: 'orders.csv', line: 7, offset: 90, row: 0 };
    await open({}, sheetsMessage(undefined, { problems: [problem] }));
    await sheets.page.getByRole('button', { name: 'orders.csv, line 7', exact: true }).click();
    assert.deepEqual(await sheets.message('show'), { type: 'show', file: 'orders.csv', offset: 90, row: 0 });
  });

  for (const width of [540, 900])
    it(`has its sliders below one another and its buttons in one row, ${width} px wide`, async () => {
      const gaps = ['pop3', 'walnut 4 mm'].map((stock) => ({ stock, gap: 2, most: 10 }));
      const problem = { labels: [], message: 'No quantity.', line: 7, offset: 90, row: 0 };
      await open({ width }, sheetsMessage(undefined, { gaps, problems: [problem] }));
      const places = (selector: string, side: 'x' | 'y') =>
        sheets.page
          .locator(`#controls ${selector}`)
          .evaluateAll((all, at) => all.map((each) => each.getBoundingClientRect()[at]), side);
      const [sliders, values, buttons] = [
        await places('input', 'x'),
        await places('output', 'x'),
        await places('button', 'y'),
      ];
      assert.deepEqual([sliders.length, buttons.length], [2, 4]);
      for (const all of [sliders, values, buttons]) assert.equal(new Set(all).size, 1, all.join(' '));
    });

  it('tells pieces of a rush order by a sign, which the line above their sheet explains, and not by colour', async () => {
    await open();
    const [one, three] = [sheets.page.locator('[data-piece="piece 1"]'), sheets.page.locator('[data-piece="piece 3"]')];
    assert.deepEqual([await one.textContent(), await three.textContent()], ['1', '3»']);
    const fills = await Promise.all(
      [one, three].map((piece) => piece.locator('.ground').evaluate((ground) => getComputedStyle(ground).fill)),
    );
    assert.equal(fills[0], fills[1]);
    const captions = await sheets.page.locator('.caption').allTextContents();
    assert.match(captions[0]!, /3 pieces.*1 rush \(»\)$/);
    assert.match(captions[1]!, /1 piece$/);
  });

  it('tells of every sheet in letters that can be read, however many there are', async () => {
    await open();
    const problem = { labels: [], message: 'No quantity.', line: 7, offset: 90, row: 0 };
    for (const count of [6, 9, 20, 34, 60, 100]) {
      const rush = { rush: true };
      const many = Array.from({ length: count }, (_, nth) =>
        sheetOf(`ply8 sheet ${nth + 1}`, [pieceAt(3 * nth + 1, 5, 5), pieceAt(3 * nth + 2, 60, 5, rush)]),
      );
      // Of a few, whatever is open below.
      await sheets.send(sheetsMessage(many, { problems: count === 6 ? [problem] : [] }));
      const lines = await sheets.page.locator('.caption tspan').evaluateAll((all: SVGTSpanElement[]) =>
        all.map((each) => {
          const { x, y, width, height } = each.getBoundingClientRect();
          const size = Number(each.getAttribute('font-size')) * each.getScreenCTM()!.a;
          return { name: each.classList.contains('name'), size, x, y, width, height };
        }),
      );
      assert.equal(lines.filter(({ name }) => name).length, count);
      assert.ok(lines.length >= 2 * count);
      for (const { size } of lines) assert.ok(size >= 8, `${count} sheets: ${size} px`);
      // Nothing is written over anything else.
      for (const [index, one] of lines.entries())
        for (const other of lines.slice(index + 1)) {
          const across = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x);
          const up = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y);
          assert.ok(across <= 0 || up <= 0.3 * one.height, `${count} sheets: ${JSON.stringify([one, other])}`);
        }
    }
    assert.match(await sheets.page.locator('#summary').innerText(), /100 sheets .* filled 8 %$/);
    const last = sheets.page.locator('.caption').last();
    assert.match((await last.textContent())!, /^(ply8 )?1008 %.*1»$/);
    const { x, y } = (await last.boundingBox())!;
    await sheets.page.mouse.move(x, y);
    for (let step = 0; step < 12; step += 1) {
      await sheets.page.keyboard.down('Control');
      await sheets.page.mouse.wheel(0, -200);
      await sheets.page.keyboard.up('Control');
    }
    await sheets.page.waitForFunction(
      () =>
        [...document.querySelectorAll('.caption')].at(-1)!.textContent ===
        'ply8 sheet 1008 % filled · 2 pieces · 1 rush (»)',
    );
    const px = await last.locator('.facts').evaluate((each) => {
      return Number(each.getAttribute('font-size')) * (each as SVGTSpanElement).getScreenCTM()!.a;
    });
    assert.ok(px > 8 && px < 20, `from near: ${px} px`);
  });

  it('keeps the card of a piece off the sheets that are all in view, and off its piece from near', async () => {
    for (const width of [380, 900, 1400]) {
      await open({ width });
      const { x, y } = await sheets.middleOf(4);
      await sheets.page.mouse.click(x, y);
      const card = (await sheets.page.locator('#card').boundingBox())!;
      for (const sheet of await sheets.page.locator('.sheet').all()) {
        const box = (await sheet.boundingBox())!;
        assert.ok(box.y + box.height <= card.y, `${width} px: ${JSON.stringify([box, card])}`);
      }
      const after = await sheets.middleOf(4);
      assert.ok(Math.hypot(after.x - x, after.y - y) < 0.5, 'nothing moves when a piece is selected');
      // The view is dragged until the piece would lie under it.
      await sheets.page.mouse.move(4, 200);
      await sheets.page.mouse.down();
      await sheets.page.mouse.move(4, 200 + card.y + 20 - y, { steps: 4 });
      await sheets.page.mouse.up();
      await sheets.page.waitForFunction(() => document.querySelector('#card')!.classList.contains('above'));
      const [piece, above] = [await sheets.middleOf(4), (await sheets.page.locator('#card').boundingBox())!];
      assert.ok(above.y + above.height < piece.y, `${width} px: ${JSON.stringify([piece, above])}`);
      if (width < 1400) await sheets.close();
    }
  });

  for (const theme of ['high-contrast', 'high-contrast-light'] as const)
    it(`has sliders that are seen in the ${theme} theme`, async () => {
      await open({ theme });
      const [accent, ground] = await sheets.page.locator('#controls input').evaluate((slider) => {
        return [getComputedStyle(slider).accentColor, getComputedStyle(document.body).backgroundColor];
      });
      assert.match(accent, /^(rgb|#|color)/);
      assert.notEqual(accent, ground);
    });

  for (const theme of ['dark', 'high-contrast'] as const)
    it(`draws edges of dark wood that are seen on a dark sheet, in the ${theme} theme`, async () => {
      const message = sheetsMessage();
      const shapes = message.shapes.map((shape) => ({ ...shape, wood: '#5a3a24', rim: '#2b1a10' }));
      await open({ theme }, { ...message, shapes });
      // Lines have their width once the drawing rests.
      await sheets.page.waitForFunction(() => {
        const style = getComputedStyle(document.querySelector('#world')!);
        return (
          Math.abs(Number.parseFloat(style.getPropertyValue('--px')) * new DOMMatrix(style.transform).a - 1) < 0.01
        );
      });
      const { x, y, height } = (await sheets.page.locator('[data-piece="piece 2"] use').boundingBox())!;
      const clip = { x: Math.round(x) - 6, y: Math.round(y + height / 2), width: 12, height: 1 };
      const { data } = PNG.sync.read(await sheets.page.screenshot({ clip }));
      // Relative luminance (WCAG 2.2) along a line from the sheet into the piece.
      const light = Array.from({ length: clip.width }, (_, index) =>
        luminance([...data.subarray(4 * index, 4 * index + 3)]),
      );
      const contrast = (Math.max(...light) + 0.05) / (light[0]! + 0.05);
      // A line that falls between two pixels has half of its colour in each; without it the wood has 1.2.
      assert.ok(contrast >= 2, `${contrast}`);
    });

  it('takes nothing that a spec or an order says for markup', async () => {
    const hostile = { name: '<img src=x onerror=alert(1)>', order: '<b>1</b>' };
    await open({}, sheetsMessage([sheetOf('<i>ply</i>', [pieceAt(1, 5, 5, hostile)])], { title: '<u>swap</u>' }));
    const { x, y } = await sheets.middleOf(1);
    await sheets.page.mouse.click(x, y);
    assert.match(await sheets.page.locator('#card').innerText(), /<img src=x onerror=alert\(1\)>/);
    assert.equal(await sheets.page.locator('img, b, i, u').count(), 0);
  });

  it('has all its tools within reach at any width, and sliders below one another', async () => {
    const gaps = [
      { stock: 'pop3', gap: 2, most: 10 },
      { stock: 'walnut4', gap: 2, most: 10 },
    ];
    await open({}, sheetsMessage(undefined, { gaps }));
    const dock = sheets.page.locator('#dock');
    if (await dock.isHidden()) await sheets.page.locator('#summary').click();
    const lefts = await sheets.page
      .locator('#controls input')
      .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().left));
    assert.equal(lefts.length, 2);
    assert.equal(lefts[0], lefts[1]);
    await sheets.page.locator('#compare').evaluate((compare: HTMLElement) => {
      compare.hidden = false;
    });
    for (const width of [900, 541, 400, 320, 271, 220]) {
      await sheets.page.setViewportSize({ width, height: 600 });
      await sheets.painted();
      const ends = await sheets.page
        .locator('#tools button')
        .evaluateAll((all) => all.map((each) => [each.checkVisibility(), each.getBoundingClientRect().right] as const));
      assert.equal(ends.length, 6);
      for (const [isSeen, right] of ends) assert.ok(isSeen && right <= width, `${right} of ${width}`);
    }
  });

  it('offers sizes, and says why there are no sheets', async () => {
    await open();
    await sheets.send({ type: 'sizes', sizes: [{ width: 600, height: 400 }], units: 'mm' });
    await sheets.page.getByRole('button', { name: '600 × 400 mm' }).click();
    assert.deepEqual(await sheets.message('size'), { type: 'size', width: 600, height: 400 });
    await sheets.send({ type: 'nothing', why: 'No piece <fits>.' });
    await sheets.page.getByText('No piece <fits>.').waitFor();
  });

  it('shows a layout as it becomes better, and is stopped, continued, pinned', async () => {
    await open();
    const progress = sheets.page.locator('#progress');
    assert.ok(await progress.isHidden());
    await sheets.send({ type: 'busy' });
    await progress.getByText('Laying out…').waitFor();
    const read = () => sheets.page.locator('#doing[role="status"]').textContent();
    assert.equal(await read(), 'Laying out…');
    await sheets.send({ ...sheetsMessage(), shapes: [], state: 'improving' });
    assert.equal(await read(), 'Looking for a better layout…');
    await progress.getByRole('button', { name: 'Stop' }).click();
    assert.deepEqual(await sheets.message('stop'), { type: 'stop' });
    await sheets.send({ ...sheetsMessage(), shapes: [], state: 'stopped' });
    assert.match(await progress.innerText(), /Stopped\. Export cuts these sheets\./);
    await progress.getByRole('button', { name: 'Continue' }).click();
    assert.deepEqual(await sheets.message('again'), { type: 'again' });
    await progress.getByRole('button', { name: 'Pin All' }).click();
    const { places } = await sheets.message('pin');
    assert.deepEqual(
      places.map(({ piece, sheet, x, y }) => [piece, sheet, x, y]),
      [
        ['piece 1', 'ply3 sheet 1', 5, 5],
        ['piece 2', 'ply3 sheet 1', 60, 5],
        ['piece 3', 'ply3 sheet 1', 110, 50],
      ],
      'the fourth is pinned already',
    );
    assert.match((await read())!, /^Stopped\. /);
    await sheets.send(sheetsMessage());
    assert.ok(await progress.isHidden());
    assert.equal(await read(), 'Laid out.');
  });

  it('sets the gap and how long is searched, and pins or lets go of everything', async () => {
    await open({ state: { open: true } });
    const slider = sheets.page.getByRole('slider', { name: /Gap on ply3/ });
    assert.equal(await slider.getAttribute('aria-valuetext'), '2 mm');
    await slider.focus();
    await sheets.page.keyboard.press('ArrowRight');
    assert.deepEqual(await sheets.message('gap'), { type: 'gap', stock: 'ply3', gap: 2.5 });
    assert.equal(await slider.getAttribute('aria-valuetext'), '2.5 mm');
    await sheets.page.getByRole('button', { name: 'Search 5× Longer' }).click();
    assert.deepEqual(await sheets.message('effort'), { type: 'effort', effort: 5 });
    await sheets.page.getByRole('button', { name: 'Unpin All' }).click();
    assert.deepEqual(await sheets.message('unpin'), { type: 'unpin', pieces: ['piece 4'] });
  });

  it('shows a gap as it is written, and goes by keys to round figures of the unit, the slider in the hand', async () => {
    const gaps = [{ stock: 'ply8', gap: 0.08 * 25.4, most: 10 }];
    await open({ state: { open: true } }, sheetsMessage(undefined, { gaps, units: 'in' }));
    const slider = sheets.page.getByRole('slider', { name: /Gap on ply8/ });
    const shown = () => slider.getAttribute('aria-valuetext');
    assert.equal(await shown(), '0.08 in');
    await slider.focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowLeft']) await sheets.page.keyboard.press(key);
    assert.equal(await shown(), '0.1 in');
    const told = { type: 'gap', stock: 'ply8', gap: 2.54 };
    assert.deepEqual(await sheets.message('gap'), told);
    assert.equal((await sheets.messages()).filter(({ type }) => type === 'gap').length, 1, 'one change');
    // What comes back leaves the keyboard where it is, also with a figure between the steps.
    for (const [gap, text] of [
      [2.54, '0.1 in'],
      [(3 / 32) * 25.4, '0.094 in'],
    ] as const) {
      await sheets.send(sheetsMessage(undefined, { gaps: [{ stock: 'ply8', gap, most: 10 }], units: 'in' }));
      assert.equal(await shown(), text);
      assert.ok(await slider.evaluate((element) => element === document.activeElement));
    }
    await sheets.page.keyboard.press('ArrowLeft');
    assert.equal(await shown(), '0.09 in');
    await sheets.page.keyboard.press('Home');
    assert.equal(await shown(), '0 in');
    const box = (await slider.boundingBox())!;
    await sheets.page.mouse.click(box.x + box.width * 0.4, box.y + box.height / 2);
    assert.match((await shown())!, /^0\.\d\d? in$/, 'the pointer finds round figures too');
    await sheets.send(sheetsMessage(undefined, { gaps: [{ stock: 'ply3', gap: 2.25, most: 10 }] }));
    assert.equal(await sheets.page.getByRole('slider').getAttribute('aria-valuetext'), '2.25 mm');
  });

  it('keeps a layout, and switches between it and the one there is now', async () => {
    await open({ state: { open: true } });
    await sheets.page.getByRole('button', { name: 'Keep to Compare' }).click();
    await sheets.message('keep');
    await sheets.send({ type: 'kept', scene: sheetsMessage().scene, shapes: [] });
    await sheets.send(sheetsMessage([sheetOf('ply3 sheet 1', [pieceAt(1, 100, 40), pieceAt(2, 60, 5)])]));
    const summary = sheets.page.locator('#summary');
    assert.match(await summary.innerText(), /1 sheet · 2 pieces/);
    const table = sheets.page.getByRole('table', { name: 'Kept and now' });
    const figures = () =>
      table.evaluate((element: HTMLTableElement) =>
        [...element.rows].map((row) => [...row.cells].map((cell) => cell.innerText)),
      );
    assert.deepEqual(await figures(), [
      ['Figure', 'Kept', 'Now', 'Difference'],
      ['Sheets', '2', '1', '−1'],
      ['Filled', '8.0 %', '8.0 %', 'same'],
    ]);
    const said = () => sheets.page.locator('#announcer').textContent();
    assert.equal(await said(), 'Sheets 1 instead of 2.');
    // As long as the next one is looked for, its figures are not known; then they are told again.
    await sheets.send({ ...sheetsMessage(undefined, { figures: [], facts: [] }), shapes: [], state: 'improving' });
    assert.deepEqual((await figures())[1], ['Sheets', '2', '…', '…']);
    await sheets.send({ ...sheetsMessage(), shapes: [], state: 'stopped' });
    assert.equal(await said(), 'No figure differs from the layout that you kept.');
    await sheets.send(sheetsMessage([sheetOf('ply3 sheet 1', [pieceAt(1, 100, 40), pieceAt(2, 60, 5)])]));
    await sheets.page.getByRole('button', { name: 'Kept', exact: true }).click();
    assert.match(
      (await sheets.page.locator('#export').getAttribute('title'))!,
      /as they are now, not of the ones that you kept/,
    );
    assert.match(await summary.innerText(), /2 sheets · 4 pieces/);
    const one = await sheets.middleOf(1);
    await sheets.page.mouse.click(one.x, one.y);
    await sheets.page.keyboard.press('ArrowRight');
    assert.equal(await sheets.page.locator('.held').count(), 0, 'nothing is moved on what is past');
    await sheets.page.getByRole('button', { name: 'Go Back to This' }).click();
    await sheets.message('restore');
    assert.match(await summary.innerText(), /1 sheet · 2 pieces/);
    await sheets.page.getByRole('button', { name: 'Forget the Kept One' }).click();
    await sheets.message('forget');
    await sheets.send({ type: 'kept', shapes: [] });
    assert.ok(await sheets.page.locator('#compare').isHidden());
    assert.ok(await table.isHidden());
  });

  const themes: readonly Theme[] = ['light', 'dark', 'high-contrast', 'high-contrast-light'];
  for (const theme of themes) {
    it(`has nothing wrong in the ${theme} theme (axe-core, WCAG 2.2 A and AA)`, async () => {
      await open({ theme, state: { open: true, selected: 'piece 2' } });
      await sheets.send({ type: 'kept', scene: sheetsMessage(twoSheets.slice(1)).scene, shapes: [] });
      await sheets.page.evaluate(axe);
      const { violations } = await sheets.page.evaluate<AxeResults>(
        'axe.run(document, { resultTypes: ["violations"] })',
      );
      assert.deepEqual(
        violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`)),
        [],
      );
    });
  }
});
