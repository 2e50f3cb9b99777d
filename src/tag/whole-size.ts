/**
 * The size of a whole piece, its hangers included: everything scales except the hole, its wall and the beam's limits.
 */

import { identity, scaling, transform } from '../geometry/affine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Affine, Bounds, Region } from '../geometry/types.ts';
import type { PlacedHanger } from './tag.ts';

export interface WholeSize {
  readonly side: 'width' | 'height';
  readonly mm: number;
}

/** Largest error of the size, in mm. */
const closeMm = 0.002;

/** A ring that stays in place adds a fixed length, and the second guess is right; one that moves takes a few more. */
const rounds = 12;

const origin = { x: 0, y: 0 };

export function scaledBy(factor: number): Affine {
  return factor === 1 ? identity : scaling(factor, factor, origin);
}

/**
 * The factor that brings a body, with the hangers it then gets, to a size.
 * @returns `undefined` if no factor does: the hangers alone are larger.
 */
export function wholeScale(
  body: Region,
  hang: (factor: number) => readonly PlacedHanger[],
  { side, mm }: WholeSize,
): number | undefined {
  const natural = span(boundsOf(body), side);
  if (!(natural > 0)) return undefined;
  let factor = mm / natural;
  for (let round = 0; round < rounds; round++) {
    const lugs = hang(factor).map(({ lug }) => lug ?? []);
    const whole = [transform(body, scaledBy(factor)), ...lugs].flat();
    const lack = mm - span(boundsOf(whole), side);
    if (Math.abs(lack) < closeMm) return factor;
    factor += lack / natural;
    if (!(factor > 0)) return undefined;
  }
  return undefined;
}

function span(box: Bounds | undefined, side: WholeSize['side']): number {
  if (!box) return 0;
  return side === 'width' ? box.maxX - box.minX : box.maxY - box.minY;
}
