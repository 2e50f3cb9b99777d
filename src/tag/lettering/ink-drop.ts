/** How far below one line of lettering the next one stands: as close as the ink of both allows. */

import type { CurvePath } from '../../geometry/curves.ts';
import { flatten, flattenLines } from '../../geometry/flatten.ts';
import { profilesOf } from '../../geometry/profiles.ts';
import type { Profiles } from '../../geometry/profiles.ts';
import type { Affine } from '../../geometry/types.ts';

/**
 * Default space between the ink of two lines, as a share of the height of their letters: of small ones or, in a line without any, of capitals; of
 * the mean where they differ. Our own judgement.
 */
export const usualGap = 0.45;

/**
 * The same from the feet of one line to the tops of small letters that nothing in the next one rises above: beside lines with ascenders
 * they would look crowded. Our own judgement, by looking.
 */
const flatGap = 0.8;

/** Columns in which the ink of two lines is compared. */
const columns = 160;

/** Tolerance of curves for that, as a share of the height of small letters. */
const closeShare = 0.001;

/** Curves of a line, and how they are brought to where its baseline is at y = 0. */
export interface LineInk {
  readonly curves: CurvePath;
  readonly affine: Affine;
  /** Whether its curves are single strokes. */
  readonly isOpen: boolean;
  /** Height of its small letters, or of its capitals if there are no others. */
  readonly top: number;
  readonly hasSmall: boolean;
}

/** The usual space between two lines, beside one that is flat if the lower one is. */
export function usualDrop(above: LineInk, below: LineInk, width: number): number {
  const mean = (above.top + below.top) / 2;
  return Math.max(inkDrop(above, below, width, usualGap * mean), below.hasSmall ? below.top + flatGap * mean : 0);
}

/**
 * Distance from the baseline of one line to that of the next, such that their ink comes no nearer than `between`, and
 * the small letters of the lower line stay that far below the upper baseline: descenders may reach between ascenders.
 * `width`: of the widest line, from x = 0; all in one unit.
 */
export function inkDrop(above: LineInk, below: LineInk, width: number, between: number): number {
  const { low } = inkProfile(above, width);
  const { high } = inkProfile(below, width);
  const beside = Math.ceil((between / width) * columns);
  let most = below.top;
  for (let i = 0; i < columns; i++) {
    for (let j = Math.max(0, i - beside); j <= Math.min(columns - 1, i + beside); j++) {
      if (low[i]! < Infinity && high[j]! > -Infinity) most = Math.max(most, high[j]! - low[i]!);
    }
  }
  return most + between;
}

/** The lowest and highest ink in each column, relative to the baseline. */
function inkProfile({ curves, affine, isOpen, top }: LineInk, width: number): Profiles {
  const at = { affine, tolerance: closeShare * top };
  // There and back, a line is a ring that adds no ink.
  const ink = isOpen ? flattenLines(curves, at).map((each) => [...each, ...each.toReversed()]) : flatten(curves, at);
  return profilesOf(ink, 0, width, columns);
}
