/** Prepares letters for sliding: as they will be once grown, with their marks in place. */

import { scaling, transform, translation } from '../../geometry/affine.ts';
import { offset, union } from '../../geometry/clipper.ts';
import { area, boundsOf } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { circle } from '../shapes/plates.ts';
import { countersOf, hairlinesOf, hairlineStrokes } from './hairlines.ts';
import type { LetterPart } from './letters.ts';
import { besideGap, placeMarks } from './marks.ts';
import type { PlacedMark } from './marks.ts';
import type { Measures } from './measures.ts';
import type { Runs } from './runs.ts';
import { columnsOf, rowsOf } from './runs.ts';

/** A part of a letter independent of its place; its origin is on the baseline. */
export interface LetterShape {
  readonly part: LetterPart;
  /** As the font has it: a sign may be widened. */
  readonly drawn: LetterPart;
  /** The whole part as grown, its hairlines thickened. */
  readonly base: Region;
  /** What thickens its hairlines, before growth. */
  readonly strokes: Region;
  /** Its counters and those of its marks, as grown without them. */
  readonly counters: Region;
  /** The grown marks where the font has them. */
  readonly grownMarks: readonly Region[];
  readonly marks: readonly PlacedMark[];
  readonly rows: Runs;
  readonly columns: Runs;
  /** Rows and columns of its marks alone. */
  readonly markRows: Runs;
  readonly markColumns: Runs;
}

/** A letter shape at its place. */
export interface LetterBody extends LetterShape {
  /** The letter of the text it belongs to: its index and its text. */
  readonly index: number;
  readonly text: string;
  readonly line: number;
  /** Whether a space precedes it. */
  readonly afterGap: boolean;
  /** Its origin in the layout. */
  readonly at: Point;
}

/** Tolerance of letters while they are compared, in mm; this only determines their places, not their outlines. */
export const coarseMm = 0.02;

/**
 * A sign on a post is visible if it is `least` times as wide as the web; it is widened by at most the factor `most`.
 */
const signWidth = { least: 2, most: 1.5 } as const;

/** The same for a dot, which is one if it is no longer than `round` times its width. */
const dotWidth = { least: 1.7, most: 1.5, round: 1.5 } as const;

/** A dot that stands on the line and is no higher than this, in x-heights, is a full stop. */
const stopHeight = 0.45;

/** A full stop, large enough to be told from the bar on which it stands. */
function enlargedStop(part: LetterPart, measures: Measures): LetterPart {
  const { xHeight } = measures;
  const box = boundsOf(part.base)!;
  const isStop = isDot(box) && box.maxY < stopHeight * xHeight && box.minY > -stopHeight * xHeight;
  const factor = dotFactor(box.maxX - box.minX, measures);
  if (part.marks.length > 0 || !isStop || !(factor > 1)) return part;
  const foot = { x: (box.minX + box.maxX) / 2, y: box.minY };
  return { ...part, base: transform(part.base, scaling(factor, factor, foot)) };
}

/** By which a dot is to be enlarged; 1 or less if it is wide enough. */
function dotFactor(wide: number, { web, grow }: Measures): number {
  return Math.min((dotWidth.least * web - 2 * grow) / wide, dotWidth.most);
}

function isDot({ minX, maxX, minY, maxY }: Bounds): boolean {
  const [wide, high] = [maxX - minX, maxY - minY];
  return Math.max(wide, high) <= dotWidth.round * Math.min(wide, high);
}

/** A high sign, wide enough to be told from its post. */
function widened(part: LetterPart, { web, grow }: Measures): LetterPart {
  const { minX, maxX } = boundsOf(part.base)!;
  const factor = Math.min((signWidth.least * web - 2 * grow) / (maxX - minX), signWidth.most);
  if (!part.isHanging || !(factor > 1)) return part;
  return { ...part, base: transform(part.base, scaling(factor, 1, { x: (minX + maxX) / 2, y: 0 })) };
}

/** Factors by which the ring of an Å is enlarged until its opening stays open though its stroke is thickened. */
const ringFactors = [1, 1.1, 1.2, 1.3, 1.4, 1.5];

/** A ring above a letter, large enough for a stroke that holds round its opening. */
function enlargedRing(mark: Region, measures: Measures): Region {
  const { minX, maxX, minY } = boundsOf(mark)!;
  const sized = ringFactors.map((factor) =>
    transform(mark, scaling(factor, factor, { x: (minX + maxX) / 2, y: minY })),
  );
  const holds = (ring: Region): boolean => {
    const thickened = hairlinesOf(grown(ring, measures), measures.hairline);
    return thickened.length === 0 || (thickened.length === 1 && thickened[0]!.width === measures.hairline);
  };
  return sized.find(holds) ?? sized.at(-1)!;
}

