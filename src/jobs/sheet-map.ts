/**
 * Map of a job's sheets for the bench: the totals, then each sheet as it will look, with the number and order of every
 * piece.
 */

import { oncePer } from '../core/once-per.ts';
import { applyTo } from '../geometry/affine.ts';
import { difference, offset } from '../geometry/clipper.ts';
import { fitContours } from '../geometry/fit-contours.ts';
import { poleOf } from '../geometry/pole.ts';
import type { Point } from '../geometry/types.ts';
import { counted } from '../core/units.ts';
import { Flow, papers } from '../export/flow.ts';
import type { CaptionFaces } from '../export/flow.ts';
import { minutes, sizeIn } from '../export/in-words.ts';
import { facts, section } from '../export/job-sheet.ts';
import type { Tools } from '../export/job.ts';
import { captionWidth, curvesOf } from '../export/page.ts';
import type { Page } from '../export/page.ts';
import { paged } from '../export/paged.ts';
import { drawLaid } from '../export/sheet-page.ts';
import { lookOfStock } from '../look/stock-look.ts';
import type { Piece } from '../tag/tag.ts';
import { tagName } from './by-order.ts';
import type { LaidOutJob } from './job.ts';
import type { JobSheet, LaidJobPiece } from './layout.ts';
import type { Leftover } from './leftovers.ts';
import { jobFacts, estimateOfSheet } from './totals.ts';
import { keptOffcuts } from './write-offcuts.ts';
import type { KeptOffcut } from './write-offcuts.ts';
import { clip } from '../core/length.ts';

const marginMm = 15;
const mapMm = 165;
const quiet = '#666666';
const keptInk = '#2F6F4F';
export const rushInk = '#B00020';

/** Smallest and largest height of a number on a piece, in mm on paper. */
const numberMm = [1.5, 3.2] as const;

/** Place for the number where it covers no engraving, in tag coordinates: the same for every copy of a piece. */
const placeOf = oncePer((piece: Piece): Point | undefined => {
  const engraved = piece.marks.map(({ region }) => offset(region, 1));
  return poleOf(difference(piece.region, engraved), 0.5) ?? poleOf(piece.region, 0.5);
});

export async function sheetMap(job: LaidOutJob, tools: Pick<Tools, 'captions'>): Promise<Page[]> {
  const faces: CaptionFaces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const paper = { ...papers[job.model.units], margin: marginMm };
  const begin = () => new Flow(faces, marginMm, paper.width - 2 * marginMm);
  const summary = paged(
    [head(begin(), job), ...facts(begin, 'Job estimate', jobFacts(job)), ...leftOut(begin, job)],
    paper,
    job.title,
  );
  const kept = keptOffcuts(job);
  const sheets = job.layout.sheets.flatMap((sheet) => {
    const own = kept.filter((each) => each.sheet === sheet);
    return paged(
      [drawnSheet(begin(), sheet, job, own), ...pieceLists(begin, sheet)],
      paper,
      `${job.title}: ${sheet.name}`,
    );
  });
  return [...summary, ...sheets];
}

function head(flow: Flow, { title }: LaidOutJob): Flow {
  flow.write('Sheet map, for the bench', { size: 3, fill: quiet });
  flow.write(title, { size: title.length > 60 ? 4.5 : 6, bold: true });
  return flow;
}

/** Lists what is missing before anything is cut. */
function leftOut(begin: () => Flow, job: LaidOutJob): Flow[] {
  const lost = job.layout.left;
  return section(begin, 'Not in the cut files', (add) => {
    for (const { order, spec, label, quantity, why } of job.leftOut) {
      const what = `${quantity === undefined ? '' : `${quantity} × `}${clip(tagName({ spec, label }))}`;
      add().fact(order === '' ? 'No order' : clip(order), `${what}: ${why}`, 34);
    }
    for (const { stock, of } of lost)
      add().fact(
        of.of.order === '' ? 'No order' : clip(of.of.order),
        `${pieceName(of)}: no room left on the sheets of ${stock}`,
        34,
      );
  });
}

