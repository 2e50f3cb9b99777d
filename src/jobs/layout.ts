/** A job on its sheets: which piece of which order lies where, each with a number; and what goes on no sheet. */

import { chain, transform, translation } from '../geometry/affine.ts';
import { union } from '../geometry/clipper.ts';
import { area, boundsOf } from '../geometry/measure.ts';
import type { Affine, Bounds, Region } from '../geometry/types.ts';
import type { CutFrom } from '../spec/model.ts';
import type { Tag } from '../tag/tag.ts';
import { planLaid } from '../toolpath/cut-plan.ts';
import type { CutPlan } from '../toolpath/cut-plan.ts';
import { movePaths } from '../toolpath/piece-paths.ts';
import { fill } from './fill.ts';
import type { Filled, FillOptions } from './fill.ts';
import type { Offcut } from './offcuts.ts';
import type { JobPiece, JobPieces, StockWork } from './pieces.ts';

export interface LaidJobPiece {
  /** Counted through the whole job, from 1. */
  readonly number: number;
  readonly of: JobPiece;
  /** From the tag's coordinates to the sheet's: y up, the lower left corner of its box at the origin. */
  readonly toSheet: Affine;
  /** Finished outline on the sheet, and what the beam encloses. */
  readonly region: Region;
  readonly enclosed: Region;
}

export interface JobSheet {
  readonly stock: string;
  /** Such as “ply3 sheet 2” or “ply3 offcut 14”. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Kept free along its edges. */
  readonly margin: number;
  /** Material between two pieces, the beam's width included. */
  readonly gap: number;
  /** Its outline: of an offcut, whatever that is. */
  readonly outline: Region;
  readonly offcut?: { readonly file: string; readonly offcut: Offcut };
  readonly pieces: readonly LaidJobPiece[];
  readonly plan: CutPlan;
  readonly from: CutFrom;
  readonly output: Tag['output'];
  /** Of the sheet's area, from 0 to 1. */
  readonly filled: number;
}

export interface JobLayout {
  readonly sheets: readonly JobSheet[];
  readonly left: readonly { readonly stock: string; readonly of: JobPiece }[];
}

export interface LayoutOptions extends Pick<FillOptions, 'checkpoint' | 'effort' | 'keepTogether'> {
  readonly progress?: (stock: string) => void;
}

export async function layOut({ stocks }: JobPieces, options: LayoutOptions): Promise<JobLayout> {
  const sheets: JobSheet[] = [];
  const left: { stock: string; of: JobPiece }[] = [];
  let number = 0;
  for (const stock of stocks) {
    options.progress?.(stock.name);
    const pieces = stock.pieces.map((of) => ({ of, region: of.region, order: of.of.order, rush: of.of.rush }));
    const { filled, left: rest } = await fill(pieces, stock.rooms, options);
    left.push(...rest.map(({ of }) => ({ stock: stock.name, of })));
    let count = 0;
    for (const group of hastyFirst(bySheet(filled))) {
      const { room } = group[0]!;
      const name = room.offcut ? `${stock.name} offcut ${room.offcut.offcut.id}` : `${stock.name} sheet ${++count}`;
      await options.checkpoint();
      const sheet = sheetOf(group, stock, name, number);
      number += sheet.pieces.length;
      sheets.push(sheet);
    }
  }
  return { sheets, left };
}

type Group = readonly Filled<{
  readonly of: JobPiece;
  readonly region: Region;
  readonly order: string;
  readonly rush: boolean;
}>[];

/** The rectangles of an offcut are one sheet. */
function bySheet(filled: Group): Group[] {
  const groups: Group[number][][] = [];
  const known = new Map<Offcut, Group[number][]>();
  for (const each of filled) {
    const { offcut } = each.room;
    const group = offcut && known.get(offcut.offcut);
    if (group) group.push(each);
    else {
      const own = [each];
      groups.push(own);
      if (offcut) known.set(offcut.offcut, own);
    }
  }
  return groups;
}

/** Whatever the sheet is, what is in a hurry is cut first. */
function hastyFirst(groups: readonly Group[]): Group[] {
  const isHasty = (group: Group) => group.some(({ laid }) => laid.some(({ piece }) => piece.rush));
  return [...groups.filter(isHasty), ...groups.filter((group) => !isHasty(group))];
}

function sheetOf(group: Group, { name: stock, from, output }: StockWork, name: string, before: number): JobSheet {
  const { room } = group[0]!;
  const outline = room.offcut?.offcut.region ?? rectangle(room.room.width, room.room.height);
  const box = boundsOf(outline)!;
  const laid = group.flatMap(({ room: { at }, laid: pieces }) =>
    pieces.map(({ piece: { of }, transform: onto }) => {
      const toSheet = chain(onto, translation(at.x, at.y));
      return { of, toSheet, region: transform(of.piece.region, toSheet), enclosed: transform(of.region, toSheet) };
    }),
  );
  const pieces = inReadingOrder(laid).map((each, index) => ({ number: before + index + 1, ...each }));
  const bounds: Bounds = { minX: 0, minY: 0, maxX: box.maxX, maxY: box.maxY };
  const lines = pieces.map(({ number, of, toSheet }) =>
    movePaths({ ...of.lines, piece: pathName(number, of) }, toSheet),
  );
  const covered = pieces.reduce((sum, { enclosed }) => sum + area(enclosed), 0);
  return {
    stock,
    name,
    width: box.maxX,
    height: box.maxY,
    margin: room.room.margin,
    gap: room.room.gap,
    outline,
    ...(room.offcut ? { offcut: room.offcut } : {}),
    pieces,
    plan: planLaid(lines, bounds, { stock: from.stock, output }),
    from,
    output,
    filled: covered / area(outline),
  };
}

/** In the cut files, what a path belongs to. */
function pathName(number: number, { of: { order, label }, piece }: JobPiece): string {
  return [`${number}`, order, label, piece.id].filter((part) => part !== '').join(': ');
}

/** Pieces whose tops lie no further apart than this are in one line, in mm. */
const lineMm = 25;

/** From the top to the bottom, each line from the left to the right. */
function inReadingOrder<T extends { readonly region: Region }>(laid: readonly T[]): T[] {
  const boxes = new Map(laid.map((each) => [each, boundsOf(each.region)!]));
  const down = [...laid].sort((a, b) => boxes.get(b)!.maxY - boxes.get(a)!.maxY);
  const lines: T[][] = [];
  for (const each of down) {
    const line = lines.at(-1);
    if (line && boxes.get(line[0]!)!.maxY - boxes.get(each)!.maxY < lineMm) line.push(each);
    else lines.push([each]);
  }
  return lines.flatMap((line) => line.sort((a, b) => boxes.get(a)!.minX - boxes.get(b)!.minX));
}

function rectangle(width: number, height: number): Region {
  return [
    [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height },
    ],
  ];
}

/** What of a sheet is cut, as one region. */
export function cutFromSheet({ pieces }: Pick<JobSheet, 'pieces'>): Region {
  return union(pieces.map(({ enclosed }) => enclosed));
}
