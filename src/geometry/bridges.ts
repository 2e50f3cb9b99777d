/** Strips left out of a shape that is cut through a plate, to hold what its holes enclose: the counters of letters. */

import { difference, intersection } from './clipper.ts';
import { innerPoint } from './inner-point.ts';
import { boundsOf, ringArea } from './measure.ts';
import type { Stripped } from './straps.ts';
import type { Point, Region, Ring, Side } from './types.ts';

/** Length of a bridge beyond the stroke it crosses, in mm, so that no sliver is left at its end. */
const pastMm = 0.05;

/** Places tried beside the middle of a hole, per width of the bridge. */
const asideSteps = 4;

/**
 * The region less a strip of `width` mm across the stroke on each of the given sides of every hole. Where the region is
 * cut *through* a plate, the strips left out are bridges that hold the counters of its letters.
 */
export function bridged(region: Region, width: number, sides: readonly Side[]): Stripped {
  const holes = region.filter((ring) => ringArea(ring) < 0);
  const strips = holes.flatMap((hole) => sides.flatMap((side) => strokeStrip(region, hole, width, side)));
  return { region: strips.length > 0 ? difference(region, [strips]) : region, strips };
}

/**
 * The strip from inside the hole across the adjoining stroke: through the middle of the hole or, where it would not land on whole
 * material there, beside it.
 */
function strokeStrip(region: Region, hole: Ring, width: number, side: Side): Ring[] {
  const upright = side === 'top' || side === 'bottom';
  const sign = side === 'top' || side === 'right' ? 1 : -1;
  // Turned so that the strip runs along the first coordinate, upwards.
  const turn = ({ x, y }: Point): Point => (upright ? { x: sign * y, y: x } : { x: sign * x, y });
  const back = ({ x, y }: Point): Point => (upright ? { x: y, y: sign * x } : { x: sign * x, y });
  const rings = region.map((ring) => ring.map(turn));
  const turned = hole.map(turn);
  const { y: middle } = innerPoint(turned);
  const { minY, maxY } = boundsOf([turned])!;
  let central: Ring | undefined;
  for (const aside of asides((maxY - minY) / 2, width)) {
    const at = middle + aside;
    // Beside the middle, only where the hole is as wide as the strip.
    if (aside !== 0 && (at - width / 2 < minY || at + width / 2 > maxY)) continue;
    const strip = stripAt(rings, turned, at, width);
    if (!strip) continue;
    central ??= strip;
    if (landsWhole(rings, strip, width)) return [wound(strip.map(back))];
  }
  return central ? [wound(central.map(back))] : [];
}

/** All in the same direction, as strips that meet would otherwise cancel out where they overlap. */
function wound(ring: Ring): Ring {
  return ringArea(ring) < 0 ? ring.toReversed() : ring;
}

/** Distances from the middle, the least first. */
function asides(most: number, width: number): number[] {
  const count = Math.floor((asideSteps * most) / width);
  return Array.from(
    { length: 2 * count + 1 },
    (_, k) => ((k % 2 === 0 ? -1 : 1) * Math.ceil(k / 2) * width) / asideSteps,
  );
}

/** As long as the stroke is anywhere over its width. */
function stripAt(rings: readonly Ring[], hole: Ring, middle: number, width: number): Ring | undefined {
  const lines = [-width / 2, 0, width / 2].map((aside) => middle + aside);
  const end = Math.max(...lines.map((y) => strokeEnd(rings, hole, y)).filter((each) => each !== undefined));
  if (!Number.isFinite(end)) return undefined;
  const highest = boundsOf([hole])!.maxX;
  const start = Math.min(...lines.map((y) => lastInside(hole, y) ?? highest)) - pastMm;
  const [low, high] = [middle - width / 2, middle + width / 2];
  return [
    { x: start, y: low },
    { x: end + pastMm, y: low },
    { x: end + pastMm, y: high },
    { x: start, y: high },
  ];
}

/** Whether there is nothing of the region for a width beyond the end of a strip: an edge there would leave a thread of the bridge. */
function landsWhole(rings: readonly Ring[], strip: Ring, width: number): boolean {
  const { maxX, minY, maxY } = boundsOf([strip])!;
  const ground = [
    { x: maxX - pastMm / 2, y: minY },
    { x: maxX + width, y: minY },
    { x: maxX + width, y: maxY },
    { x: maxX - pastMm / 2, y: maxY },
  ];
  return intersection([ground], rings).length === 0;
}

/** Far edge of the stroke that begins where a line along the first coordinate leaves the hole for the last time. */
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
