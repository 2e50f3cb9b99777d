/** The point of an outline that is nearest to another. */

import { distance } from './measure.ts';
import type { Point, Ring } from './types.ts';

export interface Gap {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

export function nearestOn(outline: Ring, from: Point): Gap {
  let best: Gap = { from, to: outline[0]!, length: Infinity };
  let start = outline[outline.length - 1]!;
  for (const end of outline) {
    const dx = end.x - start.x;
    const dy = end.y - start.y;
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : ((from.x - start.x) * dx + (from.y - start.y) * dy) / squared;
    const clamped = Math.min(1, Math.max(0, t));
    const to = { x: start.x + clamped * dx, y: start.y + clamped * dy };
    const length = distance(to, from);
    if (length < best.length) best = { from, to, length };
    start = end;
  }
  return best;
}
