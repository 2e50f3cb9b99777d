/** Letters made ready to be slid: as they will be once grown, with their marks in place. */

import { transform, translation } from '../../geometry/affine.ts';
import { offset } from '../../geometry/clipper.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';
import type { SplitLetter } from './letters.ts';
import { placeMarks } from './marks.ts';
import type { PlacedMark } from './marks.ts';
import type { Measures } from './measures.ts';
import type { Runs } from './runs.ts';
import { columnsOf, rowsOf } from './runs.ts';

export interface Body {
  readonly letter: SplitLetter;
  /** All as grown, where the layout has the letter. */
  readonly base: Region;
  readonly marks: readonly PlacedMark[];
  readonly rows: Runs;
  readonly columns: Runs;
  /** Of its marks alone. */
  readonly markRows: Runs;
}

/** How coarsely letters are looked at while they are compared, in mm; where they go is what comes of it, not their outlines. */
export const coarseMm = 0.02;

export function bodyOf(letter: SplitLetter, measures: Measures): Body {
  const base = grown(letter.base, measures);
  const marks = placeMarks(
    base,
    letter.marks.map((mark) => grown(mark, measures)),
    measures,
  );
  const { pitch } = measures;
  return {
    letter,
    base,
    marks,
    rows: rowsOf(base, pitch),
    columns: columnsOf(base, pitch),
    markRows: rowsOf(
      marks.flatMap(({ region }) => [...region]),
      pitch,
    ),
  };
}

function grown(region: Region, { grow }: Measures): Region {
  return offset(simplified(region, coarseMm), grow, 'round', coarseMm);
}

export function movedRegion(region: Region, x: number, y: number): Region {
  return x === 0 && y === 0 ? region : transform(region, translation(x, y));
}
