/** Straps straight out from a part, at its sides or evenly round it, to whatever stands there. */

import { rotation, transform } from './affine.ts';
import { union } from './clipper.ts';
import { crossingsAt } from './crossings-at.ts';
import { boundsOf, boxCentre } from './measure.ts';
import { partsOf } from './parts.ts';
import { gapBetween, strapOver, strapped } from './straps.ts';
import type { Stripped } from './straps.ts';
import type { Point, Region, Ring, Side } from './types.ts';

/** Directions in degrees, counter-clockwise from the right. */
const directions: Readonly<Record<Side, number>> = { right: 0, top: 90, left: 180, bottom: 270 };

/** Places tried along a side. */
const places = 41;

/** Cost of a place off the middle of the part, in lengths of a strap; our own judgement. */
const asideCost = 0.3;

/** Straps in one line may cost so much more than each where it is shortest (our own judgement). */
const levelShare = 1.5;

/** A part whose box is less than this share of that of the part nearest to it is a mark on that (our own judgement). */
const markShare = 0.3;

/** Share of what it runs into, where that is thinner than the strap is wide: it never comes out on the other side. */
const intoShare = 0.6;

const origin: Point = { x: 0, y: 0 };

/** How parts are joined: at these sides of each, so many round it, or where they are nearest. */
export interface Strapping {
  readonly width: number;
  readonly sides?: readonly Side[];
  readonly count?: number;
}

/**
 * The region with its parts joined into one: a mark, such as an accent, to its letter first; what has nothing where it is
 * asked for is joined where it is nearest.
 */
export function strappedAs(region: Region, { width, sides, count }: Strapping, level?: number): Stripped {
  const asked = sides ?? count;
  const posts = asked === undefined ? [] : postsBelowMarks(partsOf(region), width);
  const letters = withStrips(region, posts);
  const round = asked === undefined ? [] : strapsRound(partsOf(letters), width, asked);
  const joined = strapped(withStrips(letters, round), width, level);
  return { region: joined.region, strips: [...round, ...posts, ...joined.strips] };
}

function withStrips(region: Region, strips: readonly Ring[]): Region {
  return strips.length === 0 ? region : union([region, ...strips.map((each) => [each])]);
}

/** The largest holds the others, and has no straps of its own. */
function sizesOf(parts: readonly Region[]): { readonly sizes: readonly number[]; readonly main: number } {
  const sizes = parts.map((part) => {
    const { minX, minY, maxX, maxY } = boundsOf(part)!;
    return (maxX - minX) * (maxY - minY);
  });
  return { sizes, main: sizes.indexOf(Math.max(...sizes)) };
}

/** From each mark to its letter: the part nearest to it, if that is much larger. */
function postsBelowMarks(parts: readonly Region[], width: number): Ring[] {
  const { sizes, main } = sizesOf(parts);
  return parts.flatMap((part, index) => {
    if (index === main) return [];
    const gaps = parts.map((other, at) => (at === index ? undefined : gapBetween(part, other)));
    const lengths = gaps.map((gap) => gap?.length ?? Infinity);
    const nearest = lengths.indexOf(Math.min(...lengths));
    if (nearest === main || sizes[index]! >= markShare * sizes[nearest]!) return [];
    return [strapOver(gaps[nearest]!, width)];
  });
}

/** For each part but the largest: at those sides, or so many, two on opposite sides in one line. */
function strapsRound(parts: readonly Region[], width: number, asked: readonly Side[] | number): Ring[] {
  const { main } = sizesOf(parts);
  const found: Strap[] = [];
  parts.forEach((part, index) => {
    if (index === main) return;
    const ways = typeof asked === 'number' ? evenly(asked, part, parts) : asked.map((side) => directions[side]);
    for (const strap of strapsAlong(ways, parts, index, width)) {
      // Two parts side by side hold each other once.
      if (!found.some((other) => other.from === strap.to && other.to === index && isOpposite(other, strap)))
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

function isOpposite(one: Pick<Strap, 'degrees'>, other: Pick<Strap, 'degrees'>): boolean {
  return Math.abs(((((one.degrees - other.degrees) % 360) + 360) % 360) - 180) < 1e-6;
}

/** So many directions, the first towards the nearest other part. */
function evenly(count: number, part: Region, parts: readonly Region[]): number[] {
  const gaps = parts.filter((other) => other !== part).map((other) => gapBetween(part, other));
  const { from, to } = gaps.reduce((best, gap) => (gap.length < best.length ? gap : best));
  const first = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return Array.from({ length: count }, (_, k) => first + (360 * k) / count);
}

/** A strap in each of those directions that finds something: two opposite ones in one line, if that makes them little longer. */
function strapsAlong(ways: readonly number[], parts: readonly Region[], index: number, width: number): Strap[] {
  const places = ways.map((degrees) => ({ degrees, found: placesTowards(parts, index, degrees, width) }));
  return places.flatMap(({ degrees, found }) => {
    const alone = cheapest(found);
    const across = places.find((other) => isOpposite(other, { degrees }))?.found;
    if (!alone || !across?.some((each) => each)) return alone ? [alone] : [];
    // Turned round, what was the last place is the first.
    const opposite = across.toReversed();
    const both = found.map((each, k) => each && opposite[k] && { ...each, cost: each.cost + opposite[k].cost });
    const inLine = cheapest(both);
    const most = levelShare * (alone.cost + cheapest(across)!.cost);
    return [inLine && inLine.cost < most ? inLine : alone];
  });
}

interface PlacedStrap extends Strap {
  readonly cost: number;
}

function cheapest(straps: readonly (PlacedStrap | undefined)[]): PlacedStrap | undefined {
  return straps.reduce((best, each) => (each && (!best || each.cost < best.cost) ? each : best), undefined);
}

/** At each place along the side, from one end to the other; `undefined` if nothing stands there, or only beside a part of its width. */
function placesTowards(
  parts: readonly Region[],
  index: number,
  degrees: number,
  width: number,
): (PlacedStrap | undefined)[] {
  const turn = rotation(degrees, origin);
  const turned = parts.map((part) => transform(part, turn));
  const box = boundsOf(turned[index]!)!;
  const half = width / 2;
  const middle = boxCentre(box).y;
  const far = Math.max(0, (box.maxY - box.minY) / 2 - half);
  return Array.from({ length: places }, (_, k) => {
    const y = middle + far * ((2 * k) / (places - 1) - 1);
    const rays = [-0.98, 0, 0.98].map((share) => rayAt(turned, index, y + share * half));
    if (rays.some((ray) => !ray)) return undefined;
    const all = rays.map((ray) => ray!);
    const [start, end] = [Math.min(...all.map(({ from }) => from)), Math.max(...all.map(({ to }) => to))];
    const back = Math.min(half, intoShare * Math.min(...all.map(({ own }) => own)));
    const on = Math.min(half, intoShare * Math.min(...all.map(({ other }) => other)));
    const corner = (x: number, aside: number): Point => ({ x, y: y + aside });
    const ring = [
      corner(start - back, -half),
      corner(end + on, -half),
      corner(end + on, half),
      corner(start - back, half),
    ];
    const [placed] = transform([ring], rotation(-degrees, origin));
    const cost = end - start + asideCost * Math.abs(y - middle);
    return { from: index, to: all[1]!.at, degrees, ring: placed!, cost };
  });
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
