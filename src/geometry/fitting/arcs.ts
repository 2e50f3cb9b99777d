/** Circular arcs in the points of a flattened outline. */

import { distance } from '../measure.ts';
import type { Segment } from '../contour.ts';
import type { Point } from '../types.ts';
import { angleBetween } from './joints.ts';
import type { SmoothRun } from './joints.ts';

/**
 * Points of a true arc lie on it to a few ten-thousandths of a millimetre. Points further off than this, in mm, belong
 * to another curve, which is better written as a Bézier than as a chain of arcs.
 */
const onArcMm = 0.002;

/** Largest distance between an edge and the arc between its ends, in mm. */
const edgeToArcMm = 0.006;

/** Largest angle between the arc and the outline's direction at its ends, in radians. */
const kinkless = (1.5 * Math.PI) / 180;

/** Arcs that turn less than this, in radians, fit circles only by chance. */
const leastSweep = Math.PI / 18;

/** Longest sweep of one arc, in radians: well over 90° its ends, rounded for a file, no longer fix its middle well. */
const mostSweep = (100 * Math.PI) / 180;

/**
 * The arc from point `from` of a run to point `to`, if all points between them lie on it; in pieces of at most 100°.
 *
 * Of all circles through both ends, the centre's y in the frame of the chord is the one unknown, and each point gives a
 * linear equation for it: x² + y² − c² = 2·y·yc, with the ends at (±c, 0). They are solved by least squares.
 */
export function fitArc({ points, tangents }: SmoothRun, from: number, to: number): Segment[] | undefined {
  const [a, b] = [points[from]!, points[to]!];
  const chord = distance(b, a);
  if (chord === 0 || to - from < 2) return undefined;
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const along = { x: (b.x - a.x) / chord, y: (b.y - a.y) / chord };
  let [top, bottom] = [0, 0];
  for (let i = from + 1; i < to; i++) {
    const [dx, dy] = [points[i]!.x - middle.x, points[i]!.y - middle.y];
    const x = dx * along.x + dy * along.y;
    const y = dy * along.x - dx * along.y;
    top += y * (x * x + y * y - (chord / 2) ** 2);
    bottom += 2 * y * y;
  }
  if (bottom === 0) return undefined;
  const off = top / bottom;
  const centre = { x: middle.x - off * along.y, y: middle.y + off * along.x };
  const stretch = points.slice(from, to + 1);
  const sweep = sweepOn(stretch, centre);
  if (sweep === undefined || Math.abs(sweep) < leastSweep) return undefined;
  const arcs = inPieces(a, b, centre, sweep);
  const side = Math.sign(sweep);
  const kink = (at: Point, tangent: Point) =>
    Math.abs(angleBetween({ x: -side * (at.y - centre.y), y: side * (at.x - centre.x) }, tangent));
  if (kink(a, tangents[from]!) > kinkless || kink(b, tangents[to]!) > kinkless) return undefined;
  return arcs;
}

/** The circle through all points of a ring, if they lie on one: least squares by Kåsa (1976), which is also linear. */
export function fitCircle(ring: readonly Point[]): { start: Point; segments: Segment[] } | undefined {
  const count = ring.length;
  const mean = ring.reduce((sum, { x, y }) => ({ x: sum.x + x / count, y: sum.y + y / count }), { x: 0, y: 0 });
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const point of ring) {
    const [x, y] = [point.x - mean.x, point.y - mean.y];
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const determinant = 2 * (xx * yy - xy * xy);
  if (determinant === 0) return undefined;
  const centre = {
    x: mean.x + (xz * yy - yz * xy) / determinant,
    y: mean.y + (yz * xx - xz * xy) / determinant,
  };
  const radius = ring.reduce((sum, { x, y }) => sum + Math.hypot(x - centre.x, y - centre.y) / count, 0);
  const sweep = sweepOn([...ring, ring[0]!], centre, radius);
  if (sweep === undefined) return undefined;
  const start = { x: centre.x + radius, y: centre.y };
  return { start, segments: inPieces(start, start, centre, sweep) };
}

/** The angle that the points cover round `centre`, if they lie on one circle and never turn back. */
function sweepOn(points: readonly Point[], centre: Point, given?: number): number | undefined {
  const radius = given ?? Math.hypot(points[0]!.x - centre.x, points[0]!.y - centre.y);
  let sweep = 0;
  for (let i = 0; i < points.length; i++) {
    const point = points[i]!;
    const spoke = { x: point.x - centre.x, y: point.y - centre.y };
    if (Math.abs(Math.hypot(spoke.x, spoke.y) - radius) > onArcMm) return undefined;
    if (i === 0) continue;
    const last = points[i - 1]!;
    const step = angleBetween({ x: last.x - centre.x, y: last.y - centre.y }, spoke);
    if (step * sweep < 0 || radius * (1 - Math.cos(step / 2)) > edgeToArcMm) return undefined;
    sweep += step;
  }
  return sweep;
}

function inPieces(from: Point, to: Point, centre: Point, sweep: number): Segment[] {
  const count = Math.ceil(Math.abs(sweep) / mostSweep);
  const radius = distance(from, centre);
  const first = Math.atan2(from.y - centre.y, from.x - centre.x);
  return Array.from({ length: count }, (_, i): Segment => {
    const angle = first + ((i + 1) / count) * sweep;
    const end =
      i + 1 === count ? to : { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    return { type: 'arc', to: end, centre, sweep: sweep / count };
  });
}
