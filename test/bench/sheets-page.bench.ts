/**
 * How fluently the page of sheets moves with 500 pieces, each an outline of its own with what is engraved on it: frames while the view is
 * dragged, zoomed with the wheel, and while one piece is dragged. `npm run bench:sheets`, in a browser without a graphics card, on a machine
 * with nothing else to do.
 */

import { offset } from '../../src/geometry/clipper.ts';
import { boundsOf, ringArea } from '../../src/geometry/measure.ts';
import { pathData } from '../../src/scene/path-data.ts';
import { sheetWithinMm } from '../../src/scene/sheets-scene.ts';
import type { PieceOnSheet, SheetOnPage, SheetShape } from '../../src/protocol/sheets.ts';
import { openSheets } from '../page/sheets-harness.ts';
import type { SheetsInBrowser } from '../page/sheets-harness.ts';
import { sheetsMessage } from '../page/sheets-scenes.ts';
import { word } from '../unit/support/words.ts';

const count = 500;
const names = 'Sorrel Borage Lovage Chives Rue Kale Angelica Tansy Yarrow Hyssop Sweet_Cicely Sea_Kale Salsify'.split(
  ' ',
);
const sheet = { width: 600, height: 400, gap: 3 };

/** In rows: how densely they lie is no matter here. */
async function sheets(): Promise<{ readonly sheets: SheetOnPage[]; readonly shapes: SheetShape[] }> {
  const shapes: SheetShape[] = [];
  const all: { pieces: PieceOnSheet[] }[] = [{ pieces: [] }];
  let [x, y, row] = [0, 0, 0];
  for (let i = 0; i < count; i += 1) {
    const lettering = await word('pacifico', names[i % names.length]!.replace('_', ' '), 38 + (i % 41) / 4);
    const backing = offset(lettering, 3).filter((ring) => ringArea(ring) > 0);
    const { minX, minY, maxX, maxY } = boundsOf(backing)!;
    const [wide, high] = [maxX - minX, maxY - minY];
    if (x + wide > sheet.width) [x, y, row] = [0, y + row + sheet.gap, 0];
    if (y + high > sheet.height) {
      [x, y, row] = [0, 0, 0];
      all.push({ pieces: [] });
    }
    row = Math.max(row, high);
    const id = `${i + 1}`;
    shapes.push({
      id,
      solid: pathData(backing, sheetWithinMm),
      engraved: pathData(lettering, sheetWithinMm),
      scored: '',

      wood: '#e8d0a0',
      burn: '#5a3a1e',
      rim: '#6b4a2a',
    });
    const piece: PieceOnSheet = {
      id,
      shape: id,
      number: i + 1,
      sign: { text: `${i + 1}`, box: [x + 2, y + high - 6, x + 7, y + high - 2], size: 3 },
      name: names[i % names.length]!,
      order: `${100 + i}`,
      rush: false,
      faulty: false,
      fixed: false,
      turned: 0,
      beyond: 0.1,
      matrix: [1, 0, 0, 1, x - minX, y + maxY],
      box: [x, y, x + wide, y + high],
    };
    all.at(-1)!.pieces.push(piece);
    x += wide + sheet.gap;
  }
  const outline = `M0 0h${sheet.width}v${sheet.height}h${-sheet.width}z`;
  return {
    shapes,
    sheets: all.map(({ pieces }, index) => {
      const name = `ply3 sheet ${index + 1}`;
      return { id: name, name, stock: 'ply3', ...sheet, margin: 0, outline, filled: 0.6, pieces };
    }),
  };
}

/** Times from one frame to the next, in ms, while something is done. */
async function frames(page: SheetsInBrowser, act: () => Promise<void>): Promise<number[]> {
  await page.page.evaluate(() => {
    const times: number[] = [];
    Object.assign(window, { frameTimes: times });
    const note = (at: number): void => {
      times.push(at);
      requestAnimationFrame(note);
    };
    requestAnimationFrame(note);
  });
  const before = Date.now();
  await act();
  const times = await page.page.evaluate(() => (window as unknown as { frameTimes: number[] }).frameTimes);
  const spent = Date.now() - before;
  const gaps = times.slice(1).map((at, i) => at - times[i]!);
  if (gaps.length < 5) throw new Error(`Only ${gaps.length} frames in ${spent} ms.`);
  return gaps.sort((a, b) => a - b);
}

function report(title: string, gaps: readonly number[]): void {
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const p95 = gaps[Math.floor(0.95 * gaps.length)]!;
  console.log(
    `${title.padEnd(28)} ${(1000 / mean).toFixed(0).padStart(3)} frames/s, p95 ${p95.toFixed(0)} ms, longest ${gaps.at(-1)!.toFixed(0)} ms (${gaps.length} frames)`,
  );
}

const { sheets: all, shapes } = await sheets();
const corners = shapes.reduce((sum, { solid, engraved }) => sum + (solid + engraved).split(/[ l]/).length / 2, 0);
console.log(`${count} pieces on ${all.length} sheets, about ${Math.round(corners / 1000)} thousand corners`);
const page = await openSheets({ width: 1100, height: 800 });
const { mouse, keyboard } = page.page;
const drag = async (): Promise<void> => {
  await mouse.move(700, 500);
  await mouse.down();
  for (let i = 0; i < 60; i += 1) await mouse.move(700 + 150 * Math.sin(i / 8), 500 + 100 * Math.cos(i / 8));
  await mouse.up();
};
// What the browser and the machine take by themselves.
await page.send(sheetsMessage([]));
report('no piece at all, dragged', await frames(page, drag));
await keyboard.press('0');
const start = Date.now();
await page.send({ ...sheetsMessage(all), shapes });
console.log(`first painted after ${Date.now() - start} ms`);
report('all in view, dragged', await frames(page, drag));
const wheel = async (): Promise<void> => {
  await keyboard.down('Control');
  for (let i = 0; i < 40; i += 1) await mouse.wheel(0, i < 20 ? -40 : 40);
  await keyboard.up('Control');
};
report('zoomed with the wheel', await frames(page, wheel));
await keyboard.press('0');
for (let i = 0; i < 5; i += 1) await keyboard.press('+');
await page.painted();
report('close up, dragged', await frames(page, drag));
await keyboard.press('0');
await page.painted();
const at = await page.middleOf(1);
await mouse.click(at.x, at.y);
report(
  'one piece dragged',
  await frames(page, async () => {
    await mouse.move(at.x, at.y);
    await mouse.down();
    for (let i = 0; i < 60; i += 1) await mouse.move(at.x + 100 + 90 * Math.sin(i / 8), at.y + 80 * Math.cos(i / 8));
    await mouse.up();
  }),
);
await page.page.context().browser()!.close();
