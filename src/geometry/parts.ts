/** Groups the rings of a region into its solid parts, the pieces it would fall into. */

import { boundsOf, ringArea } from './measure.ts';
import type { Bounds, Point, Region, Ring } from './types.ts';

interface MeasuredRing {
  readonly ring: Ring;
  /** Signed area in mm²; positive for an outer ring. */
  readonly area: number;
  readonly bounds: Bounds;
}

/**
 * The connected parts of a region, each an outer ring followed by its holes, largest material area first (equal areas
 * keep the order of the region). A part inside another part's hole is a part of its own, and parts that meet in a
 * single point stay two. Rings without area are left out.
 */
export function partsOf(region: Region): Region[] {
  const measured = region.flatMap((ring): MeasuredRing[] => {
    const area = ringArea(ring);
    const bounds = boundsOf([ring]);
    return bounds && area !== 0 ? [{ ring, area, bounds }] : [];
  });
  // Ascending, so that the first outer ring that contains a hole is the innermost one.
  const outers = measured.filter(({ area }) => area > 0).sort((a, b) => a.area - b.area);
  const islands = new Map(outers.map((outer) => [outer, { rings: [outer.ring], area: outer.area }]));
  for (const hole of measured) {
    if (hole.area > 0) continue;
    const owner = outers.find((outer) => outer.area >= -hole.area && enclosesHole(outer, hole));
    const island = owner && islands.get(owner);
    if (!island) continue;
    island.rings.push(hole.ring);
    island.area += hole.area;
  }
  return measured
    .flatMap((ring) => islands.get(ring) ?? [])
    .sort((a, b) => b.area - a.area)
    .map(({ rings }) => rings);
}

/**
 * Whether the hole lies in the outer ring. The rings never cross, so one point of the hole decides, unless the two
 * touch at that point: then the next one does. The caller's comparison of areas excludes a part inside the hole.
 */
function enclosesHole(outer: MeasuredRing, hole: MeasuredRing): boolean {
  const { bounds: o } = outer;
  const { bounds: h } = hole;
  if (h.minX < o.minX || h.maxX > o.maxX || h.minY < o.minY || h.maxY > o.maxY) return false;
  for (const [i, p] of hole.ring.entries()) {
    const side = sideOf(outer.ring, p);
    if (side !== 0) return side > 0;
    const q = hole.ring[(i + 1) % hole.ring.length]!;
    const middle = sideOf(outer.ring, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
    if (middle !== 0) return middle > 0;
  }
  return true;
}

/** 1 inside the ring, −1 outside, 0 on its line. Counts crossings of a ray to the right; half-open at the vertices. */
function sideOf(ring: Ring, p: Point): -1 | 0 | 1 {
  let inside = false;
  let a = ring[ring.length - 1]!;
  for (const b of ring) {
    if (a.y > p.y !== b.y > p.y) {
      const cross = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
      if (cross === 0) return 0;
      if (cross > 0 === b.y > a.y) inside = !inside;
    } else if (a.y === p.y && b.y === p.y ? (p.x - a.x) * (p.x - b.x) <= 0 : b.x === p.x && b.y === p.y) {
      return 0;
    }
    a = b;
  }
  return inside ? 1 : -1;
}
