/** Where a ring of the spec goes: of the places that it could have, one without a weak second joint and level with the ring in the other corner. */

import { EdgeIndex } from '../../geometry/edge-index.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Hanger, HangerPlace } from '../../spec/model/model.ts';
import { levelOf } from './level.ts';
import { misreadingCost } from './reading.ts';
import type { RingReading } from './reading.ts';
import { neckPlace } from './neck.ts';
import type { OnNeck } from './neck.ts';
import { jointLengths, placeRing } from './ring.ts';
import type { RingCandidate, RingSize, RingWishes } from './ring.ts';
import { hasWeakJoint, weakJointCost } from './weak-joint.ts';

/** Two rings this near to one level are level, in mm. */
const levelMm = 0.1;

type Ring = Extract<Hanger, { kind: 'ring' }>;

export interface RingGround {
  /** The shape it is joined to. */
  readonly on: Region;
  /** The body as it hangs. */
  readonly whole: Region;
  readonly reading: RingReading;
  /** The least width of a joint. */
  readonly web: number;
}

/** A ring, before any nudge. */
export interface RingSpot {
  readonly centre: Point;
  /** What it stands on, where no letter reaches up to it. */
  readonly neck?: Region;
  /** And the letter that this stands on. */
  readonly over?: string;
}

/** Where the ring goes; `undefined` if the body has no place for one. */
export function ringPlace(ring: Ring, ground: RingGround, aside: Point): RingSpot | undefined {
  const { at, pair } = ring;
  const size = sizeOf(ring);
  const place = (wishes: RingWishes = {}) => placeOn(ground, at, size, { aside, ...wishes });
  const isWeak = ({ centre }: RingSpot) => hasWeakJoint(centre, size, ground.whole, ground.web);
  const first = place();
  const isAtTop = at.kind === 'anchor' && at.anchor === 'top';
  const other =
    first && (at.kind === 'auto' || isAtTop) && isWeak(first) ? place({ secondJointCost: weakJointCost }) : undefined;
  const own = other && !isWeak(other) ? other : first;
  if (!own) return undefined;
  if (isAtTop) return asLevel(own, neckPlace(ground, size, aside));
  const facing = pair?.kind === 'ring' ? placeOn(ground, pair.at, sizeOf(pair)) : undefined;
  if (!facing) return own;
  const level = levelOf(at, own.centre, facing.centre);
  const moved = level === own.centre.y ? undefined : place({ level });
  const isLevel = moved && Math.abs(moved.centre.y - level) < levelMm;
  return isLevel && isAsGood(moved.centre, own.centre, size, ground) ? moved : own;
}

/** A neck only where the ring would stand worse without. */
function asLevel(own: RingCandidate, onNeck: OnNeck | undefined): RingSpot {
  return onNeck && onNeck.score > own.score ? onNeck : own;
}

function sizeOf({ opening, wall, sink }: Pick<Ring, 'opening' | 'wall' | 'sink'>): RingSize {
  return { hole: opening / 2, wall, sink };
}

function placeOn({ on, whole, reading }: RingGround, at: HangerPlace, size: RingSize, wishes?: RingWishes) {
  return placeRing(on, whole, at, size, reading, wishes);
}

/** Whether a ring is joined at the one place as at the other, or by the width of its wall at least, and is read as nothing that it is not there. */
function isAsGood(moved: Point, own: Point, size: RingSize, { whole, reading, web }: RingGround): boolean {
  const edges = new EdgeIndex(whole);
  const joint = (centre: Point): number => jointLengths(centre, size.hole + size.wall, edges)[0] ?? 0;
  const isWeak = (centre: Point): boolean => hasWeakJoint(centre, size, whole, web);
  if (joint(moved) < Math.min(joint(own), size.wall) || (isWeak(moved) && !isWeak(own))) return false;
  return misreadingCost(reading, moved, size) <= misreadingCost(reading, own, size);
}
