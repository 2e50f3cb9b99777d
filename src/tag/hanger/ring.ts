/**
 * Where a ring goes. Its hole touches the outline of what it is joined to, so the hole is clear of lettering by construction
 * and the wall laps into the body; of all such places the one that is joined best and hangs straightest is taken.
 */

import { offset } from '../../geometry/clipper.ts';
import { EdgeIndex, circleCrossings } from '../../geometry/edge-index.ts';
import { boundsOf, boxCentre, centroid, distance, ringArea } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import { walk } from '../../geometry/walk.ts';
import type { HangerPlace } from '../../spec/model.ts';
import { aimFrom, furthestOnRay, seenTilt, tiltDegrees } from './direction.ts';
import { misreading } from './reading.ts';
import type { RingReading } from './reading.ts';

export interface RingSize {
  /** Radius of the hole. */
  readonly hole: number;
  /** Material round the hole. */
  readonly wall: number;
  /** How much deeper than touching the hole is set. */
  readonly sink: number;
}

/** Step along the outline from one place tried to the next, in mm, before the best are refined. */
const stepMm = 1;
const refineMm = 0.1;
const refined = 4;

/** A degree off the straight costs this share of a fully joined ring. */
const tiltCost = 1 / 60;

/** So much more once it is seen, less half a degree for what the ring itself weighs. */
const askewCost = 0.15;
const askewDegrees = seenTilt - 0.5;

/** With `auto`, a side other than the top must be joined this much better to be taken. */
const sideCost = 0.1;

/** Scores that differ by less are equally good. */
const even = 1e-3;

/** Less well joined than this the end of a bar is not: no joint is better than 1. */
const barAllowance = 1;

/** A bar is as wide a hole further on, within this share. */
const parallelShare = 0.1;

/** A ring that comes so near to what it does not join leaves a slit there that the beam hardly parts, in mm. */
const slitMm = 0.3;
const slitCost = 0.3;

/** More than any place behind the outline could make good. */
const hiddenCost = 3;

/** More than any other fault. */
const blockedCost = 10;

/** How far the track of the ring's centre may stray: well within what its wall laps over. */
const trackToleranceMm = 0.01;

interface Candidate {
  readonly centre: Point;
  readonly score: number;
}

/** The centre of the ring; `undefined` where the body leaves no place for one. */
export function placeRing(
  on: Region,
  whole: Region,
  at: HangerPlace,
  size: RingSize,
  reading: RingReading,
): Point | undefined {
  const bounds = boundsOf(on);
  const balance = centroid(whole);
  if (!bounds || !balance) return undefined;
  if (at.kind === 'point') {
    const middle = boxCentre(bounds);
    return { x: middle.x + at.offset.x, y: middle.y + at.offset.y };
  }
  const edges = new EdgeIndex(whole);
  const directions = at.kind === 'auto' ? autoDirections : [{ direction: aimFrom(balance, bounds, at), cost: 0 }];
  const costOf = (centre: Point): number => {
    const hang = { x: centre.x - balance.x, y: centre.y - balance.y };
    const costs = directions.map(({ direction, cost }) => {
      // Seen from its side, a ring stands free: one in a bay behind lettering holds, but nobody looks for it there.
      const hidden = edges.crossedBy(centre, direction) ? hiddenCost : 0;
      return cost + hidden + costOfTilt(tiltDegrees(hang, direction));
    });
    return Math.min(...costs);
  };
  const judge = (centre: Point, cost: number): Candidate => {
    // As wide as its own radius the joint is as strong as the wall lets it be; more is no gain.
    const joined = Math.min(joint(centre, size.hole + size.wall, edges) / (size.hole + size.wall), 1);
    // Its hole must be clear of everything, also of what it is not joined to.
    const blocked = isBlocked(centre, size, edges) ? blockedCost : 0;
    const slit = leavesSlit(centre, size.hole + size.wall, edges) ? slitCost : 0;
    return { centre, score: joined - cost - blocked - slit - misreading(reading, centre, size) };
  };
  // Never inside a counter, so the counters need not be offset.
  const outer = on.filter((ring) => ringArea(ring) > 0);
  const track = offset(simplified(outer, trackToleranceMm), size.hole - size.sink);
  const outlines = track.filter((ring) => ringArea(ring) > 0);
  const steps = outlines
    .flatMap((ring) => walk(ring, stepMm))
    .map((step) => ({ ...step, cost: costOf(step.point), gain: refiningGain(step.point, balance) }));
  steps.sort((a, b) => a.cost - a.gain - (b.cost - b.gain));
  const found: Tried[] = [];
  let leading = -Infinity;
  for (const { point, ring, along, cost, gain } of steps) {
    // A full joint scores 1: what costs more than the best is ahead of that by cannot catch up, even a step further on.
    if (1 - cost + gain < leading) break;
    const candidate = { ...judge(point, cost), ring, along, gain };
    found.push(candidate);
    leading = Math.max(leading, candidate.score);
  }
  let best: Candidate | undefined = [...found].sort(better)[0];
  found.sort((a, b) => b.score + b.gain - (a.score + a.gain) || better(a, b));
  for (const { ring, along } of apart(found).slice(0, refined)) {
    for (const { point } of walk(ring, refineMm, along - stepMm, along + stepMm)) {
      const candidate = judge(point, costOf(point));
      if (!best || better(candidate, best) < 0) best = candidate;
    }
  }
  // Straight ahead it hangs without any tilt, and on a symmetric body on its axis. Beside the end of a bar it laps over more
  // of it, but holds no better than the bar.
  for (const { direction } of directions) {
    const point = furthestOnRay(outlines, balance, direction);
    const candidate = point && judge(point, costOf(point));
    if (!candidate || !best) continue;
    if (candidate.score >= best.score - even) best = candidate;
    else if (candidate.score >= best.score - barAllowance && isEndOfSameBar(candidate.centre, best.centre, size, edges))
      best = { ...candidate, score: best.score };
  }
  return best?.centre;
}

