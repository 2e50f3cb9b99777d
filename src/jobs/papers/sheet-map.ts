/**
 * Map of a job's sheets for the bench: the totals, then each sheet as it will look, with the number and order of every
 * piece.
 */

import { transform } from '../../geometry/affine.ts';
import { fitContours } from '../../geometry/fit-contours.ts';
import type { Bounds } from '../../geometry/types.ts';
import { counted } from '../../core/units.ts';
import { captionPlaces } from '../../export/page/caption-places.ts';
import type { Captioned, CaptionPlace } from '../../export/page/caption-places.ts';
import { Flow, papers } from '../../export/page/flow.ts';
import type { CaptionFaces } from '../../export/page/flow.ts';
import { minutes, sizeIn } from '../../core/in-words.ts';
import { facts, section } from '../../export/bench/job-sheet.ts';
import { stockLine } from '../../export/words/machine-settings.ts';
import { writeWork } from '../../export/bench/work-table.ts';
import type { Tools } from '../../export/job/job.ts';
import { captionWidth, curvesOf } from '../../export/page/page.ts';
import type { Page } from '../../export/page/page.ts';
import { heightOf, pageByPage, roomOn } from '../../export/page/paged.ts';
import { drawLaid, drawScored, roomOnPaper } from '../../export/sheets/sheet-page.ts';
import { inkOn } from '../../look/ink.ts';
import { rushSign } from '../../look/signs.ts';
import { lookOfStock } from '../../look/stock-look.ts';
import { ofStocks, toLookAt } from './before-cutting.ts';
import { byOrder, tagNames } from './by-order.ts';
import type { LaidOutJob } from '../job.ts';
import type { JobSheet, LaidJobPiece } from '../layout/layout.ts';
import type { Leftover } from '../offcuts/leftovers.ts';
import { keptLabel, leadEm } from './kept-label.ts';
import { jobFacts, estimateOfSheet, sheetTag } from '../totals.ts';
import { keptOffcuts } from '../offcuts/write-offcuts.ts';
import type { KeptOffcut } from '../offcuts/write-offcuts.ts';
import { clip } from '../../core/length.ts';

const marginMm = 15;
const mapMm = 165;
const leastOfMap = 0.75;
const quiet = '#666666';
const keptInk = '#2F6F4F';

/** Room around a sheet for numbers that find none on it, in mm on paper. */
const aroundMm = { side: 6, above: 3.5 } as const;

type NameOf = ReturnType<typeof tagNames>;

/** Each page is drawn when it is asked for: the outlines of hundreds of pieces would fill the memory. */
export async function sheetMap(job: LaidOutJob, tools: Pick<Tools, 'captions'>): Promise<Iterable<Page>> {
  const faces: CaptionFaces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const paper = { ...papers[job.model.units], margin: marginMm };
  const begin = () => new Flow(faces, marginMm, paper.width - 2 * marginMm);
  const summary = [
    head(begin(), job),
    ...facts(begin, 'Job estimate', jobFacts(job)),
    ...leftOut(begin, job),
    ...toLookAt(begin, job),
    ...ofStocks(begin, job),
  ];
  const kept = keptOffcuts(job);
  const nameOf = tagNames(job);
  const sheets = job.layout.sheets.map((sheet) => {
    const own = kept.filter((each) => each.sheet === sheet);
    const lists = [...pieceLists(begin, sheet, nameOf), ...workOn(begin, sheet)];
    const room = roomOn(paper) - heightOf(lists);
    return {
      blocks: [sheetBlock(begin, sheet, job, own, room), ...lists],
      title: job.title,
      part: sheet.name,
      joins: true,
    };
  });
  return pageByPage([{ blocks: summary, title: job.title }, ...sheets], paper);
}

function head(flow: Flow, { title }: LaidOutJob): Flow {
  flow.write('Sheet map, for the bench', { size: 3, fill: quiet });
  flow.write(title, { size: title.length > 60 ? 4.5 : 6, bold: true });
  return flow;
}

