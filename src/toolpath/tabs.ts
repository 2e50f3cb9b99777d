/** Tabs: short gaps in a cut outline that hold the part in its sheet until it is broken out. */

import { segmentLength, splitSegment, startsOf } from '../geometry/contour.ts';
import type { Contour, Segment } from '../geometry/contour.ts';
import type { Point } from '../geometry/types.ts';

/** Largest share of the distance between two tabs that a tab may take. */
const mostShare = 0.5;

/**
 * The closed contour less `count` gaps, the first at its start, the others spread evenly. A gap is as wide as the tab
 * plus one kerf, half of which the beam takes at each end. A contour too short for its tabs gets fewer.
 */
export function withTabs(
  contour: Contour,
  { count, width }: { count: number; width: number },
  kerf: number,
): Contour[] {
  const walk = walkOf(contour);
  const gap = width + kerf;
  const fitting = Math.min(count, Math.floor((mostShare * walk.total) / gap));
  if (fitting < 1) return [contour];
  const step = walk.total / fitting;
  return Array.from({ length: fitting }, (_, i) => contourStretch(walk, i * step + gap / 2, (i + 1) * step - gap / 2));
}

interface ContourWalk {
  readonly pieces: readonly { readonly from: Point; readonly segment: Segment; readonly length: number }[];
  readonly total: number;
}

function walkOf(contour: Contour): ContourWalk {
  const starts = startsOf(contour);
  const pieces = contour.segments.map((segment, i) => ({
    from: starts[i]!,
    segment,
    length: segmentLength(starts[i]!, segment),
  }));
  return { pieces, total: pieces.reduce((sum, { length }) => sum + length, 0) };
}

/** The part of a closed contour from one distance along it to another, as an open contour. */
function contourStretch({ pieces }: ContourWalk, begin: number, end: number): Contour {
  const segments: Segment[] = [];
  let start: Point | undefined;
  let passed = 0;
  for (const { from, segment, length } of pieces) {
    const [first, last] = [Math.max(0, begin - passed), Math.min(length, end - passed)];
    passed += length;
    if (last - first <= 1e-6) continue;
    const tail = first > 0 ? cutSegment(from, segment, length, first) : { at: from, before: undefined, after: segment };
    start ??= tail.at;
    const rest = last < length ? cutSegment(tail.at, tail.after, length - first, last - first).before! : tail.after;
    segments.push(rest);
  }
  return { start: start!, segments, closed: false };
}

/** Splits a segment at a distance along it. */
function cutSegment(
  from: Point,
  segment: Segment,
  length: number,
  at: number,
): { at: Point; before?: Segment; after: Segment } {
  const t = parameterAt(from, segment, length, at);
  const [before, after] = splitSegment(from, segment, t);
  return { at: before.to, before, after };
}

/** Exact for lines and arcs; by bisection for a cubic. */
function parameterAt(from: Point, segment: Segment, length: number, at: number): number {
  if (segment.type !== 'cubic') return at / length;
  let [low, high] = [0, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (segmentLength(from, splitSegment(from, segment, middle)[0]) < at) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
