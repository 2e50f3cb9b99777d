/** Finds the line of the spec that a place on a piece comes from. */

import { distanceToSegment } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { Piece, PlacedHanger } from '../../tag/tag.ts';

/** A point belongs to a hanger if it lies this near to the outline of its lug or opening, in mm. */
const hangerReachMm = 0.05;

/** Whether one of the points lies on the outline of the hanger's lug or opening. */
export function isAt({ opening, lug }: PlacedHanger, points: readonly Point[]): boolean {
  const outlines = [opening, lug ?? []];
  return points.some((point) => outlines.some((outline) => distanceTo(outline, point) < hangerReachMm));
}

/** The hanger whose outline one of the points lies on. */
export function hangerAt({ hangers }: Piece, points: readonly Point[]): PlacedHanger | undefined {
  return hangers.find((hanger) => isAt(hanger, points));
}

/**
 * Path of the hanger whose outline one of the points lies on; else of the shape whose outline passes nearest to their
 * middle; else of the piece.
 */
export function blame(piece: Piece, ...points: readonly Point[]): YamlPath {
  const hanger = hangerAt(piece, points);
  if (hanger) return hanger.path;
  const at = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
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

/** Distance from a point to the nearest outline, in mm; infinite if there is none. */
export function distanceTo(region: Region, point: Point): number {
  let least = Infinity;
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      least = Math.min(least, distanceToSegment(point, from, to));
      from = to;
    }
  }
  return least;
}
