/** Points along a ring, by their distance along it. */

import { distance } from './measure.ts';
import type { Point, Ring } from './types.ts';

export interface RingStep {
  readonly point: Point;
  readonly ring: Ring;
  readonly along: number;
}

/** Points every `step` mm along a ring, from one arc length to another; by default once round the ring. */
export function walkRing(ring: Ring, step: number, from = 0, to?: number): RingStep[] {
  const steps: RingStep[] = [];
  const starts: number[] = [];
  let total = 0;
  ring.forEach((point, index) => {
    starts.push(total);
    const next = ring[(index + 1) % ring.length]!;
    total += distance(next, point);
  });
  for (let along = from; along < (to ?? total); along += step) {
    const wrapped = ((along % total) + total) % total;
    const index = Math.max(upperBound(starts, wrapped) - 1, 0);
    const a = ring[index]!;
    const b = ring[(index + 1) % ring.length]!;
    const edge = distance(b, a);
    const t = edge === 0 ? 0 : (wrapped - starts[index]!) / edge;
    steps.push({ point: { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }, ring, along });
  }
  return steps;
}

function upperBound(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
