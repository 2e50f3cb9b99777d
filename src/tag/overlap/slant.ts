/** The slant of letters: most of the steep outline of an upright face is vertical, that of handwriting is not. */

import type { Region } from '../../geometry/types.ts';

/**
 * Letters that lean by more than this, in degrees, are a script or an italic. Of a hundred names, 98 in five upright
 * faces are between −4° and 4°; in handwriting they are at 12° and more.
 */
export const uprightTo = 8;

/** Edges further from upright than this, in degrees, belong to bars and bowls. */
const steepest = 45;

/**
 * The slant in degrees, positive to the right: the median direction of the steep edges, weighted by length. Bowls, and
 * the legs of an A, have as much on either side.
 */
export function slantOf(letters: readonly Region[]): number {
  const edges: { readonly angle: number; readonly length: number }[] = [];
  let whole = 0;
  for (const ring of letters.flat()) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const [dx, dy] = to.y > from.y ? [to.x - from.x, to.y - from.y] : [from.x - to.x, from.y - to.y];
      from = to;
      const angle = (Math.atan2(dx, dy) * 180) / Math.PI;
      if (dy === 0 || Math.abs(angle) > steepest) continue;
      const length = Math.hypot(dx, dy);
      edges.push({ angle, length });
      whole += length;
    }
  }
  edges.sort((a, b) => a.angle - b.angle);
  let passed = 0;
  return edges.find(({ length }) => 2 * (passed += length) >= whole)?.angle ?? 0;
}
