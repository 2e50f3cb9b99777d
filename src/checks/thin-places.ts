/** The necks and points of pieces, found once for all the checks that look at them. */

import { findNarrow } from '../geometry/necks.ts';
import type { Neck, Tip } from '../geometry/necks.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { hangerAt } from './blame.ts';
import { mm } from '../spec/figures.ts';
import { perRegion } from './per-region.ts';

/** Finding necks is the dearest check by far. */
const narrowOf = perRegion(findNarrow);

/** Necks of a piece narrower than `minWeb`, the narrowest first: those at one of its hangers, or those at none. */
export function thinPlaces(piece: Piece, minWeb: number, where: PlacedHanger | 'elsewhere'): Neck[] {
  const wantedHanger = where === 'elsewhere' ? undefined : where;
  return narrowOf(piece.region, minWeb).necks.filter((neck) => hangerAt(piece, neck.ends) === wantedHanger);
}

/** Free ends of a piece, as far as they are narrower than `minWeb`. */
export function tipsOf(piece: Piece, minWeb: number): readonly Tip[] {
  return narrowOf(piece.region, minWeb).tips;
}

export function wanted(minWeb: number): string {
  return `at least ${mm(minWeb)} is wanted`;
}