/** Lists what is missing before anything is cut, by order as in the pick list. */
function leftOut(begin: () => Flow, job: LaidOutJob): Flow[] {
  const nameOf = tagNames(job);
  return section(begin, 'Not in the cut files', (add) => {
    for (const { order, leftOut: lines } of byOrder(job)) {
      const write = (what: string): void => {
        add().fact(order === '' ? 'No order' : clip(order), what, 34);
      };
      for (const { quantity, name, why } of lines)
        write(`${quantity === undefined ? '' : `${quantity} × `}${clip(name)}: ${why}`);
      for (const { stock, of } of job.layout.left)
        if (of.of.order === order) write(`${pieceName(of, nameOf)}: no room left on the sheets of ${stock}`);
    }
  });
}

/** One after another, as in the cut file. */
function workOn(begin: () => Flow, sheet: JobSheet): Flow[] {
  return section(begin, 'Work in this order', (add) => {
    writeWork(add(), { tag: sheetTag(sheet, sheet.name), plan: sheet.plan });
  });
}

/** Drawn smaller where that keeps its lists on the same page: no smaller than three quarters, or than it is. */
function sheetBlock(
  begin: () => Flow,
  sheet: JobSheet,
  job: LaidOutJob,
  kept: readonly KeptOffcut[],
  room: number,
): Flow {
  const whole = begin();
  const scale = Math.min(whole.width / sheet.width, mapMm / sheet.height);
  drawnSheet(whole, sheet, job, kept, scale);
  const smaller = scale - (whole.height - room) / sheet.height;
  if (whole.height <= room || smaller < Math.min(leastOfMap * scale, 1)) return whole;
  return drawnSheet(begin(), sheet, job, kept, smaller);
}

function drawnSheet(
  flow: Flow,
  sheet: JobSheet,
  { model: { units } }: LaidOutJob,
  kept: readonly KeptOffcut[],
  scale: number,
): Flow {
  const { time } = estimateOfSheet(sheet);
  const rush = sheet.pieces.filter(({ of }) => of.of.rush).length;
  const sheetFacts = [
    sizeIn(sheet.width, sheet.height, units),
    counted(sheet.pieces.length, 'piece'),
    ...(rush > 0 ? [`${rush} rush (${rushSign})`] : []),
    `${Math.round(100 * sheet.filled)} % filled`,
    ...('seconds' in time ? [`about ${minutes(time.seconds)}`] : []),
  ];
  flow.write(sheet.name, { bold: true, size: 5 });
  flow.write(sheetFacts.join(' · '), { fill: quiet });
  flow.write(stockLine(sheetTag(sheet, sheet.name)), { size: 3 });
  flow.skip(aroundMm.above);
  const { faces, left, width, y } = flow;
  flow.later = () => {
    const map = new Flow(faces, left, width);
    map.y = y;
    drawMap(map, sheet, scale, kept);
    return map.page;
  };
  flow.skip(sheet.height * scale + aroundMm.side);
  return flow;
}

function drawMap({ page, left, y, faces }: Flow, sheet: JobSheet, scale: number, kept: readonly KeptOffcut[]): void {
  const high = sheet.height * scale;
  const place = { scale, x: left, y: y - high };
  page.draw(curvesOf(fitContours(sheet.outline), scale, place.x, place.y), {
    fill: '#F4F2EC',
    stroke: '#777777',
    lineWidth: 0.2,
  });
  const look = lookOfStock(sheet.from.stock);
  const rim = { stroke: look.char, lineWidth: 0.15 };
  for (const { of, toSheet, region } of sheet.pieces) {
    drawLaid(page, { piece: of.piece, toSheet, region }, { look, rim, ...place });
  }
  drawScored(page, sheet.plan, sheet.output, place);
  const captions = kept.flatMap(({ id, leftover }) => drawKept(page, id, leftover, place, faces) ?? []);
  const onPaper = { a: scale, b: 0, c: 0, d: scale, e: place.x, f: place.y };
  const numbered = sheet.pieces.map(({ number, of, toSheet, region }): Captioned => ({
    ...roomOnPaper(of.piece, toSheet, onPaper),
    region: transform(region, onPaper),
    wide: captionWidth(faces.bold, numberText(number, of)),
  }));
  const around = {
    minX: place.x - aroundMm.side,
    minY: place.y - aroundMm.side,
    maxX: place.x + sheet.width * scale + aroundMm.side,
    maxY: place.y + high + aroundMm.above,
  };
  const places = captionPlaces(numbered, around, captions);
  for (const [index, { number, of }] of sheet.pieces.entries())
    writeNumber(page, numberText(number, of), places[index]!, look.wood, faces);
}

