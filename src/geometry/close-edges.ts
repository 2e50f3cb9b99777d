/**
 * Places where two stretches of outline come nearer to each other than a given reach, across a gap or across material.
 *
 * Any two edges that face each other are measured exactly, segment to segment. Left out are features that every outline
 * has: corners, tips, serifs and the wedges between strokes that meet. A place counts as one of those if its two edges
 * meet within a short way along the outline, or if the space behind it only narrows, like a wedge or the cusp between
 * two round edges; `close-edges/pairs.ts` has the limits. A slit, the mouth of a bay, the waist of a counter and a gap
 * between two rings are all reported.
 */

import { edgesOf, reversed } from './close-edges/edges.ts';
import { facingPairs } from './close-edges/pairs.ts';
import type { FacingPair } from './close-edges/pairs.ts';
import type { Point, Region } from './types.ts';

export { cornerReaches } from './close-edges/pairs.ts';

export interface ClosePlace {
  /** The least distance in mm; 0 where the outlines touch. */
  readonly width: number;
  /** The two points of the outline that far apart, the left one first. */
  readonly ends: readonly [Point, Point];
  /** Mean length of the two edges over which they are this near each other, in mm. */
  readonly length: number;
}

type FacingSide = 'gap' | 'material';

/**
 * All places narrower than `reach` mm, the narrowest first. Stretches less than `reach` apart along the outline are one
 * place. Always terminates: where tens of thousands of edges all lie near each other, it returns only some of the
 * places.
 */
export function closeEdges(region: Region, reach: number, side: FacingSide): ClosePlace[] {
  return closeOn(region, reach, [side])[0]!;
}

/** Places across gaps and across material, for hardly more than the cost of either. */
export function closeOnBothSides(region: Region, reach: number): Readonly<Record<FacingSide, readonly ClosePlace[]>> {
  const [gap, material] = closeOn(region, reach, ['gap', 'material']) as [ClosePlace[], ClosePlace[]];
  return { gap, material };
}

/** The places for each of the given sides. */
function closeOn(region: Region, reach: number, sides: readonly FacingSide[]): ClosePlace[][] {
  if (!(reach > 0) || !Number.isFinite(reach)) return sides.map(() => []);
  const edges = edgesOf(region);
  const ringLengths = edges.rings.map(({ length }) => length);
  const walked = sides.map((side) => (side === 'material' ? reversed(edges) : edges));
  return facingPairs(walked, reach).map((pairs) =>
    mergedPlaces(pairs, ringLengths, reach).sort(
      (a, b) => a.width - b.width || compare(a.ends[0], b.ends[0]) || compare(a.ends[1], b.ends[1]),
    ),
  );
}

/** Pairs whose stretches touch on either side, merged into one place each. */
function mergedPlaces(pairs: readonly FacingPair[], ringLengths: readonly number[], slack: number): ClosePlace[] {
  const leader = pairs.map((_, index) => index);
  const find = (index: number): number => {
    while (leader[index] !== index) index = leader[index] = leader[leader[index]!]!;
    return index;
  };
  const runs = outlineRuns(pairs, ringLengths, slack);
  for (const { members } of runs) for (const member of members) leader[find(member)] = find(members[0]!);
  const places = new Map<number, { best: FacingPair; length: number }>();
  pairs.forEach((pair, index) => {
    const place = places.get(find(index));
    if (!place) places.set(find(index), { best: pair, length: 0 });
    else if (isBefore(pair, place.best)) place.best = pair;
  });
  for (const { members, length } of runs) places.get(find(members[0]!))!.length += length / 2;
  return [...places.values()].map(({ best, length }) => {
    const [a, b] = best.ends.map(({ x, y }): Point => ({ x, y })) as [Point, Point];
    return { width: best.width, ends: compare(a, b) <= 0 ? [a, b] : [b, a], length };
  });
}

/** Widths that differ by less than this, in mm, are equal but for rounding. */
const evenMm = 1e-4;

/** Whether `a` is narrower, or equally narrow and longer; the order of the rings does not matter. */
function isBefore(a: FacingPair, b: FacingPair): boolean {
  if (Math.abs(a.width - b.width) > evenMm) return a.width < b.width;
  return facingLength(a) > facingLength(b);
}

function facingLength({ stretches: [a, b] }: FacingPair): number {
  return a.end - a.start + b.end - b.start;
}

interface OutlineRun {
  /** Indices of pairs. */
  readonly members: number[];
  /** Length of outline they cover, in mm. */
  length: number;
}

/** Groups of stretches of one ring that overlap or are less than `slack` apart. */
function outlineRuns(pairs: readonly FacingPair[], ringLengths: readonly number[], slack: number): OutlineRun[] {
  const stretches = pairs.flatMap((pair, member) => pair.stretches.map((stretch) => ({ ...stretch, member })));
  stretches.sort((a, b) => a.ring - b.ring || a.start - b.start);
  const runs: OutlineRun[] = [];
  let first = { ring: -1, start: 0, run: -1 };
  let end = 0;
  const close = (): void => {
    const last = runs.length - 1;
    // A run may continue across the point where the ring starts.
    if (last <= first.run || first.start + ringLengths[first.ring]! - end > slack) return;
    const { members, length } = runs.pop()!;
    runs[first.run]!.members.push(...members);
    runs[first.run]!.length += length;
  };
  for (const { ring, start, end: stop, member } of stretches) {
    if (ring !== first.ring) {
      if (first.ring >= 0) close();
      first = { ring, start, run: runs.length };
      runs.push({ members: [], length: 0 });
      end = start;
    } else if (start > end + slack) {
      runs.push({ members: [], length: 0 });
      end = start;
    }
    const run = runs[runs.length - 1]!;
    run.members.push(member);
    run.length += Math.max(0, stop - Math.max(end, start));
    end = Math.max(end, stop);
  }
  if (first.ring >= 0) close();
  return runs;
}

const compare = (a: Point, b: Point): number => a.x - b.x || a.y - b.y;
