/** Strips of material that make one part of several: the dot of an i joined to its stem. */

import { distance } from './measure.ts';
import { union } from './clipper.ts';
import { partsOf } from './parts.ts';
import { simplified } from './simplify.ts';
import type { Point, Region, Ring } from './types.ts';

/** Outlines are looked at this coarsely when their nearest points are sought, in mm. */
const seekToleranceMm = 0.02;

/** A way sideways counts as so many times its length: the dot of an i belongs to the stem below it, not to the next letter. */
const sidewaysCost = 2;

/** A region and the strips that were added to it, or left out of it. */
export interface Stripped {
  readonly region: Region;
  /** Rectangles, which may overlap. */
  readonly strips: readonly Ring[];
}

/**
 * The region with every part joined to its nearest neighbour by a strap of `width` mm, so that it is one part: of all the ways
 * to join them, the one with the least length of straps (Prim's minimum spanning tree over the gaps between the parts).
 */
export function strapped(region: Region, width: number): Stripped {
  const strips = strapsFor(region, width);
  return strips.length === 0
    ? { region, strips }
    : { region: union([region, ...strips.map((each) => [each])]), strips };
}

/** Those straps alone; none where it is one part already. */
export function strapsFor(region: Region, width: number): Ring[] {
  const parts = partsOf(region);
  if (parts.length < 2) return [];
  const outlines = parts.map((part) => simplified([part[0]!], seekToleranceMm)[0] ?? part[0]!);
  const strips: Ring[] = [];
  const joined = new Set([0]);
  const nearest = outlines.map((outline) => shortestBetween(outlines[0]!, outline));
  while (joined.size < parts.length) {
    let next = -1;
    for (let i = 0; i < parts.length; i += 1) {
      if (!joined.has(i) && (next < 0 || costOf(nearest[i]!) < costOf(nearest[next]!))) next = i;
    }
    joined.add(next);
    strips.push(strip(nearest[next]!, width));
    for (let i = 0; i < parts.length; i += 1) {
      if (joined.has(i)) continue;
      const gap = shortestBetween(outlines[next]!, outlines[i]!);
      if (costOf(gap) < costOf(nearest[i]!)) nearest[i] = gap;
    }
  }
  return strips;
}

interface Gap {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

function costOf({ from, to }: Gap): number {
  return Math.hypot(sidewaysCost * (to.x - from.x), to.y - from.y);
}

/** A rectangle over the gap, sunk into both ends by half its width, so that it meets curved outlines in full. */
function strip({ from, to, length }: Gap, width: number): Ring {
  // Parts that touch in a point have no direction between them; any will do.
  const along = length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 1 };
  const half = width / 2;
  const corner = (end: Point, ahead: number, aside: number): Point => ({
    x: end.x + along.x * ahead - along.y * aside,
    y: end.y + along.y * ahead + along.x * aside,
  });
  return [corner(from, -half, -half), corner(to, half, -half), corner(to, half, half), corner(from, -half, half)];
}

/** Gaps that differ by less are equally short: outlines that face each other straight, which have no single nearest point. */
const evenMm = 0.02;

/**
 * The shortest segment between two outlines that do not cross. One of its ends is a corner of one of them; where they run side
 * by side, it is the one half-way along.
 */
function shortestBetween(a: Ring, b: Ring): Gap {
  const back = fromCorners(b, a).map(({ from, to, length }) => ({ from: to, to: from, length }));
  const all = [...fromCorners(a, b), ...back];
  const shortest = all.reduce((best, gap) => (gap.length < best.length ? gap : best));
  const even = all.filter(({ length }) => length < shortest.length + evenMm);
  const from = middleOf(even.map((gap) => gap.from));
  const to = middleOf(even.map((gap) => gap.to));
  const length = distance(to, from);
  // The middle of several places apart from each other is none of them.
  const onBoth = nearestOn(a, from).length < evenMm && nearestOn(b, to).length < evenMm;
  return onBoth && length < shortest.length + evenMm ? { from, to, length } : shortest;
}

function middleOf(points: readonly Point[]): Point {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}

function fromCorners(corners: Ring, outline: Ring): Gap[] {
  return corners.map((from) => nearestOn(outline, from));
}

function nearestOn(outline: Ring, from: Point): Gap {
  let best: Gap = { from, to: outline[0]!, length: Infinity };
  let start = outline[outline.length - 1]!;
  for (const end of outline) {
    const dx = end.x - start.x;
    const dy = end.y - start.y;
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : ((from.x - start.x) * dx + (from.y - start.y) * dy) / squared;
    const clamped = Math.min(1, Math.max(0, t));
    const to = { x: start.x + clamped * dx, y: start.y + clamped * dy };
    const length = distance(to, from);
    if (length < best.length) best = { from, to, length };
    start = end;
  }
  return best;
}
