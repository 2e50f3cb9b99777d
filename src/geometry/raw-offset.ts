/** The raw line of an offset, before its overlaps are united: the first half of `offset` in `clipper.ts`. */

import { distance } from './measure.ts';
import type { Point, Region, Ring } from './types.ts';

/**
 * Style of the corners of an offset; `tangent` is round, but with chords outside the arc instead of inside, and `eased` mitred up to a
 * right angle and a little more, where the miter is short, and round beyond.
 */
export type Corners = 'round' | 'miter' | 'eased' | 'bevel' | 'tangent';

export interface RawOffset {
  /** In mm; positive means outwards from the material. */
  readonly delta: number;
  readonly corners: Corners;
  /** Largest distance between a round corner's arc and its chords inside, or its tangents outside, in mm. */
  readonly arcTolerance: number;
}

/** A miter longer than this many times the offset is cut off square, or round. */
const miterLimit = { miter: 4, eased: 1.6 } as const;

/**
 * A corner so slight that its miter exceeds its arc by no more than this, in mm, becomes one point: flattened curves
 * are full of them.
 */
const slightMm = 0.0005;

/** Points nearer to each other than this, in mm, are one: a unit of Clipper's grid. */
export const samePointMm = 1e-5;

/**
 * Closed lines whose positive winding numbers cover the offset region.
 *
 * Growing: the line round a ring, *delta* to its right, encloses the ring, a rectangle on each edge, and at each convex
 * corner the area between two rectangles (a sector, a miter or a bevel); at a concave corner, where the rectangles
 * overlap, it passes through the corner itself. Each adds 1 to the winding number of what it covers, so the grown
 * region is where the number exceeds 0, whatever else the line does. Thinning subtracts them from the 1 of the ring,
 * and only what none of them covers stays above 0.
 *
 * At a concave corner whose overlap reaches along neither edge beyond its middle, the line turns where the two sides
 * cross, which takes 1 off a kite that lies in both rectangles. A point in the kites of several corners in a row lies
 * in one rectangle more than that, so at least 1 is left. Only all the corners of a ring together have as many kites as
 * edges: those of a convex hole; and as none of its edges is reversed, the line is simply the smaller hole.
 */
export function rawOffset(region: Region, how: RawOffset): Ring[] {
  return region.map((ring) => besideRing(distinct(ring), how)).filter((ring) => ring.length > 2);
}

/** The points of a ring without those that coincide with the one before. */
export function distinct(ring: Ring): Point[] {
  const points: Point[] = [];
  let last = ring[ring.length - 1];
  for (const point of ring) {
    const x = point.x - last!.x;
    const y = point.y - last!.y;
    if (x * x + y * y < samePointMm * samePointMm) continue;
    points.push(point);
    last = point;
  }
  return points;
}

function besideRing(ring: readonly Point[], { delta, corners, arcTolerance }: RawOffset): Point[] {
  const line: Point[] = [];
  if (ring.length < 3) return line;
  const reach = Math.abs(delta);
  const arcStep = 2 * Math.acos(1 - Math.min(arcTolerance, reach / 4) / reach);
  const tangentStep = 2 * Math.acos(reach / (reach + arcTolerance));
  const before = ring[ring.length - 2]!;
  let corner = ring[ring.length - 1]!;
  let length = distance(corner, before);
  // The unit normals of the edges before and after the corner, to the right of the direction of travel.
  let [kx, ky] = [(corner.y - before.y) / length, (before.x - corner.x) / length];
  for (const after of ring) {
    const { x, y } = corner;
    const toX = after.x - x;
    const toY = after.y - y;
    const nextLength = Math.sqrt(toX * toX + toY * toY);
    const jx = toY / nextLength;
    const jy = -toX / nextLength;
    const sine = kx * jy - ky * jx;
    const cosine = kx * jx + ky * jy;
    const isConcave = sine * delta < 0;
    const overlap = (reach * Math.abs(sine)) / (1 + cosine);
    const isOnePoint = isConcave
      ? overlap <= Math.min(length, nextLength) / 2
      : corners === 'miter' || corners === 'eased'
        ? 1 + cosine >= 2 / miterLimit[corners] ** 2
        : reach * (Math.sqrt(2 / (1 + cosine)) - 1) <= slightMm;
    if (isOnePoint) {
      const q = delta / (1 + cosine);
      line.push({ x: x + (kx + jx) * q, y: y + (ky + jy) * q });
    } else if (isConcave) {
      line.push({ x: x + kx * delta, y: y + ky * delta }, corner, { x: x + jx * delta, y: y + jy * delta });
    } else if (corners === 'round' || corners === 'eased') {
      const turn = turnAt(sine, cosine, delta);
      const start = Math.atan2(ky, kx);
      const steps = Math.ceil(Math.abs(turn) / arcStep);
      for (let step = 0; step <= steps; step++) {
        const angle = start + (turn * step) / steps;
        line.push({ x: x + Math.cos(angle) * delta, y: y + Math.sin(angle) * delta });
      }
    } else if (corners === 'tangent') {
      const turn = turnAt(sine, cosine, delta);
      const steps = Math.ceil(Math.abs(turn) / tangentStep);
      const start = Math.atan2(ky, kx) + turn / steps / 2;
      const radius = delta / Math.cos(turn / steps / 2);
      for (let step = 0; step < steps; step++) {
        const angle = start + (turn * step) / steps;
        line.push({ x: x + Math.cos(angle) * radius, y: y + Math.sin(angle) * radius });
      }
    } else {
      // Square to the middle of the corner, and touching its arc there.
      const across = Math.tan(turnAt(sine, cosine, delta) / 4);
      line.push(
        { x: x + delta * (kx - ky * across), y: y + delta * (ky + kx * across) },
        { x: x + delta * (jx + jy * across), y: y + delta * (jy - jx * across) },
      );
    }
    corner = after;
    length = nextLength;
    kx = jx;
    ky = jy;
  }
  return line;
}

/** The angle by which the line turns round a convex corner, in radians; negative if the region is thinned. */
function turnAt(sine: number, cosine: number, delta: number): number {
  return Math.atan2(Math.abs(sine), cosine) * Math.sign(delta);
}