/** Whether a ring is held by the end of a bar narrower than itself, and another place is beside that very end. */
function isEndOfSameBar(centre: Point, other: Point, { hole, wall }: RingSize, edges: EdgeIndex): boolean {
  const radius = hole + wall;
  if (distance(other, centre) > radius) return false;
  const width = joint(centre, radius, edges);
  return width > 0 && width < radius && Math.abs(joint(centre, radius + hole, edges) - width) < parallelShare * width;
}

/** A place on the track, and what it may gain by the places between it and the next. */
interface Tried extends Candidate {
  readonly ring: Ring;
  readonly along: number;
  readonly gain: number;
}

function costOfTilt(degrees: number): number {
  return degrees * tiltCost + (degrees > askewDegrees ? askewCost : 0);
}

/** A step away it may hang straighter by as much as the step is seen from the balance, and be askew no more. */
function refiningGain(point: Point, balance: Point): number {
  return askewCost + tiltCost * Math.atan2(stepMm, distance(point, balance)) * (180 / Math.PI);
}

/** Without the places that a better one lies beside, whose refining looks at them as well. */
function apart(sorted: readonly Tried[]): Tried[] {
  const kept: Tried[] = [];
  for (const each of sorted) {
    const { x, y } = each.centre;
    if (kept.every(({ centre }) => Math.hypot(centre.x - x, centre.y - y) > 2 * stepMm)) kept.push(each);
  }
  return kept;
}

const autoDirections = [
  { direction: { x: 0, y: 1 }, cost: 0 },
  { direction: { x: -1, y: 0 }, cost: sideCost },
  { direction: { x: 1, y: 0 }, cost: sideCost },
];

/** Higher scores first; equal ones in an order that does not depend on where the outline starts. */
function better(a: Candidate, b: Candidate): number {
  const difference = b.score - a.score;
  if (Math.abs(difference) > 1e-6) return difference;
  return b.centre.y - a.centre.y || a.centre.x - b.centre.x;
}

/** The longest chord that the ring's outer circle cuts off inside the body: what a tear would have to go through. */
function joint(centre: Point, radius: number, edges: EdgeIndex): number {
  const angles = circleCrossings(edges.near(centre, radius), centre, radius);
  if (angles.length < 2) return 0;
  let longest = 0;
  angles.forEach((from, index) => {
    const to = index + 1 < angles.length ? angles[index + 1]! : angles[0]! + 2 * Math.PI;
    const middle = (from + to) / 2;
    const chord = 2 * radius * Math.sin(Math.min((to - from) / 2, Math.PI / 2));
    if (chord <= longest) return;
    if (edges.contains({ x: centre.x + radius * Math.cos(middle), y: centre.y + radius * Math.sin(middle) }))
      longest = chord;
  });
  return longest;
}

/** Whether a little further out the circle meets more of the body than the ring joins. */
function leavesSlit(centre: Point, radius: number, edges: EdgeIndex): boolean {
  const met = (reach: number): number => circleCrossings(edges.near(centre, reach), centre, reach).length;
  return met(radius + slitMm) > met(radius);
}

/** Whether the hole cuts into the body deeper than it is meant to. */
function isBlocked(centre: Point, { hole, sink }: RingSize, edges: EdgeIndex): boolean {
  const clear = hole - Math.max(sink, 0) - 0.02;
  if (clear <= 0) return false;
  return circleCrossings(edges.near(centre, clear), centre, clear).length > 0 || (sink <= 0 && edges.contains(centre));
}
