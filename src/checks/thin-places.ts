/** The necks of pieces, found once for all the checks that look at them. */

import { findNecks } from '../geometry/necks.ts';
import type { Neck } from '../geometry/necks.ts';
import type { FaultPlace } from '../issue.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { hangerAt } from './blame.ts';
import { mm } from '../spec/figures.ts';
import { perRegion } from './per-region.ts';

/** Finding necks is the dearest check by far. */
const necksOf = perRegion(findNecks);

/** Necks of a piece narrower than `minWeb`, the narrowest first: those at one of its hangers, or those at none. */
export function thinPlaces(piece: Piece, minWeb: number, where: PlacedHanger | 'elsewhere'): Neck[] {
  const wantedHanger = where === 'elsewhere' ? undefined : where;
  return necksOf(piece.region, minWeb).filter((neck) => hangerAt(piece, neck.ends) === wantedHanger);
}

/** Where a neck is seen. */
export function placeOf({ ends, width }: Neck): FaultPlace {
  return { points: ends, width };
}

export function atLeast(minimum: number): string {
  return `minimum ${mm(minimum)}`;
}
