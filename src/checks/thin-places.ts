/** The necks of pieces, found once for all the checks that look at them. */

import { findNecks } from '../geometry/necks.ts';
import type { Neck } from '../geometry/necks.ts';
import type { Region } from '../geometry/types.ts';
import type { Piece } from '../tag/tag.ts';
import { atHanger } from './blame.ts';
import { mm } from './check.ts';

/** Finding necks is the dearest check by far, and an edit elsewhere leaves a piece's region the very same object. */
const known = new WeakMap<Region, { minWeb: number; necks: Neck[] }>();

function necksOf(region: Region, minWeb: number): Neck[] {
  const before = known.get(region);
  if (before?.minWeb === minWeb) return before.necks;
  const necks = findNecks(region, minWeb);
  known.set(region, { minWeb, necks });
  return necks;
}

/** Necks of a piece narrower than `minWeb`, the narrowest first: those at its hanger, or those elsewhere. */
export function thinPlaces(piece: Piece, minWeb: number, where: 'at hanger' | 'elsewhere'): Neck[] {
  return necksOf(piece.region, minWeb).filter((neck) => atHanger(piece, neck.ends) === (where === 'at hanger'));
}

export function wanted(minWeb: number): string {
  return `at least ${mm(minWeb)} is wanted`;
}
