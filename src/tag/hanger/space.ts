/** What an opening inside the body needs round its centre. */

import { rotation, transform } from '../../geometry/affine.ts';
import type { Point } from '../../geometry/types.ts';
import type { HangerPlace, LoneHanger, Unattached } from '../../spec/model/model.ts';
import { directionOf } from './direction.ts';

/** A hole, slot or keyhole. */
export type Opening = Unattached<Exclude<LoneHanger, { kind: 'ring' }>>;

/** Distances from the edge that it may have, the one to be preferred first. */
export function insetsOf({ inset, leastInset = inset }: Pick<Opening, 'inset' | 'leastInset'>): readonly number[] {
  return leastInset < inset ? [inset, leastInset] : [inset];
}

/** What is found for the first of the distances that comes to anything. */
export function firstOf<T>(insets: readonly number[], find: (inset: number) => T | undefined): T | undefined {
  for (const inset of insets) {
    const found = find(inset);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** From its centre to its own edge on the side of the edge of the body, in mm. */
export function reachOf(opening: Opening): number {
  // In a corner the round opening of a keyhole is nearer to the side than the slot is.
  return (opening.kind === 'keyhole' && isCorner(opening.at) ? opening.head : opening.opening) / 2;
}

/** The points, from its centre, that all need that much room. */
export function endsOf(opening: Opening): readonly Point[] {
  if (opening.kind === 'keyhole' && isCorner(opening.at)) return [{ x: 0, y: 0 }, headOf(opening)];
  if (opening.kind !== 'slot') return [{ x: 0, y: 0 }];
  // Where the edge slopes or curves, the ends of a slot are nearer to it than its middle.
  const far = { x: (opening.length - opening.opening) / 2, y: 0 };
  return transform([[far, { x: 0, y: 0 }, { x: -far.x, y: 0 }]], rotation(slotTurn(opening.at), { x: 0, y: 0 }))[0]!;
}

/** In a corner, the middle of the round opening of a keyhole: away from the side that its slot points to. */
function headOf({ at, head, opening, length }: Extract<Opening, { kind: 'keyhole' }>): Point {
  const down = length - head / 2 - opening / 2;
  return { x: 0, y: at.kind === 'anchor' && at.anchor.startsWith('top') ? -down : down };
}

/** A slot lies across the direction in which the tag hangs, so that the ribbon lies flat in it; in degrees, clockwise. */
export function slotTurn(at: HangerPlace): number {
  if (at.kind === 'point' || at.kind === 'auto') return 0;
  const { x, y } = directionOf(at);
  return (Math.atan2(x, y) * 180) / Math.PI;
}

export function isCorner(at: HangerPlace): boolean {
  return at.kind === 'anchor' && at.anchor.includes('-');
}
