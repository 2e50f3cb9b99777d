/** Shapes that are joined, as they will be once grown, and what they have in common with those of other texts. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { movedRegion } from './bodies.ts';

/** A letter, a mark, or what joins them. */
export interface GrownShape {
  /** At its place. */
  readonly region: Region;
  readonly box: Bounds;
  /** From its own origin; the same object wherever the same letter recurs. */
  readonly own: Region;
  /** Its origin. */
  readonly at: Point;
  readonly isJoint: boolean;
}

export function grownLetter(own: Region, at: Point): GrownShape {
  const region = movedRegion(own, at);
  return { region, box: boundsOf(region)!, own, at, isJoint: false };
}

/** The origin of a joint is a corner of its own, so that it is the same wherever it lies. */
export function grownJoint(region: Region): GrownShape {
  const at = region[0]![0]!;
  return { region, box: boundsOf(region)!, own: movedRegion(region, { x: -at.x, y: -at.y }), at, isJoint: true };
}

/** Places that differ by less than this, in mm, are the same: sums of the same numbers in another order. */
const gridMm = 1e-4;

export function onGrid(mm: number): number {
  return Math.round(mm / gridMm) * gridMm;
}

/** Plain data that tells shapes apart: letters by the object, joints, which are made for each text, by their outline. */
export function identityOf({ own, isJoint }: GrownShape): unknown {
  return isJoint ? own.map((ring) => ring.map(({ x, y }) => [onGrid(x), onGrid(y)])) : idOf(own);
}

const ids = new WeakMap<Region, number>();
let lastId = 0;

/** Tells an object from all others. */
export function idOf(region: Region): number {
  const known = ids.get(region) ?? ++lastId;
  ids.set(region, known);
  return known;
}
