/**
 * Start points of closed cuts. The beam dwells a moment where it starts and where it closes, which leaves a mark at a
 * corner and burns through at a narrow place; so a cut starts in the middle of a long stretch, with material beside it.
 */

import { distance } from '../geometry/measure.ts';
import { directionsOf, pointOn, segmentLength, startingAt, startsOf } from '../geometry/contour.ts';
import type { Contour } from '../geometry/contour.ts';
import type { Point, Region } from '../geometry/types.ts';
import { crossings } from '../strength/line-stretches.ts';

/** A sharper turn than this counts as a corner. */
const cornerRadians = (20 * Math.PI) / 180;

/** Clearance from corners and from the opposite edge that is enough, in mm. */
const enoughMm = 3;

/** Spacing of the candidates, in mm; short segments have them closer together. */
const stepMm = 4;

/** Candidates with at least this share of the best clearance are equally good. */
const goodShare = 0.8;

/** More candidates would not shorten the travel noticeably. */
const mostCandidates = 16;

/** A start point: a parameter on one of a contour's segments. */
export interface StartPoint {
  readonly segment: number;
  readonly t: number;
  readonly at: Point;
}

/** Candidate start points on a contour of a part, in contour order; always at least one. */
export function startPoints(contour: Contour, part: Region): StartPoint[] {
  const places = placesOn(contour).map((place) => ({ place, clearance: clearanceAt(place, part) }));
  const best = Math.max(...places.map(({ clearance }) => clearance));
  const good = places.filter(({ clearance }) => clearance >= goodShare * best).map(({ place }) => place);
  const every = Math.ceil(good.length / mostCandidates);
  return good.filter((_, i) => i % every === 0).map(({ segment, t, at }) => ({ segment, t, at }));
}

export function beginningAt(contour: Contour, { segment, t }: StartPoint): Contour {
  return startingAt(contour, segment, t);
}

interface StartCandidate extends StartPoint {
  /** Distance along the contour to the nearest corner, in mm. */
  readonly toCorner: number;
  readonly direction: Point;
}

function placesOn(contour: Contour): StartCandidate[] {
  const starts = startsOf(contour);
  const { segments } = contour;
  const ends = segments.map((segment, i) => directionsOf(starts[i]!, segment));
  const lengths = segments.map((segment, i) => segmentLength(starts[i]!, segment));
  const along: number[] = [];
  let total = 0;
  for (const length of lengths) {
    along.push(total);
    total += length;
  }
  const corners = along.filter((_, i) => {
    const before = ends[(i - 1 + ends.length) % ends.length]![1];
    const after = ends[i]![0];
    return (
      Math.abs(Math.atan2(before.x * after.y - before.y * after.x, before.x * after.x + before.y * after.y)) >
      cornerRadians
    );
  });
  return segments.flatMap((segment, i): StartCandidate[] => {
    const count = Math.max(1, Math.floor(lengths[i]! / stepMm));
    return Array.from({ length: count }, (_, k): StartCandidate => {
      const t = (k + 0.5) / count;
      const from = along[i]! + t * lengths[i]!;
      const toCorner = Math.min(total, ...corners.map((corner) => cyclicDistance(from, corner, total)));
      const [a, b] = [pointOn(starts[i]!, segment, t - 0.01), pointOn(starts[i]!, segment, t + 0.01)];
      const length = distance(b, a) || 1;
      return {
        segment: i,
        t,
        at: pointOn(starts[i]!, segment, t),
        toCorner,
        direction: { x: (b.x - a.x) / length, y: (b.y - a.y) / length },
      };
    });
  });
}

function cyclicDistance(a: number, b: number, total: number): number {
  const apart = Math.abs(a - b);
  return Math.min(apart, total - apart);
}

/** Material lies to the left of every contour: outlines run counter-clockwise, holes clockwise. */
function clearanceAt({ at, direction, toCorner }: StartCandidate, part: Region): number {
  if (toCorner === 0) return 0;
  const beyond = crossings(part, at, { x: -direction.y, y: direction.x }).find((along) => along > 0.05);
  return Math.min(enoughMm, toCorner, beyond ?? enoughMm);
}
