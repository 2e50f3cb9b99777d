/** Corners that an arc rounds: where it leads from one straight side into the next. */

import { distance } from './measure.ts';
import type { Point, Ring } from './types.ts';

export interface RoundCorner {
  /** The indices of the points where the arc begins and ends. */
  readonly first: number;
  readonly last: number;
  /** What it takes of either side, in mm: how far the sides would still run to meet. */
  readonly taken: number;
}

/** The sides are this many times as long as any chord of the arc: chords of one curve change in length little by little. */
const sideToChord = 2.5;

/** The sides meet at an angle between these, in degrees; beyond that, the arc is an end of its own, as of a slot. */
const turnDegrees = { least: 20, most: 150 } as const;

/** The points of an arc are this near to one circle, and what it takes of one side is this near to that of the other, in mm. */
const roundMm = 0.02;
const evenMm = 0.05;

/** A single chord longer than this, in mm, is a side of its own: the corner was cut off straight before. */
const chordMm = 0.2;

/** The convex corners of a ring that are rounded by an arc, in the order of the ring. */
export function roundCorners(ring: Ring): RoundCorner[] {
  const count = ring.length;
  const lengths = ring.map((point, index) => distance(point, ring[(index + 1) % count]!));
  const corners: RoundCorner[] = [];
  for (let first = 0; first < count; first += 1) {
    const side = lengths[(first - 1 + count) % count]!;
    let longest = 0;
    for (let steps = 1; steps < count - 1; steps += 1) {
      longest = Math.max(longest, lengths[(first + steps - 1) % count]!);
      if (longest * sideToChord > side) break;
      if (steps === 1 && longest > chordMm) continue;
      if (longest * sideToChord > lengths[(first + steps) % count]!) continue;
      const taken = takenByArc(ring, first, steps);
      if (taken === undefined) continue;
      corners.push({ first, last: (first + steps) % count, taken });
      break;
    }
  }
  return corners;
}

/** What an arc takes of its sides; `undefined` if these points are on no arc that runs into both. */
function takenByArc(ring: Ring, first: number, steps: number): number | undefined {
  const at = (index: number): Point => ring[(index + ring.length) % ring.length]!;
  const [start, end] = [at(first), at(first + steps)];
  const [into, out] = [direction(at(first - 1), start), direction(end, at(first + steps + 1))];
  const cross = into.x * out.y - into.y * out.x;
  const turn = (Math.atan2(cross, into.x * out.x + into.y * out.y) * 180) / Math.PI;
  if (turn < turnDegrees.least || turn > turnDegrees.most) return undefined;
  const [x, y] = [end.x - start.x, end.y - start.y];
  const [before, after] = [(x * out.y - y * out.x) / cross, (into.x * y - into.y * x) / cross];
  if (before <= 0 || after <= 0 || Math.abs(before - after) > evenMm) return undefined;
  const taken = (before + after) / 2;
  const radius = taken / Math.tan((turn * Math.PI) / 360);
  const centre = { x: start.x - into.y * radius, y: start.y + into.x * radius };
  const isRound = Array.from({ length: steps + 1 }, (_, step) => at(first + step)).every(
    (point) => Math.abs(distance(point, centre) - radius) <= roundMm,
  );
  return isRound ? taken : undefined;
}

function direction(from: Point, to: Point): Point {
  const length = distance(from, to);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
