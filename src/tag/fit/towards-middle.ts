/** Places nearer to the middle of a room, or on an axis of it, at which a shape is about as large. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import type { Freedom } from './contacts.ts';
import { offMiddle, placesNearer } from './nearer-places.ts';
import type { FitRoom } from './room.ts';
import { largestAt, mostIn } from './search.ts';
import type { FitPlacement } from './search.ts';
import { lastStep } from './searched-shape.ts';
import type { FoundPlacement, SearchedShape } from './searched-shape.ts';

/** What a shape keeps of its size to stand on a level axis (our own judgement, by looking). */
const worthLevel = 0.85;

/** Nearer to the axis than this it stands on it, as a share of its width. */
const onAxisShare = 0.02;

/** Places that are looked at along an axis, and how many of them closely. */
const axisPlaces = 48;
const axisTries = 3;

/** Places whose size is at least this share of the largest are equally good, and the one nearest to the middle is taken (our own judgement). */
export const asGood = 0.98;

/** The same along an axis, where the middle is seen sooner. */
const asGoodOnAxis = 0.95;

/** Columns of places nearer to the middle that are looked at closely. */
const nearerTries = 8;

/** A place is nearer to the middle if it is by this much, as a share of the shape's radius. */
const nearerShare = 0.25;

/** `along`: the direction in which it may still move. */
export interface CentredPlacement extends FoundPlacement {
  readonly along: 'x' | 'y';
}

/** The largest on an axis, where it gives up little for that. Of two axes the upright one counts first. */
export function onAxis(
  shape: SearchedShape,
  from: FitPlacement,
  room: FitRoom,
  most: number,
  keeps: number,
): CentredPlacement | undefined {
  const { minX, minY, maxX, maxY } = boundsOf(shape.close.solids.flat())!;
  const { axes } = room;
  // Its box in the middle is as good: it may fill the room from edge to edge.
  const isOff = (axis: 'x' | 'y', low: number, high: number): boolean => {
    const most = onAxisShare * from.scale * (high - low);
    const off = [0, (low + high) / 2].map((middle) => from[axis] + from.scale * middle - (axes[axis] ?? NaN));
    return off.every((each) => Math.abs(each) >= most);
  };
  const enough = (worth: number): number => Math.max(worth, keeps) * Math.min(most, from.scale);
  const upright = isOff('x', minX, maxX)
    ? largestOn(shape, 'x', axes.x!, room, most, enough(room.worthAxis))
    : undefined;
  if (upright) return upright;
  return shape.baseline === undefined && isOff('y', minY, maxY)
    ? largestOn(shape, 'y', axes.y!, room, most, enough(worthLevel))
    : undefined;
}

/** `axis`: the coordinate that is the same all along the axis, and `at` its value. */
function largestOn(
  shape: SearchedShape,
  axis: 'x' | 'y',
  at: number,
  room: FitRoom,
  most: number,
  enough: number,
): CentredPlacement | undefined {
  const tried = room.parts.flatMap((part) => {
    const { minX, minY, maxX, maxY } = part.box;
    const [low, high] = axis === 'x' ? [minY, maxY] : [minX, maxX];
    const step = (high - low) / axisPlaces;
    const along = Array.from({ length: axisPlaces }, (_, index) => low + (index + 0.5) * step);
    return (shape.baseline === undefined ? along : [shape.baseline]).map((place) => {
      const [x, y] = axis === 'x' ? [at, place] : [place, at];
      const largest = mostIn(part, shape.samples);
      return { placement: { x, y, scale: largestAt(shape.samples, part, x, y, step, largest, enough) }, part };
    });
  });
  const along = axis === 'x' ? 'y' : 'x';
  const free: Freedom = shape.baseline === undefined ? `along ${along}` : 'size';
  const closely = ({ placement, part }: FoundPlacement, by = free): FoundPlacement | undefined => {
    const close = shape.closely(part, shape.roughly(part, placement, by) ?? placement, by);
    return close && { placement: close, part };
  };
  const off = ({ placement }: FoundPlacement): number => Math.abs(placement[along] - room.centre![along]);
  let best: FoundPlacement | undefined;
  for (const each of tried.sort((a, b) => b.placement.scale - a.placement.scale).slice(0, axisTries)) {
    if (each.placement.scale < enough) break;
    const close = closely(each);
    if (close && close.placement.scale > (best?.placement.scale ?? 0)) best = close;
  }
  if (!best || best.placement.scale < enough) return undefined;
  // Of places of about the same size the one nearest to the middle; a size that was asked for is kept.
  const nearly = Math.max(enough, (most < Infinity ? asGood : asGoodOnAxis) * best.placement.scale);
  const far = off(best) - nearerShare * shape.close.radius * best.placement.scale;
  for (const each of tried
    .filter((one) => one.placement.scale >= nearly && off(one) < far)
    .sort((a, b) => off(a) - off(b))
    .slice(0, axisTries)) {
    const close = closely(each, 'size');
    if (close && close.placement.scale >= nearly) return { ...close, along };
  }
  return { ...best, along };
}

/** Nearer to the middle in the same part of the room, about as large; what the search for the largest passed over. */
export function nearer(
  shape: SearchedShape,
  { placement, part }: FoundPlacement,
  centre: Point,
  most: number,
): CentredPlacement | undefined {
  const enough = asGood * Math.min(most, placement.scale);
  const far = offMiddle(placement, centre) - nearerShare * shape.close.radius * placement.scale;
  const { places, across, slack } = placesNearer(part.box, centre, far, shape.baseline);
  const upright = shape.baseline === undefined ? 'along y' : 'size';
  const tried = new Set<number>();
  for (const { x, y } of places) {
    if (tried.has(x)) continue;
    const scale = largestAt(shape.samples, part, x, y, slack, mostIn(part, shape.samples), enough);
    if (scale < enough) continue;
    if (tried.add(x).size > nearerTries) return undefined;
    const attempt = (from: FitPlacement, free: Freedom, within: number): FitPlacement | undefined => {
      const near = shape.roughly(part, from, free);
      if (!near || near.scale < enough || offMiddle(near, centre) >= within) return undefined;
      const close = shape.closely(part, near, upright);
      return close && close.scale >= enough ? close : undefined;
    };
    let found = attempt({ x, y, scale }, upright, far) ?? attempt({ x, y, scale }, shape.free, far);
    if (!found) continue;
    for (let step = across / 2; step > lastStep && found.x !== centre.x; step /= 2) {
      const aside = centre.x - found.x;
      const nearer: FitPlacement = { ...found, x: found.x + Math.sign(aside) * Math.min(step, Math.abs(aside)) };
      found = attempt(nearer, upright, offMiddle(found, centre)) ?? found;
    }
    return { placement: found, part, along: 'y' };
  }
  return undefined;
}
