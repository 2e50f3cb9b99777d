/**
 * Places a ring. Its hole touches the outline of what it is joined to, so the hole is clear of lettering by
 * construction and the wall laps into the body; of all such places, the one that is joined best and hangs straightest
 * is chosen.
 */

import { axesOf } from '../../geometry/axes.ts';
import { offset } from '../../geometry/clipper.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { boundsOf, boxCentre, centroid, distance, ringArea } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import { walkRing } from '../../geometry/walk-ring.ts';
import type { HangerPlace } from '../../spec/model/model.ts';
import { aimFrom, furthestOnRay, seenTilt, spoiltTilt, tiltDegrees } from './direction.ts';
import { isPastEnd, misreadingCost } from './reading.ts';
import type { RingReading } from './reading.ts';

export interface RingSize {
  /** Radius of the hole, in mm. */
  readonly hole: number;
  /** Width of the material round the hole, in mm. */
  readonly wall: number;
  /** Depth of the hole below touching, in mm. */
  readonly sink: number;
}

/** Step along the outline from one place tried to the next, in mm, before the best are refined. */
const stepMm = 1;
const refineMm = 0.1;
const refined = 4;

/** Cost of a degree of tilt, in shares of a fully joined ring. */
const tiltCost = 1 / 60;

/**
 * So much more once it is seen, less half a degree for what the ring itself weighs: less where the tag hangs by its end, with the
 * line upright, and nobody looks for the level.
 */
const askewCost = { level: 0.3, upright: 0.15 } as const;
const askewDegrees = seenTilt - 0.5;

/** And so much more of lettering where nobody takes it for meant, again a little before that. */
const spoiltCost = 0.3;
const spoiltDegrees = spoiltTilt - 0.5;

/**
 * With `auto`, a side other than the top must be better joined by this much; and the right one, where a ring is read after
 * the letters, by more.
 */
const sideCost = { left: 0.1, right: 0.2 } as const;

/** Scores that differ by less than this are equal. */
const even = 1e-3;

/** Allowance for the end of a bar, which may be joined less well by any amount: no joint is better than 1. */
const barAllowance = 1;

/** A bar keeps its width, within this share, one hole's radius further on. */
const parallelShare = 0.1;

/** A ring this near to something that it does not join, in mm, leaves a slit there that the beam hardly separates. */
const slitMm = 0.3;
const slitCost = 0.3;

/** On a frame that is the same to the left and to the right, a ring beside its middle looks like a mistake: what a tilt that is not seen costs. */
const axisGain = askewDegrees * tiltCost;

/** Cost of a millimetre off the level that is asked for: that of a corner's other ring. */
const offLevelCost = 2;

/** More than any place behind the outline could make up for. */
const hiddenCost = 3;

/** Cost of a place beside the body with ink above and below it, as in the crook of a 2: there it looks stuck on. */
const bayCost = 0.3;

/** More than any other fault. */
const blockedCost = 10;

/** Tolerance of the track of the ring's centre, in mm: well within the overlap of its wall. */
const trackToleranceMm = 0.01;

export interface RingCandidate {
  readonly centre: Point;
  readonly score: number;
}

/** What else a ring is placed by. */
export interface RingWishes {
  /** From where one ring would be to where this one of a row is. */
  readonly aside?: Point;
  /** Cost of a place where the ring is also joined by less than its wall. */
  readonly secondJointCost?: number;
  /** The height that it is to be at. */
  readonly level?: number | undefined;
}

