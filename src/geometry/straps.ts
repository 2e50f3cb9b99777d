/** Strips of material that hold things: between the parts of a shape, and across the strokes round its holes. */

import { difference, union } from './clipper.ts';
import { innerPoint } from './inner-point.ts';
import { boundsOf, ringArea } from './measure.ts';
import { partsOf } from './parts.ts';
import { simplified } from './simplify.ts';
import type { Point, Region, Ring } from './types.ts';

/** Outlines are looked at this coarsely when their nearest points are sought, in mm. */
const seekToleranceMm = 0.02;

/**
 * The region with every part joined to its nearest neighbour by a strap of `width` mm, so that it is one part: of all the ways
 * to join them, the one with the least length of straps (Prim's minimum spanning tree over the distances of the parts).
 */
export function strapped(region: Region, width: number): Region {
  const parts = partsOf(region);
  if (parts.length < 2) return region;
  const outlines = parts.map((part) => simplified([part[0]!], seekToleranceMm)[0] ?? part[0]!);
  const straps: Region[] = [];
  const joined = new Set([0]);
  const nearest = outlines.map((outline) => ({ gap: shortestBetween(outlines[0]!, outline) }));
  while (joined.size < parts.length) {
    let next = -1;
    for (let i = 0; i < parts.length; i += 1) {
      if (!joined.has(i) && (next < 0 || nearest[i]!.gap.length < nearest[next]!.gap.length)) next = i;
    }
    joined.add(next);
    straps.push([strip(nearest[next]!.gap, width)]);
    for (let i = 0; i < parts.length; i += 1) {
      if (joined.has(i)) continue;
      const gap = shortestBetween(outlines[next]!, outlines[i]!);
      if (gap.length < nearest[i]!.gap.length) nearest[i] = { gap };
    }
  }
  return union([region, ...straps]);
}

interface Gap {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
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

/** The shortest segment between two outlines that do not cross: one of its ends is a corner of one of them. */
function shortestBetween(a: Ring, b: Ring): Gap {
  const there = fromCorners(a, b);
  const { from, to, length } = fromCorners(b, a);
  return length < there.length ? { from: to, to: from, length } : there;
}

function fromCorners(corners: Ring, outline: Ring): Gap {
  let best: Gap = { from: corners[0]!, to: outline[0]!, length: Infinity };
  for (const from of corners) {
    let start = outline[outline.length - 1]!;
    for (const end of outline) {
      const dx = end.x - start.x;
      const dy = end.y - start.y;
      const squared = dx * dx + dy * dy;
      const t = squared === 0 ? 0 : ((from.x - start.x) * dx + (from.y - start.y) * dy) / squared;
      const clamped = Math.min(1, Math.max(0, t));
      const to = { x: start.x + clamped * dx, y: start.y + clamped * dy };
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (length < best.length) best = { from, to, length };
      start = end;
    }
  }
  return best;
}

export type BridgeSide = 'top' | 'bottom' | 'left' | 'right';

/** Of a bridge: past the stroke it crosses, in mm, so that no sliver is left at its end. */
const pastMm = 0.05;

/**
 * The region less a strip of `width` mm across the stroke on each of the given sides of every hole. Where the region is cut
 * *through* a plate, what is left out are bridges of the plate, which hold the counters of its letters.
 */
export function bridged(region: Region, width: number, sides: readonly BridgeSide[]): Region {
  const holes = region.filter((ring) => ringArea(ring) < 0);
  const strips = holes.flatMap((hole) => sides.flatMap((side) => strokeStrip(region, hole, width, side)));
  return strips.length > 0 ? difference(region, [strips]) : region;
}

/** From inside the hole across the stroke beyond it, as far as the stroke reaches anywhere over the width of the strip. */
function strokeStrip(region: Region, hole: Ring, width: number, side: BridgeSide): Ring[] {
  const upright = side === 'top' || side === 'bottom';
  const sign = side === 'top' || side === 'right' ? 1 : -1;
  // Turned so that the strip runs along the first coordinate, upwards.
  const turn = ({ x, y }: Point): Point => (upright ? { x: sign * y, y: x } : { x: sign * x, y });
  const rings = region.map((ring) => ring.map(turn));
  const turned = hole.map(turn);
  const box = boundsOf([turned])!;
  const middle = innerPoint(turned).y;
  const ends = [-width / 2, 0, width / 2].map((aside) => strokeEnd(rings, turned, middle + aside));
  const end = Math.max(...ends.filter((each) => each !== undefined));
  if (!Number.isFinite(end)) return [];
  const start =
    Math.min(...[-width / 2, 0, width / 2].map((aside) => lastInside(turned, middle + aside) ?? box.maxX)) - pastMm;
  const back = (along: number, aside: number): Point =>
    upright ? { x: aside, y: sign * along } : { x: sign * along, y: aside };
  const [low, high] = [middle - width / 2, middle + width / 2];
  return [[back(start, low), back(end + pastMm, low), back(end + pastMm, high), back(start, high)]];
}

/** Where the stroke ends that begins where a line along the first coordinate leaves the hole for the last time. */
function strokeEnd(rings: readonly Ring[], hole: Ring, y: number): number | undefined {
  const from = lastInside(hole, y);
  if (from === undefined) return undefined;
  const beyond = rings.flatMap((ring) => crossings(ring, y)).filter((x) => x > from + 1e-6);
  return beyond.length > 0 ? Math.min(...beyond) : undefined;
}

function lastInside(hole: Ring, y: number): number | undefined {
  const xs = crossings(hole, y);
  return xs.length > 0 ? Math.max(...xs) : undefined;
}

function crossings(ring: Ring, y: number): number[] {
  const found: number[] = [];
  let previous = ring[ring.length - 1]!;
  for (const point of ring) {
    if (point.y > y !== previous.y > y)
      found.push(point.x + ((y - point.y) * (previous.x - point.x)) / (previous.y - point.y));
    previous = point;
  }
  return found;
}
