/**
 * Time a head takes along a path. It accelerates and brakes evenly (a trapezoidal profile), slows for bends so that the
 * acceleration across the path stays within the machine's, v² ≤ a·r, and for corners so that its velocity jumps by no
 * more than the machine allows, 2·v·sin(θ/2) ≤ Δv. It begins and ends at rest. Lengths in mm, times in s.
 */

import { distance } from '../geometry/measure.ts';
import { directionsOf, pointOn, radiusOf, segmentLength, startsOf } from '../geometry/contour.ts';
import type { Contour, Segment } from '../geometry/contour.ts';
import type { Point } from '../geometry/types.ts';

export interface Motion {
  /** Target speed, mm/s. */
  readonly speed: number;
  /** mm/s². */
  readonly acceleration: number;
  /** Largest sudden change of velocity, mm/s. */
  readonly cornerJump: number;
}

/** The curvature of a cubic changes along it, so it is approximated by this many arcs. */
const arcsPerCubic = 12;

interface MotionStretch {
  readonly length: number;
  /** Highest speed on the stretch, mm/s. */
  readonly most: number;
  /** Highest speed at its beginning, mm/s. */
  readonly entry: number;
}

export function secondsAlong(contour: Contour, motion: Motion): number {
  return secondsOver(motionStretches(contour, motion), motion.acceleration);
}

/** Seconds along a straight line, from rest to rest. */
export function secondsAcross(length: number, { speed, acceleration }: Omit<Motion, 'cornerJump'>): number {
  return length > 0 ? secondsOver([{ length, most: speed, entry: 0 }], acceleration) : 0;
}

function motionStretches(contour: Contour, motion: Motion): MotionStretch[] {
  const starts = startsOf(contour);
  let last: Point | undefined;
  return contour.segments.flatMap((segment, i): MotionStretch[] => {
    const from = starts[i]!;
    const [out, into] = directionsOf(from, segment);
    const entry = last ? motion.cornerJump / (2 * Math.sin(angle(last, out) / 2)) : 0;
    last = into;
    const length = segmentLength(from, segment);
    const most = (radius: number) => Math.min(motion.speed, Math.sqrt(motion.acceleration * radius));
    switch (segment.type) {
      case 'line':
        return [{ length, most: motion.speed, entry }];
      case 'arc':
        return [{ length, most: most(radiusOf(from, segment)), entry }];
      case 'cubic':
        return bends(from, segment).map((each, k) => ({
          length: each.length,
          most: most(each.radius),
          entry: k === 0 ? entry : Infinity,
        }));
    }
  });
}

function bends(from: Point, cubic: Extract<Segment, { type: 'cubic' }>): { length: number; radius: number }[] {
  return Array.from({ length: arcsPerCubic }, (_, i) => {
    const [a, b, c] = [0, 0.5, 1].map((share) => pointOn(from, cubic, (i + share) / arcsPerCubic)) as [
      Point,
      Point,
      Point,
    ];
    const [ab, bc, ca] = [distance(a, b), distance(b, c), distance(c, a)];
    const twiceArea = Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
    // Circumradius: product of the sides over four times the area.
    return { length: ab + bc, radius: twiceArea > 0 ? (ab * bc * ca) / (2 * twiceArea) : Infinity };
  });
}

/**
 * Shortest time through all stretches: a backward pass for braking, a forward pass for accelerating, then the time of
 * each.
 */
function secondsOver(stretches: readonly MotionStretch[], acceleration: number): number {
  const count = stretches.length;
  const speeds = stretches.map(({ entry, most }, i) => Math.min(entry, most, i > 0 ? stretches[i - 1]!.most : 0));
  speeds.push(0);
  const reachable = (speed: number, length: number) => Math.sqrt(speed * speed + 2 * acceleration * length);
  for (let i = count - 1; i >= 0; i--)
    speeds[i] = Math.min(speeds[i]!, reachable(speeds[i + 1]!, stretches[i]!.length));
  for (let i = 0; i < count; i++) speeds[i + 1] = Math.min(speeds[i + 1]!, reachable(speeds[i]!, stretches[i]!.length));
  return stretches.reduce(
    (sum, { length, most }, i) => sum + trapezoidSeconds(length, speeds[i]!, speeds[i + 1]!, most, acceleration),
    0,
  );
}

function trapezoidSeconds(length: number, first: number, last: number, most: number, acceleration: number): number {
  const peak = Math.min(most, Math.sqrt(acceleration * length + (first * first + last * last) / 2));
  const changing = (2 * peak * peak - first * first - last * last) / (2 * acceleration);
  return (2 * peak - first - last) / acceleration + Math.max(0, length - changing) / peak;
}

function angle(a: Point, b: Point): number {
  return Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
}
