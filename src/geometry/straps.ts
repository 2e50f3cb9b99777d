/** Strips of material that join several parts into one, such as the dot of an i to its stem. */

import { crossingsAt } from './crossings-at.ts';
import { contains, distance } from './measure.ts';
import { union } from './clipper.ts';
import { partsOf } from './parts.ts';
import { simplified } from './simplify.ts';
import type { Point, Region, Ring } from './types.ts';

/** Outlines are simplified to this tolerance, in mm, when searching for their nearest points. */
const seekToleranceMm = 0.02;

/** Cost of a sideways distance: the dot of an i belongs to the stem below it, not to the next letter. */
const sidewaysCost = 2;

/** A strap longer than this many widths is seen, as between two words. Our own judgement, as the next. */
const longWidths = 1.4;

/** How much longer a strap may become for a place where it is seen less. */
const longerShare = 1.6;

/** A region and the strips that were added to it or left out of it. */
export interface Stripped {
  readonly region: Region;
  /** Rectangles, which may overlap. */
  readonly strips: readonly Ring[];
}

/**
 * The region with its parts joined into one by straps of `width` mm: of all the ways to join them, the one with the
 * least total length of straps (Prim's minimum spanning tree over the gaps between the parts). A long strap from side to
 * side lies just below `level` (y in mm) if one is given and it is hardly longer there: below the top of small letters it
 * reads neither as a hyphen nor as an underscore.
 */
export function strapped(region: Region, width: number, level?: number): Stripped {
  const strips = strapsFor(region, width, level);
  return strips.length === 0
    ? { region, strips }
    : { region: union([region, ...strips.map((each) => [each])]), strips };
}

/** The straps alone; none if there is only one part. */
export function strapsFor(region: Region, width: number, level?: number): Ring[] {
  const parts = partsOf(region);
  if (parts.length < 2) return [];
  const outlines = parts.map(seekOutline);
  const strips: Ring[] = [];
  const joined = new Set([0]);
  const between = (one: number, other: number): Gap =>
    shortestBetween(
      facing(parts[one]!, outlines[one]!, outlines[other]!),
      facing(parts[other]!, outlines[other]!, outlines[one]!),
    );
  const nearest = outlines.map((_, part) => between(0, part));
  while (joined.size < parts.length) {
    let next = -1;
    for (let i = 0; i < parts.length; i += 1) {
      if (!joined.has(i) && (next < 0 || costOf(nearest[i]!) < costOf(nearest[next]!))) next = i;
    }
    joined.add(next);
    const found = nearest[next]!;
    const isLong = found.length > longWidths * width && Math.abs(found.to.x - found.from.x) > 0.7 * found.length;
    const levelled = isLong && level !== undefined ? gapAt(level - width / 2, found, outlines) : undefined;
    strips.push(strapOver(levelled ?? found, width));
    for (let i = 0; i < parts.length; i += 1) {
      if (joined.has(i)) continue;
      const gap = between(next, i);
      if (costOf(gap) < costOf(nearest[i]!)) nearest[i] = gap;
    }
  }
  return strips;
}

/**
 * The gap between the same two parts at another height; `undefined` if it is much longer there, or something is between.
 */
function gapAt(y: number, { from, to, length }: Gap, outlines: readonly Ring[]): Gap | undefined {
  const [left, right] = from.x < to.x ? [from, to] : [to, from];
  const middle = (left.x + right.x) / 2;
  const crossed = outlines.flatMap((outline) => crossingsAt(outline, y).map((x) => ({ x, outline })));
  const start = crossed.reduce((best, each) => (each.x < middle && each.x > best.x ? each : best), {
    x: -Infinity,
    outline: none,
  });
  const end = crossed.reduce((best, each) => (each.x > middle && each.x < best.x ? each : best), {
    x: Infinity,
    outline: none,
  });
  if (!(end.x - start.x <= longerShare * length)) return undefined;
  if (nearestOn(start.outline, left).length > evenMm || nearestOn(end.outline, right).length > evenMm) return undefined;
  return { from: { x: start.x, y }, to: { x: end.x, y }, length: end.x - start.x };
}

const none: Ring = [];

export interface Gap {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

function costOf({ from, to }: Gap): number {
  return Math.hypot(sidewaysCost * (to.x - from.x), to.y - from.y);
}

/** A rectangle over the gap that extends into both ends by half its width, so that it meets curved outlines in full. */
export function strapOver({ from, to, length }: Gap, width: number): Ring {
  // Parts that touch in a point have no direction between them; any will do.
  const along = length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 1 };
  const half = width / 2;
  const corner = (end: Point, ahead: number, aside: number): Point => ({
    x: end.x + along.x * ahead - along.y * aside,
    y: end.y + along.y * ahead + along.x * aside,
  });
  return [corner(from, -half, -half), corner(to, half, -half), corner(to, half, half), corner(from, -half, half)];
}

/**
 * Gaps that differ by less than this, in mm, count as equally short: parallel outlines have no single nearest point.
 */
const evenMm = 0.02;

/** Ways that differ by less than this, in mm, go across the same gap. */
const aheadMm = 1;

/** The shortest segment between two parts. */
export function gapBetween(a: Region, b: Region): Gap {
  const [one, other] = [seekOutline(a), seekOutline(b)];
  return shortestBetween(facing(a, one, other), facing(b, other, one));
}

/** The outline of a part that another one sees: that of the hole in which it lies, or the outer one. */
function facing([, ...holes]: Region, outer: Ring, other: Ring): Ring {
  const around = holes.find((hole) => contains([hole], other[0]!));
  return around ? (simplified([around], seekToleranceMm)[0] ?? around) : outer;
}

/** The outer outline of a part, as it is when nearest points are searched for. */
const seekOutline = ([outer]: Region): Ring => simplified([outer!], seekToleranceMm)[0] ?? outer!;

/**
 * The shortest segment between two outlines that do not cross. One of its ends is a corner of one of them; where they
 * run side by side, it is the one halfway along.
 */
function shortestBetween(a: Ring, b: Ring): Gap {
  const back = fromCorners(b, a).map(({ from, to, length }) => ({ from: to, to: from, length }));
  const all = [...fromCorners(a, b), ...back];
  const shortest = all.reduce((best, gap) => (gap.length < best.length ? gap : best));
  // In the middle of a frame, that to the other side is as short.
  const even = all.filter(
    (gap) => gap.length < shortest.length + evenMm && distance(wayOf(gap), wayOf(shortest)) < aheadMm,
  );
  const from = rangeCentre(even.map((gap) => gap.from));
  const to = rangeCentre(even.map((gap) => gap.to));
  const length = distance(to, from);
  // If the nearest places lie apart from each other, their middle is not one of them.
  const onBoth = nearestOn(a, from).length < evenMm && nearestOn(b, to).length < evenMm;
  return onBoth && length < shortest.length + evenMm ? { from, to, length } : shortest;
}

function wayOf({ from, to }: Gap): Point {
  return { x: to.x - from.x, y: to.y - from.y };
}

function rangeCentre(points: readonly Point[]): Point {
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
