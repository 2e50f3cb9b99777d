/** How far letters lean: those of an upright face have most of their steep outline straight up, those of handwriting have not. */

import type { Region } from '../../geometry/types.ts';

/** Edges further from upright than this are bars and bowls, in degrees. */
const steepest = 45;

/**
 * In degrees, to the right above 0: the median direction of the steep edges, each weighing as much as it is long. Bowls, and the legs
 * of an A, have as much on either side.
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