/** A leftover worth keeping, with the number to write on it; returns the box of the caption. */
function drawKept(
  page: Flow['page'],
  id: number,
  { region, at }: Leftover,
  { scale, x, y }: { readonly scale: number; readonly x: number; readonly y: number },
  { plain }: CaptionFaces,
): Bounds | undefined {
  const onPaper = { a: scale, b: 0, c: 0, d: scale, e: x + at.x * scale, f: y + at.y * scale };
  page.draw(curvesOf(fitContours(region), scale, onPaper.e, onPaper.f), { stroke: keptInk, lineWidth: 0.3 });
  const label = keptLabel(transform(region, onPaper), id, plain);
  if (!label) return undefined;
  const { lines, size, box } = label;
  for (const [index, line] of lines.entries()) {
    const middle = box.maxY - (index * leadEm + 0.5) * size;
    const place = { x: (box.minX + box.maxX) / 2, y: middle - 0.33 * size, size, at: 'middle', fill: keptInk } as const;
    page.caption(line, plain, place);
  }
  return box;
}

function numberText(number: number, { of: { rush } }: LaidJobPiece['of']): string {
  return `${number}${rush ? rushSign : ''}`;
}

/** Only where it has to cover something, it has a light background. */
function writeNumber(
  page: Flow['page'],
  text: string,
  { box, size, leader, covers }: CaptionPlace,
  wood: string,
  { bold }: CaptionFaces,
): void {
  const { minX, minY, maxX, maxY } = box;
  if (leader) {
    const [from, to] = leader;
    page.line([from.x, from.y], [to.x, to.y], inkOn('#ffffff'), 0.2);
  }
  if (covers) page.box(minX, minY, maxX - minX, maxY - minY, { fill: '#ffffff' });
  const y = (minY + maxY) / 2 - 0.36 * size;
  const fill = inkOn(leader || covers ? '#ffffff' : wood);
  page.caption(text, bold, { x: (minX + maxX) / 2, y, size, at: 'middle', fill });
}

/** The numbers with their pieces, in two columns. */
function pieceLists(begin: () => Flow, { pieces }: JobSheet, nameOf: NameOf): Flow[] {
  const rows = Math.ceil(pieces.length / 2);
  return Array.from({ length: rows }, (_, row) => {
    const flow = begin();
    const column = flow.width / 2;
    let lowest = flow.y;
    for (const [index, laid] of [pieces[row], pieces[row + rows]].entries()) {
      if (!laid) continue;
      flow.y = 0;
      const { order, rush } = laid.of.of;
      const who = order === '' ? '' : `${clip(order, 24)} · `;
      flow.write(numberText(laid.number, laid.of), { bold: true, indent: index * column, width: 9 });
      flow.y = 0;
      const indent = index * column + 10;
      flow.write(`${who}${pieceName(laid.of, nameOf)}${rush ? ' · rush' : ''}`, {
        indent,
        width: column - 12,
      });
      lowest = Math.min(lowest, flow.y);
    }
    flow.y = lowest;
    return flow;
  });
}

/** Name of the tag, and of the piece if the tag has several. */
export function pieceName({ of, piece }: LaidJobPiece['of'], nameOf: NameOf): string {
  const name = clip(nameOf(of), 40);
  return of.tag.pieces.length === 1 ? name : `${name}, ${clip(piece.title, 24)}`;
}
