/** Page of all sheets, for people: where each piece lies, with totals. */

import { oncePer } from '../../core/once-per.ts';
import { applyTo, chain, transform } from '../../geometry/affine.ts';
import { difference, offset, union } from '../../geometry/clipper.ts';
import { fitContours } from '../../geometry/fit-contours.ts';
import { poleOf } from '../../geometry/pole.ts';
import type { Affine, Point, Region } from '../../geometry/types.ts';
import { isError } from '../../core/issue.ts';
import type { FontFace } from '../../text/font-face.ts';
import { inkOn } from '../../look/ink.ts';
import { lookOfStock } from '../../look/stock-look.ts';
import type { Look } from '../../look/looks.ts';
import { blend } from '../../look/blend.ts';
import { captionPlaces } from '../page/caption-places.ts';
import type { Captioned, CaptionPlace } from '../page/caption-places.ts';
import { errorNote } from '../job/job.ts';
import type { Tools } from '../job/job.ts';
import { stockLine } from '../words/machine-settings.ts';
import { captionWidth, curvesOf, movedUp, PageBuilder, wrapped } from '../page/page.ts';
import type { Page } from '../page/page.ts';
import type { SheetJobs } from './sheet-job.ts';
import type { LaidPiece, PlannedSheet } from './sheet-plan.ts';
import { styleOf } from '../page/styles.ts';
import { speltBy } from '../../tag/outlines-only.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import type { CutPlan } from '../../toolpath/cut-plan.ts';

/** Page width in mm: A4 (ISO 216), or letter paper for inches. */
const widths = { mm: 210, in: 215.9 } as const;
const marginMm = 15;

/** Gap below each sheet, in mm. */
const gapMm = 9;
const sizeMm = 3.4;
const leadingMm = 5.2;
const columnMm = 30;
const red = '#B00020';

/** Of score lines, in mm on paper. */
const scoreWidthMm = 0.25;

/** Room around a sheet for names that find none on it, in mm on paper. */
const aroundMm = { side: 6, above: 1 } as const;

/** As tall as it needs to be. */
export async function sheetPage(
  { title, plan, jobs, facts }: SheetJobs,
  { captions }: Pick<Tools, 'captions'>,
): Promise<Page> {
  const { units } = jobs[0]!.tag;
  const width = widths[units];
  const margin = marginMm;
  const [plain, bold] = [await captions(600), await captions(800)];
  const page = new PageBuilder();
  // Set from 0 downwards and moved up onto the page at the end.
  let y = -margin - 7;
  const write = (text: string, x: number, face: FontFace, size = sizeMm, fill?: string) => {
    for (const line of wrapped(text, face, size, width - margin - x)) {
      page.caption(line, face, { x, y, size, ...(fill === undefined ? {} : { fill }) });
      y -= (leadingMm * size) / sizeMm;
    }
  };
  const note = errorNote(jobs[0]!);
  write(title, margin, bold, 6.5);
  if (note) write(note, margin, bold, sizeMm, red);
  const scale = (width - 2 * margin) / plan.sheet.width;
  const faulty = new Set(jobs[0]!.issues.filter(isError).map(({ label }) => label ?? ''));
  const several = new Set(plan.sheets.map(({ from }) => from.stock.name)).size > 1;
  for (const [index, sheet] of plan.sheets.entries()) {
    const { from } = sheet;
    if (plan.sheets.length > 1)
      write(
        `Sheet ${index + 1}${several && from.stock.name !== undefined ? `: ${from.stock.name}` : ''}`,
        margin,
        plain,
      );
    write(stockLine(jobs[index]!.tag), margin, plain, 3);
    y -= 1;
    y -= plan.sheet.height * scale - sizeMm;
    const { output } = jobs[index]!.tag;
    drawSheet(page, sheet, { scale, x: margin, y }, { look: lookOfStock(from.stock), output, face: plain, faulty });
    y -= gapMm;
  }
  for (const { name, value } of facts) {
    page.caption(name, bold, { x: margin, y, size: sizeMm });
    write(value, margin + columnMm, plain);
  }
  const height = margin - y;
  return movedUp(page.page(width, height), height);
}

interface Corner {
  readonly scale: number;
  /** Lower left corner. */
  readonly x: number;
  readonly y: number;
}

interface SheetLook extends Pick<Tag, 'output'> {
  readonly look: Look;
  readonly face: FontFace;
  /** Names of tags with errors, which get a red outline. */
  readonly faulty: ReadonlySet<string>;
}