function drawnSheet(flow: Flow, sheet: JobSheet, { model: { units } }: LaidOutJob, kept: readonly KeptOffcut[]): Flow {
  const { time } = estimateOfSheet(sheet);
  const sheetFacts = [
    sizeIn(sheet.width, sheet.height, units),
    counted(sheet.pieces.length, 'piece'),
    `${Math.round(100 * sheet.filled)} % filled`,
    ...('seconds' in time ? [`about ${minutes(time.seconds)}`] : []),
  ];
  flow.write(sheet.name, { bold: true, size: 5 });
  flow.write(sheetFacts.join(' · '), { fill: quiet });
  flow.skip(2);
  flow.skip(drawMap(flow, sheet, undefined, kept));
  flow.skip(3);
  return flow;
}

/** Returns its height. */
function drawMap(
  { page, left, width, y, faces }: Flow,
  sheet: JobSheet,
  scale = Math.min(width / sheet.width, mapMm / sheet.height),
  kept: readonly KeptOffcut[] = [],
): number {
  const high = sheet.height * scale;
  const place = { scale, x: left, y: y - high };
  page.draw(curvesOf(fitContours(sheet.outline), scale, place.x, place.y), {
    fill: '#F4F2EC',
    stroke: '#777777',
    lineWidth: 0.2,
  });
  const look = lookOfStock(sheet.from.stock);
  for (const { of, toSheet, region } of sheet.pieces) {
    const rim = of.of.rush ? { stroke: rushInk, lineWidth: 0.4 } : { stroke: look.char, lineWidth: 0.15 };
    drawLaid(page, { piece: of.piece, toSheet, region }, { look, rim, ...place });
  }
  for (const { id, leftover } of kept) drawKept(page, id, leftover, place, faces);
  for (const laid of sheet.pieces) writeNumber(page, laid, place, faces);
  return high;
}

/** A leftover worth keeping, with the number to write on it. */
function drawKept(
  page: Flow['page'],
  id: number,
  { region, at }: Leftover,
  { scale, x, y }: { readonly scale: number; readonly x: number; readonly y: number },
  { plain }: CaptionFaces,
): void {
  const [left, bottom] = [x + at.x * scale, y + at.y * scale];
  page.draw(curvesOf(fitContours(region), scale, left, bottom), { stroke: keptInk, lineWidth: 0.3 });
  const middle = poleOf(region, 0.5);
  if (!middle) return;
  const place = {
    x: left + middle.x * scale,
    y: bottom + middle.y * scale - 1,
    size: 3,
    at: 'middle',
    fill: keptInk,
  } as const;
  page.caption(`keep: offcut ${id}`, plain, place);
}

/** On a light background, so that it is legible on dark wood and over letters. */
function writeNumber(
  page: Flow['page'],
  { number, of, toSheet }: LaidJobPiece,
  { scale, x, y }: { readonly scale: number; readonly x: number; readonly y: number },
  { bold }: CaptionFaces,
): void {
  const free = placeOf(of.piece);
  if (!free) return;
  const middle = applyTo(free, toSheet);
  const text = String(number);
  const size = Math.max(numberMm[0], Math.min(numberMm[1], 8 * scale));
  const wide = captionWidth(bold, text) * size;
  const [left, bottom] = [x + middle.x * scale, y + middle.y * scale - 0.36 * size];
  page.box(left - wide / 2 - 0.25 * size, bottom - 0.22 * size, wide + 0.5 * size, 1.16 * size, { fill: '#FFFFFF' });
  page.caption(text, bold, { x: left, y: bottom, size, at: 'middle' });
}

/** The numbers with their pieces, in two columns. */
function pieceLists(begin: () => Flow, { pieces }: JobSheet): Flow[] {
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
      flow.write(String(laid.number), { bold: true, indent: index * column, width: 9 });
      flow.y = 0;
      const indent = index * column + 10;
      flow.write(`${who}${pieceName(laid.of)}${rush ? ' · rush' : ''}`, {
        indent,
        width: column - 12,
        ...(rush ? { fill: rushInk } : {}),
      });
      lowest = Math.min(lowest, flow.y);
    }
    flow.y = lowest;
    return flow;
  });
}

/** Name of the tag, and of the piece if the tag has several. */
export function pieceName({ of, piece }: LaidJobPiece['of']): string {
  const name = clip(tagName(of), 40);
  return of.tag.pieces.length === 1 ? name : `${name}, ${clip(piece.title, 24)}`;
}
