/** Strips left out of a shape that is cut through a plate, to hold what its holes enclose: the counters of letters. */

import { difference } from './clipper.ts';
import { innerPoint } from './inner-point.ts';
import { boundsOf, ringArea } from './measure.ts';
import type { Stripped } from './straps.ts';
import type { Point, Region, Ring } from './types.ts';

export type BridgeSide = 'top' | 'bottom' | 'left' | 'right';

/** Length of a bridge beyond the stroke it crosses, in mm, so that no sliver is left at its end. */
const pastMm = 0.05;

/**
 * The region less a strip of `width` mm across the stroke on each of the given sides of every hole. Where the region is
 * cut *through* a plate, the strips left out are bridges that hold the counters of its letters.
 */
export function bridged(region: Region, width: number, sides: readonly BridgeSide[]): Stripped {
  const holes = region.filter((ring) => ringArea(ring) < 0);
  const strips = holes.flatMap((hole) => sides.flatMap((side) => strokeStrip(region, hole, width, side)));
  return { region: strips.length > 0 ? difference(region, [strips]) : region, strips };
}

/** The strip from inside the hole across the adjoining stroke, as long as the stroke is anywhere over its width. */
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
  const ring = [back(start, low), back(end + pastMm, low), back(end + pastMm, high), back(start, high)];
  // All in the same direction, as strips that meet would otherwise cancel out where they overlap.
  return [ringArea(ring) < 0 ? ring.reverse() : ring];
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