function drawSheet(
  page: PageBuilder,
  { pieces, plan }: PlannedSheet,
  corner: Corner,
  { look, output, face, faulty }: SheetLook,
): void {
  const { scale, x, y } = corner;
  // Its bounds are the whole sheet.
  const [width, height] = [plan.bounds.maxX * scale, plan.bounds.maxY * scale];
  page.box(x, y, width, height, { fill: '#F4F2EC', stroke: '#777777', lineWidth: 0.2 });
  const named: { readonly name: string; readonly on: Captioned }[] = [];
  const onPaper = { a: scale, b: 0, c: 0, d: scale, e: x, f: y };
  for (const { name, piece, toSheet, region } of pieces) {
    const rim = faulty.has(name) ? { stroke: red, lineWidth: 0.5 } : { stroke: look.char, lineWidth: 0.15 };
    const isEngraved = drawLaid(page, { piece, toSheet, region }, { look, rim, ...corner });
    const caption = name === '' ? piece.title : name;
    // A piece on which its name is engraved, or which is its name cut out, shows which one it is.
    const shown = isEngraved || isNameItself(piece, caption) ? '' : caption;
    const wide = captionWidth(face, shown);
    const room = shown === '' ? { marks: [] } : roomOnPaper(piece, toSheet, onPaper);
    named.push({ name: shown, on: { ...room, region: transform(region, onPaper), wide } });
  }
  drawScored(page, plan, output, corner);
  const area = {
    minX: x - aroundMm.side,
    minY: y - aroundMm.side,
    maxX: x + width + aroundMm.side,
    maxY: y + height + aroundMm.above,
  };
  const places = captionPlaces(
    named.map(({ on }) => on),
    area,
    [],
  );
  for (const [index, { name }] of named.entries()) writeName(page, name, places[index]!, look.wood, face);
}

/** Whether the letters that it is made of spell its name. */
function isNameItself(piece: Piece, name: string): boolean {
  return plainText(speltBy(piece)).includes(plainText(name));
}

/** Without spaces; a letter with its accent is one or two. */
const plainText = (text: string): string => text.normalize('NFC').replaceAll(/\s/g, '');

interface LaidLook extends Corner {
  readonly look: Look;
  readonly rim: { readonly stroke: string; readonly lineWidth: number };
}

/**
 * Draws a piece where it lies on its sheet, in the colours of its stock. Returns whether anything is engraved on it.
 */
export function drawLaid(
  page: PageBuilder,
  { piece, toSheet, region }: Pick<LaidPiece, 'piece' | 'toSheet' | 'region'>,
  { look, rim, scale, x, y }: LaidLook,
): boolean {
  const curves = (drawn: Region) => curvesOf(fitContours(drawn), scale, x, y);
  page.draw(curves(region), { fill: look.wood, ...rim });
  const engraved = piece.marks.filter(({ operation }) => operation === 'engrave').map((mark) => mark.region);
  page.draw(curves(transform(union(engraved), toSheet)), { fill: blend(look.wood, look.burn, look.burnStrength) });
  return engraved.length > 0;
}

/** The score lines of a sheet, over its pieces, as the beam follows them. */
export function drawScored(
  page: PageBuilder,
  { steps }: CutPlan,
  output: Tag['output'],
  { scale, x, y }: Corner,
): void {
  const { color } = styleOf({ output }, 'score');
  for (const { paths } of steps.filter(({ operation }) => operation === 'score'))
    for (const { contours } of paths)
      page.draw(curvesOf(contours, scale, x, y), { stroke: color, lineWidth: scoreWidthMm });
}

/** What is marked on a piece, with some air, and the most room beside it; in tag coordinates, the same for every copy. */
const roomOn = oncePer((piece: Piece): { readonly marks: Region; readonly middle?: Point } => {
  const marks = union(piece.marks.map(({ region }) => offset(region, 0.5)));
  const middle = poleOf(marks.length === 0 ? piece.region : difference(piece.region, [marks]), 0.5);
  return { marks, ...(middle ? { middle } : {}) };
});

/** Where a caption may stand on a piece that lies on a sheet. */
export function roomOnPaper(piece: Piece, toSheet: Affine, onPaper: Affine): Pick<Captioned, 'marks' | 'middle'> {
  const { marks, middle } = roomOn(piece);
  const toPaper = chain(toSheet, onPaper);
  return { marks: transform(marks, toPaper), ...(middle ? { middle: applyTo(middle, toPaper) } : {}) };
}

/** Omitted if it would cover its piece. */
function writeName(page: PageBuilder, name: string, place: CaptionPlace, wood: string, face: FontFace): void {
  const { box, size, leader, covers } = place;
  if (covers || name === '') return;
  if (leader) page.line([leader[0].x, leader[0].y], [leader[1].x, leader[1].y], inkOn('#ffffff'), 0.2);
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2 - 0.36 * size];
  page.caption(name, face, { x, y, size, at: 'middle', fill: inkOn(leader ? '#ffffff' : wood) });
}