/** The best place; `undefined` if the body has none. */
export function placeRing(
  on: Region,
  whole: Region,
  at: HangerPlace,
  size: RingSize,
  reading: RingReading,
  { aside = { x: 0, y: 0 }, secondJointCost = 0, level }: RingWishes = {},
): RingCandidate | undefined {
  const bounds = boundsOf(on);
  const middleOfMass = centroid(whole);
  if (!bounds || !middleOfMass) return undefined;
  if (at.kind === 'point') {
    const middle = boxCentre(bounds);
    return { centre: { x: middle.x + at.offset.x + aside.x, y: middle.y + at.offset.y + aside.y }, score: 0 };
  }
  const balance = { x: middleOfMass.x + aside.x, y: middleOfMass.y + aside.y };
  const edges = new EdgeIndex(whole);
  // Between letters it is read by what it makes of them.
  const hasLetters = reading.coverable.letters.length > 0;
  const directions = at.kind === 'auto' ? autoDirections : [{ direction: aimFrom(balance, bounds, at), cost: 0 }];
  const costOf = (centre: Point): number => {
    const hang = { x: centre.x - balance.x, y: centre.y - balance.y };
    const offLevel = level === undefined ? 0 : offLevelCost * Math.abs(centre.y - level);
    const costs = directions.map(({ direction, cost }) => {
      // Seen from its side, a ring stands free: one in a bay behind lettering would hold, but nobody looks for it
      // there.
      const hidden = edges.crossedBy(centre, direction) || isPastEnd(reading, centre, direction) ? hiddenCost : 0;
      const across = { x: direction.y, y: direction.x };
      const isInBay =
        (direction.y === 0 || !hasLetters) &&
        [1, -1].every((way) => edges.crossedBy(centre, { x: way * across.x, y: way * across.y }));
      const bay = isInBay ? bayCost : 0;
      return cost + hidden + bay + offLevel + costOfTilt(tiltDegrees(hang, direction), direction.y === 0, hasLetters);
    });
    return Math.min(...costs);
  };
  // A place whose score is below `least` is given up as soon as that is sure, with no less than its score.
  const judge = (centre: Point, cost: number, least = -Infinity): RingCandidate => {
    if (1 - cost < least) return { centre, score: 1 - cost };
    // A joint as wide as the ring's radius is as strong as the wall allows; more is no gain.
    const [joint = 0, ...others] = jointLengths(centre, size.hole + size.wall, edges);
    const joined = Math.min(joint / (size.hole + size.wall), 1);
    if (joined - cost < least) return { centre, score: joined - cost };
    // Its hole must be clear of everything, even of what it is not joined to.
    const blocked = isBlocked(centre, size, edges) ? blockedCost : 0;
    const slit = leavesSlit(centre, size.hole + size.wall, edges) ? slitCost : 0;
    const thin = others.some((other) => other < size.wall) ? secondJointCost : 0;
    const score = joined - cost - blocked - slit - thin;
    return { centre, score: score < least ? score : score - misreadingCost(reading, centre, size, at.kind === 'auto') };
  };
  const readsWorse = (centre: Point, other: Point): boolean =>
    misreadingCost(reading, centre, size) > misreadingCost(reading, other, size);
  // Never inside a counter, so the counters need no offset.
  const outer = on.filter((ring) => ringArea(ring) > 0);
  const track = offset(simplified(outer, trackToleranceMm), size.hole - size.sink, 'round', trackToleranceMm);
  const outlines = track.filter((ring) => ringArea(ring) > 0);
  const levelGain = level === undefined ? 0 : offLevelCost * stepMm;
  const steps = outlines
    .flatMap((ring) => walkRing(ring, stepMm))
    .map((step) => ({ ...step, cost: costOf(step.point), gain: refiningGain(step.point, balance) + levelGain }));
  steps.sort((a, b) => a.cost - a.gain - (b.cost - b.gain));
  const found: TriedPlace[] = [];
  let leading = -Infinity;
  for (const { point, ring, along, cost, gain } of steps) {
    // A full joint scores 1: a place whose cost exceeds the lead of the best cannot catch up, even a step further on.
    if (1 - cost + gain < leading) break;
    const candidate = { ...judge(point, cost, leading - gain), ring, along, gain };
    found.push(candidate);
    leading = Math.max(leading, candidate.score);
  }
  let best: RingCandidate | undefined = [...found].sort(compareCandidates)[0];
  found.sort((a, b) => b.score + b.gain - (a.score + a.gain) || compareCandidates(a, b));
  for (const { ring, along } of withoutNearer(found).slice(0, refined)) {
    for (const { point } of walkRing(ring, refineMm, along - stepMm, along + stepMm)) {
      const candidate = judge(point, costOf(point), best && best.score - even);
      if (!best || compareCandidates(candidate, best) < 0) best = candidate;
    }
  }
  // Straight ahead it hangs without any tilt, and on the axis of a symmetric body. Beside the end of a bar it laps over
  // more of it, but holds no better than the bar.
  for (const { direction } of directions) {
    const point = furthestOnRay(outlines, balance, direction);
    const candidate = point && judge(point, costOf(point));
    if (!candidate || !best) continue;
    if (candidate.score >= best.score - even) best = candidate;
    else if (candidate.score < best.score - barAllowance || readsWorse(candidate.centre, best.centre)) continue;
    else if (isEndOfSameBar(candidate.centre, best.centre, size, edges)) best = { ...candidate, score: best.score };
  }
  const upright = at.kind === 'anchor' ? directions.find(({ direction }) => direction.x === 0) : undefined;
  const middle = { x: boxCentre(bounds).x + aside.x, y: balance.y };
  const point = upright && furthestOnRay(outlines, middle, upright.direction);
  const onAxis = point && judge(point, costOf(point));
  if (!best || !onAxis || onAxis.score < best.score - axisGain) return best;
  return axesOf(on).x === undefined ? best : onAxis;
}

