/** Pointed corners of an outline, such as the barbs of an arrow: finding them, and cutting them off. */

import { boundsOf, distance } from '../../geometry/measure.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';

/** Corners sharper than this, in degrees, are points. */
const pointDegrees = 80;

/** Corners as far from an axis as each other within this, in mm, are opposite. */
const oppositeMm = 0.1;

export function pointsOf(outline: Region): Point[] {
  return outline.flatMap((ring) =>
    ring.filter((at, index) => {
      const [before, after] = neighbours(ring, index);
      const turned = cross(at, after, before);
      const dot = (after.x - at.x) * (before.x - at.x) + (after.y - at.y) * (before.y - at.y);
      // From the edge ahead round to the one behind, through the inside.
      return turned > 0 && Math.atan2(turned, dot) < (pointDegrees * Math.PI) / 180;
    }),
  );
}

/** Those of the points that lie opposite one of the others, across an upright or a level line through the middle of the outline. */
export function oppositeOf(others: readonly Point[], points: readonly Point[], outline: Region): Point[] {
  const box = boundsOf(outline);
  if (!box) return [];
  const mirrored = others.flatMap(({ x, y }) => [
    { x: box.minX + box.maxX - x, y },
    { x, y: box.minY + box.maxY - y },
  ]);
  return points.filter((point) => mirrored.some((each) => distance(each, point) < oppositeMm));
}

/** The outline with points cut off along the edge that ends in the notch beside each, as far as that goes; others stay. */
export function withoutPoints(outline: Region, points: readonly Point[]): Region {
  return outline.map((ring) => points.reduce((left, point) => withoutPoint(left, point), ring));
}

function withoutPoint(ring: Ring, point: Point): Ring {
  const index = ring.indexOf(point);
  if (index < 0) return ring;
  const turned = [...ring.slice(index), ...ring.slice(0, index)];
  return cutOff(turned) ?? cutOff([turned[0]!, ...turned.slice(1).toReversed()])?.toReversed() ?? ring;
}

/** The ring without its first corner, if the next one is a notch; `undefined` if it is not. */
function cutOff(ring: Ring): Ring | undefined {
  const [tip, notch, beyond] = ring;
  const before = ring.at(-1)!;
  if (!tip || !notch || !beyond || ring.length < 5) return undefined;
  const [along, side] = [minus(notch, beyond), minus(tip, before)];
  const between = along.x * side.y - along.y * side.x;
  const from = minus(before, notch);
  const ahead = (from.x * side.y - from.y * side.x) / between;
  const share = (from.x * along.y - from.y * along.x) / between;
  if (!(ahead > 0 && share > 0 && share < 1)) return undefined;
  return [{ x: before.x + share * side.x, y: before.y + share * side.y }, ...ring.slice(2)];
}

function neighbours(ring: Ring, index: number): [Point, Point] {
  return [ring.at(index - 1)!, ring[(index + 1) % ring.length]!];
}

function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** Twice the area of the triangle, positive if it runs counter-clockwise. */
function cross(at: Point, one: Point, other: Point): number {
  return (one.x - at.x) * (other.y - at.y) - (one.y - at.y) * (other.x - at.x);
}