/** A dot that is a short stroke of the pen, as narrow as a post, in x-heights and in lengths of it. */
const sliver = { longest: 0.42, narrow: 0.72 } as const;

/** Directions in which the width of a dot is looked at. */
const directions = 12;

/** Whether a mark is such a dot: along a leaning stem it is the end of that. */
function isSliver(mark: Region, { web, grow, xHeight }: Measures): boolean {
  const widths = Array.from({ length: directions }, (_, k) => {
    const angle = (k * Math.PI) / directions;
    const along = mark.flat().map(({ x, y }) => x * Math.cos(angle) + y * Math.sin(angle));
    return Math.max(...along) - Math.min(...along);
  });
  const narrow = Math.min(...widths);
  // Across that: a square is as long as it is wide.
  const long = widths[(widths.indexOf(narrow) + directions / 2) % directions]!;
  return long < sliver.longest * xHeight && narrow < sliver.narrow * long && narrow + 2 * grow < signWidth.least * web;
}

/** A round dot in its place, as large as there is room for it beside another. */
function rounded(mark: Region, marks: readonly Region[], { web, grow, xHeight }: Measures): Region {
  const box = boundsOf(mark)!;
  const middles = marks.map((each) => boundsOf(each)!).map(({ minX, maxX }) => (minX + maxX) / 2);
  const apart = Math.max(...middles) - Math.min(...middles);
  const room = marks.length > 1 ? (apart - besideGap * xHeight) / 2 - grow : Infinity;
  const own = Math.sqrt(area(mark) / Math.PI);
  const radius = Math.max(own, Math.min((signWidth.least * web) / 2 - grow, room));
  return [circle({ x: (box.minX + box.maxX) / 2, y: box.minY + radius }, radius)];
}

/** A dot, or two side by side, wide enough to be told from a post or a stem, and no nearer to the letter. */
function enlarged(part: LetterPart, measures: Measures): LetterPart {
  const { grow, xHeight } = measures;
  const [only, second] = part.marks;
  if (only && !second && countersOf(only).length === 1) return { ...part, marks: [enlargedRing(only, measures)] };
  if (!part.isAccented && part.marks.length < 3 && part.marks.some((mark) => isSliver(mark, measures)))
    return { ...part, marks: part.marks.map((mark) => rounded(mark, part.marks, measures)) };
  const boxes = part.marks.map((mark) => boundsOf(mark)!);
  if (boxes.length === 0 || boxes.length > 2 || !boxes.every(isDot)) return part;
  const wide = Math.min(...boxes.map(({ minX, maxX }) => maxX - minX));
  const middles = boxes.map(({ minX, maxX }) => (minX + maxX) / 2);
  const room = Math.max(...middles) - Math.min(...middles) - 2 * grow - besideGap * xHeight;
  const factor = Math.min(dotFactor(wide, measures), boxes.length === 2 ? room / wide : Infinity);
  if (!(factor > 1)) return part;
  const marks = part.marks.map((mark, index) =>
    transform(mark, scaling(factor, factor, { x: middles[index]!, y: boxes[index]!.minY })),
  );
  return { ...part, marks };
}

export function shapeOf(drawn: LetterPart, measures: Measures): LetterShape {
  const part = enlarged(enlargedStop(widened(drawn, measures), measures), measures);
  const plain = grown(part.base, measures);
  const hairlines = hairlinesOf(plain, measures.hairline);
  const base = hairlines.length > 0 ? union([plain, hairlineStrokes(hairlines)]) : plain;
  const grownMarks = part.marks.map((mark) => grown(mark, measures));
  const marks = placeMarks(base, grownMarks, measures);
  const { pitch } = measures;
  const placed = marks.flatMap(({ region }) => [...region]);
  return {
    part,
    drawn,
    base,
    strokes: hairlineStrokes(hairlines, 2 * measures.grow),
    counters: [...countersOf(plain), ...countersOf(placed)],
    grownMarks,
    marks,
    rows: rowsOf(base, pitch),
    columns: columnsOf(base, pitch),
    markRows: rowsOf(placed, pitch),
    markColumns: columnsOf(placed, pitch),
  };
}

function grown(region: Region, { grow }: Measures): Region {
  return offset(simplified(region, coarseMm), grow, 'round', coarseMm);
}

export function movedRegion(region: Region, { x, y }: Point): Region {
  return x === 0 && y === 0 ? region : transform(region, translation(x, y));
}