/** Whether a ring is held by the end of a bar narrower than itself, and another place is beside the same end. */
function isEndOfSameBar(centre: Point, other: Point, { hole, wall }: RingSize, edges: EdgeIndex): boolean {
  const radius = hole + wall;
  if (distance(other, centre) > radius) return false;
  const lengthAt = (reach: number): number => jointLengths(centre, reach, edges)[0] ?? 0;
  const width = lengthAt(radius);
  return width > 0 && width < radius && Math.abs(lengthAt(radius + hole) - width) < parallelShare * width;
}

/** A place on the track, and the most it may gain from the places between it and the next. */
interface TriedPlace extends RingCandidate {
  readonly ring: Ring;
  readonly along: number;
  readonly gain: number;
}

export function costOfTilt(degrees: number, isUpright: boolean, isLettering: boolean): number {
  const askew = degrees > askewDegrees ? (isUpright ? askewCost.upright : askewCost.level) : 0;
  return degrees * tiltCost + askew + (isLettering && degrees > spoiltDegrees ? spoiltCost : 0);
}

/** The tilt that a step may save: the angle of the step as seen from the centre of mass. */
function refiningGain(point: Point, balance: Point): number {
  return askewCost.level + spoiltCost + tiltCost * Math.atan2(stepMm, distance(point, balance)) * (180 / Math.PI);
}

/** The places without those that have a better one beside them, as refining that covers them too. */
function withoutNearer(sorted: readonly TriedPlace[]): TriedPlace[] {
  const kept: TriedPlace[] = [];
  for (const each of sorted) {
    const { x, y } = each.centre;
    if (kept.every(({ centre }) => Math.hypot(centre.x - x, centre.y - y) > 2 * stepMm)) kept.push(each);
  }
  return kept;
}

const autoDirections = [
  { direction: { x: 0, y: 1 }, cost: 0 },
  { direction: { x: -1, y: 0 }, cost: sideCost.left },
  { direction: { x: 1, y: 0 }, cost: sideCost.right },
];

/** Higher scores first; equal ones in an order that does not depend on where the outline starts. */
function compareCandidates(a: RingCandidate, b: RingCandidate): number {
  const difference = b.score - a.score;
  if (Math.abs(difference) > 1e-6) return difference;
  return b.centre.y - a.centre.y || a.centre.x - b.centre.x;
}

/** The chords that the ring's outer circle cuts off inside the body, the longest first: the lengths of a tear. */
export function jointLengths(centre: Point, radius: number, edges: EdgeIndex): number[] {
  const angles = edges.circleCrossings(centre, radius);
  if (angles.length < 2) return [];
  const chords = angles.flatMap((from, index) => {
    const to = index + 1 < angles.length ? angles[index + 1]! : angles[0]! + 2 * Math.PI;
    const middle = (from + to) / 2;
    const at = { x: centre.x + radius * Math.cos(middle), y: centre.y + radius * Math.sin(middle) };
    return edges.contains(at) ? [2 * radius * Math.sin(Math.min((to - from) / 2, Math.PI / 2))] : [];
  });
  return chords.sort((a, b) => b - a);
}

/** Whether, a little further out, the circle meets more of the body than the ring joins. */
function leavesSlit(centre: Point, radius: number, edges: EdgeIndex): boolean {
  return edges.countCircleCrossings(centre, radius + slitMm) > edges.countCircleCrossings(centre, radius);
}

/** Whether the hole cuts into the body deeper than intended. */
function isBlocked(centre: Point, { hole, sink }: RingSize, edges: EdgeIndex): boolean {
  const clear = hole - Math.max(sink, 0) - 0.02;
  if (clear <= 0) return false;
  return edges.countCircleCrossings(centre, clear) > 0 || (sink <= 0 && edges.contains(centre));
}
