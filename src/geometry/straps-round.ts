/** Straps straight out from a part, at its sides or evenly round it, to whatever stands there. */

import { rotation, transform } from './affine.ts';
import { union } from './clipper.ts';
import { crossingsAt } from './crossings-at.ts';
import { boundsOf, boxCentre } from './measure.ts';
import { partsOf } from './parts.ts';
import { gapBetween, strapped } from './straps.ts';
import type { Stripped } from './straps.ts';
import type { Point, Region, Ring, Side } from './types.ts';

/** Directions in degrees, counter-clockwise from the right. */
const directions: Readonly<Record<Side, number>> = { right: 0, top: 90, left: 180, bottom: 270 };

/** Places tried along a side. */
const places = 41;

/** Cost of a place off the middle of the part, in lengths of a strap; our own judgement. */
const asideCost = 0.3;

/** Share of what it runs into, where that is thinner than the strap is wide: it never comes out on the other side. */
const intoShare = 0.6;

const origin: Point = { x: 0, y: 0 };

/** How parts are joined: at these sides of each, so many round it, or where they are nearest. */
export interface Strapping {
  readonly width: number;
  readonly sides?: readonly Side[];
  readonly count?: number;
}

/** The region with its parts joined into one; what has nothing where it is asked for is joined where it is nearest. */
export function strappedAs(region: Region, { width, sides, count }: Strapping, level?: number): Stripped {
  const asked = sides ?? count;
  const round = asked === undefined ? [] : strapsRound(region, width, asked);
  const held = round.length === 0 ? region : union([region, ...round.map((each) => [each])]);
  const joined = strapped(held, width, level);
  return { region: joined.region, strips: [...round, ...joined.strips] };
}

/** For each part but the largest: at those sides, or so many. */
function strapsRound(region: Region, width: number, asked: readonly Side[] | number): Ring[] {
  const parts = partsOf(region);
  const sizes = parts.map((part) => {
    const { minX, minY, maxX, maxY } = boundsOf(part)!;
    return (maxX - minX) * (maxY - minY);
  });
  const main = sizes.indexOf(Math.max(...sizes));
  const found: Strap[] = [];
  parts.forEach((part, index) => {
    if (index === main) return;
    for (const degrees of typeof asked === 'number'
      ? evenly(asked, part, parts)
      : asked.map((side) => directions[side])) {
      const strap = strapTowards(parts, index, degrees, width);
      // Two parts side by side hold each other once.
      if (strap && !found.some((other) => other.from === strap.to && other.to === index && isOpposite(other, strap)))
        found.push(strap);
    }
  });
  return found.map(({ ring }) => ring);
}

interface Strap {
  readonly from: number;
  readonly to: number;
  readonly degrees: number;
  readonly ring: Ring;
}

function isOpposite(one: Strap, other: Strap): boolean {
  return Math.abs(((((one.degrees - other.degrees) % 360) + 360) % 360) - 180) < 1e-6;
}

/** So many directions, the first towards the nearest other part. */
function evenly(count: number, part: Region, parts: readonly Region[]): number[] {
  const gaps = parts.filter((other) => other !== part).map((other) => gapBetween(part, other));
  const { from, to } = gaps.reduce((best, gap) => (gap.length < best.length ? gap : best));
  const first = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return Array.from({ length: count }, (_, k) => first + (360 * k) / count);
}

/** The shortest near the middle of the part; `undefined` if nothing stands there, or only beside a part of its width. */
function strapTowards(parts: readonly Region[], index: number, degrees: number, width: number): Strap | undefined {
  const turn = rotation(degrees, origin);
  const turned = parts.map((part) => transform(part, turn));
  const box = boundsOf(turned[index]!)!;
  const half = width / 2;
  const middle = boxCentre(box).y;
  const far = Math.max(0, (box.maxY - box.minY) / 2 - half);
  let best: { readonly cost: number; readonly to: number; readonly ring: Ring } | undefined;
  for (let k = 0; k < places; k++) {
    const y = middle + far * ((2 * k) / (places - 1) - 1);
    const rays = [-0.98, 0, 0.98].map((share) => rayAt(turned, index, y + share * half));
    if (rays.some((ray) => !ray)) continue;
    const all = rays.map((ray) => ray!);
    const [start, end] = [Math.min(...all.map(({ from }) => from)), Math.max(...all.map(({ to }) => to))];
    const cost = end - start + asideCost * Math.abs(y - middle);
    if (best && cost >= best.cost) continue;
    const back = Math.min(half, intoShare * Math.min(...all.map(({ own }) => own)));
    const on = Math.min(half, intoShare * Math.min(...all.map(({ other }) => other)));
    const corner = (x: number, aside: number): Point => ({ x, y: y + aside });
    const ring = [
      corner(start - back, -half),
      corner(end + on, -half),
      corner(end + on, half),
      corner(start - back, half),
    ];
    best = { cost, to: all[1]!.at, ring };
  }
  if (!best) return undefined;
  const [ring] = transform([best.ring], rotation(-degrees, origin));
  return { from: index, to: best.to, degrees, ring: ring! };
}

/** From the end of a part to the next one along a level line, and how much of each there is. */
interface Ray {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly own: number;
  readonly other: number;
}

function rayAt(parts: readonly Region[], index: number, y: number): Ray | undefined {
  const own = crossings(parts[index]!, y);
  const from = own.at(-1);
  if (from === undefined) return undefined;
  let best: Ray | undefined;
  parts.forEach((part, at) => {
    if (at === index) return;
    const ahead = crossings(part, y).filter((x) => x > from);
    const [to, end] = ahead;
    if (to === undefined || end === undefined || (best && best.to <= to)) return;
    best = { from, to, at, own: from - own.at(-2)!, other: end - to };
  });
  return best;
}

function crossings(part: Region, y: number): number[] {
  return part.flatMap((ring) => crossingsAt(ring, y)).sort((a, b) => a - b);
}
