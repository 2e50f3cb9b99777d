/** The necks of pieces, found once for all the checks that look at them. */

import { findNecks } from '../geometry/necks.ts';
import type { Neck } from '../geometry/necks.ts';
import type { Piece } from '../tag/tag.ts';
import { atHanger } from './blame.ts';
import { mm } from './check.ts';
import { perRegion } from './per-region.ts';

/** Finding necks is the dearest check by far. */
const necksOf = perRegion(findNecks);

/** Necks of a piece narrower than `minWeb`, the narrowest first: those at its hanger, or those elsewhere. */
export function thinPlaces(piece: Piece, minWeb: number, where: 'at hanger' | 'elsewhere'): Neck[] {
  return necksOf(piece.region, minWeb).filter((neck) => atHanger(piece, neck.ends) === (where === 'at hanger'));
}

export function wanted(minWeb: number): string {
  return `at least ${mm(minWeb)} is wanted`;
}
