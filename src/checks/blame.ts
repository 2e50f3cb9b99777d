/** Which line of the spec a place on a piece comes from. */

import type { Point, Region } from '../geometry/types.ts';
import type { YamlPath } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';

/** The hanger counts as the cause of what lies this near to its lug or opening, in mm. */
const hangerReachMm = 0.05;

/**
 * The hanger if the place is at it; else the shape of the piece whose outline passes nearest; else the piece.
 */
export function blame(piece: Piece, at: Point): YamlPath {
  const { hanger } = piece;
  if (hanger && distanceTo(hanger.lug ?? hanger.opening, at) < hangerReachMm) return hanger.path;
  let nearest: YamlPath = piece.path;
  let least = Infinity;
  for (const { region, path } of piece.sources) {
    const distance = distanceTo(region, at);
    if (distance < least - 1e-6) {
      least = distance;
      nearest = path;
    }
  }
  return nearest;
}

/** Distance from a point to the nearest outline, in mm; infinite where there is none. */
export function distanceTo(region: Region, { x, y }: Point): number {
  let least = Infinity;
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const dx = to.x - from.x;
      const dy = to.y - from.y;
      const length = dx * dx + dy * dy;
      const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / length));
      least = Math.min(least, (from.x + t * dx - x) ** 2 + (from.y + t * dy - y) ** 2);
      from = to;
    }
  }
  return Math.sqrt(least);
}
