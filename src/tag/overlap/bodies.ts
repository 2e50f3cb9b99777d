/** Letters made ready to be slid: as they will be once grown, with their marks in place. */

import { scaling, transform, translation } from '../../geometry/affine.ts';
import { offset } from '../../geometry/clipper.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { LetterPart } from './letters.ts';
import { placeMarks } from './marks.ts';
import type { PlacedMark } from './marks.ts';
import type { Measures } from './measures.ts';
import type { Runs } from './runs.ts';
import { columnsOf, rowsOf } from './runs.ts';

/** A part of a letter by itself, wherever it will stand: its origin is on the baseline. */
export interface LetterShape {
  readonly part: LetterPart;
  /** As the font has it: a sign may be made wider. */
  readonly drawn: LetterPart;
  /** All as grown. */
  readonly base: Region;
  /** Where the font has them. */
  readonly grownMarks: readonly Region[];
  readonly marks: readonly PlacedMark[];
  readonly rows: Runs;
  readonly columns: Runs;
  /** Of its marks alone. */
  readonly markRows: Runs;
  readonly markColumns: Runs;
}

/** The same in its place. */
export interface Body extends LetterShape {
  /** Which of the letters of the text it is of. */
  readonly index: number;
  readonly line: number;
  /** A space stands before it. */
  readonly afterGap: boolean;
  /** Where the layout has its origin. */
  readonly at: Point;
}

/** How coarsely letters are looked at while they are compared, in mm; where they go is what comes of it, not their outlines. */
export const coarseMm = 0.02;

/** A sign that is held by a post is seen above it where it is wider by this factor; it is widened by no more than the other. */
const signWidth = { least: 2, most: 1.5 } as const;

/** A sign that hangs high, as wide as it must be to be told from its post. */
function widened(part: LetterPart, { web, grow }: Measures): LetterPart {
  const { minX, maxX } = boundsOf(part.base)!;
  const factor = Math.min((signWidth.least * web - 2 * grow) / (maxX - minX), signWidth.most);
  if (!part.hung || !(factor > 1)) return part;
  return { ...part, base: transform(part.base, scaling(factor, 1, { x: (minX + maxX) / 2, y: 0 })) };
}

export function shapeOf(drawn: LetterPart, measures: Measures): LetterShape {
  const part = widened(drawn, measures);
  const base = grown(part.base, measures);
  const grownMarks = part.marks.map((mark) => grown(mark, measures));
  const marks = placeMarks(base, grownMarks, measures);
  const { pitch } = measures;
  const placed = marks.flatMap(({ region }) => [...region]);
  return {
    part,
    drawn,
    base,
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
