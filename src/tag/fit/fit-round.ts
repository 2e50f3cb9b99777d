/** Lines that run round, as large as go in along the edge of a shape, clear of what else is there. */

import { chain, translation } from '../../geometry/affine.ts';
import { difference } from '../../geometry/clipper.ts';
import { area, boundsOf, boxCentre, contains } from '../../geometry/measure.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import type { Modifiers } from '../../spec/model/shape-model.ts';
import type { MadeShape } from '../made-shape.ts';
import type { CurveOutline, HalfAxes, RoundSetter, RoundSide, Sunk } from '../curve-outline.ts';
import { turning } from './fitted.ts';
import type { Fitted } from './fitted.ts';

/** How much further in the lines are set from one try to the next, in mm, and how far at most, as a share of the half axis. */
const stepMm = 0.5;
const deepest = 0.5;

/** Halvings of the last step. */
const refinements = 4;

/** Before they go deeper than this share, smaller letters nearer to the edge are better; what is then given up of their size. */
const smaller = [1, 0.85, 0.7, 0.55, 0.4];

/** What may stick out of the room by rounding, in mm². */
const roundingMm2 = 1e-4;

export interface RoundFitting {
  /** What they go into, less the margin and the growth to come. */
  readonly inner: Region;
  /** The same less what they keep clear of. */
  readonly room: Region;
  /** The largest height of the small letters of the largest line, in mm. */
  readonly most: number;
  readonly modifiers: Modifiers;
  /** Grown and finished. */
  readonly sized: (scale: number, outline: CurveOutline) => Promise<MadeShape>;
}

/** `undefined` where they go in at no size. */
export async function fittedRound(
  outline: CurveOutline,
  lines: RoundSetter,
  { inner, room, most, modifiers, sized }: RoundFitting,
): Promise<Fitted | undefined> {
  const found = fitRound(lines, inner, room, most);
  if (!found) return undefined;
  const { scale, axes, sunk, centre } = found;
  const ofFree = scale / lines.largest(axes, most);
  const shape = await sized(1, { ...outline, changes: false, at: () => lines.at(axes, scale, sunk).solid });
  return { scale, shape, ofFree, move: chain(turning(modifiers, { x: 0, y: 0 }), translation(centre.x, centre.y)) };
}

interface RoundFit {
  readonly scale: number;
  readonly axes: HalfAxes;
  readonly sunk: Sunk;
  /** Of the ellipse. */
  readonly centre: Point;
}

const sides: readonly RoundSide[] = ['top', 'bottom'];

/** How far in a line runs at its ends where something is in its way, as a share of how far it does in the middle: the flatter it is, the more of the room it uses. */
const flatter = 0.25;

/** What lines give up of their size at most to be flatter (our own judgement, by looking). */
const worthFlat = 0.95;

function fitRound(lines: RoundSetter, inner: Region, room: Region, most: number): RoundFit | undefined {
  const ellipse = ellipseIn(inner);
  if (!ellipse) return undefined;
  const even = sunkRound(lines, ellipse, room, most, 1);
  if (even && Math.max(even.sunk.top, even.sunk.bottom) < stepMm) return even;
  const flat = sunkRound(lines, ellipse, room, most, flatter);
  return flat && flat.scale >= worthFlat * (even?.scale ?? 0) ? flat : even;
}

/** Each line goes in as far as what is in its way makes it: the other one stays at the edge, where it has more room. */
function sunkRound(
  lines: RoundSetter,
  { centre, axes }: Pick<RoundFit, 'centre' | 'axes'>,
  room: Region,
  most: number,
  aside: number,
): RoundFit | undefined {
  const furthest = deepest * Math.min(axes.a, axes.b);
  const scaleAt = (share: number, sunk: Sunk): number => share * lines.largest(axes, most / share, sunk);
  const isClear = (side: RoundSide, scale: number, sunk: Sunk): boolean =>
    isIn(lines.outlines(axes, scale, sunk, side), centre, room);
  const sinks = (share: number, from: Sunk): Sunk | undefined => {
    for (let sunk = from; ;) {
      const scale = scaleAt(share, sunk);
      if (!(scale > 0)) return undefined;
      const blocked = sides.find((side) => !isClear(side, scale, sunk));
      if (!blocked) return sunk;
      if (sunk[blocked] + stepMm >= furthest) return undefined;
      sunk = { ...sunk, [blocked]: sunk[blocked] + stepMm };
    }
  };
  for (const share of smaller) {
    const first = sinks(share, { top: 0, bottom: 0, aside });
    if (!first) continue;
    let sunk: Sunk = first;
    for (const side of sides) {
      let [low, high] = [Math.max(0, sunk[side] - stepMm), sunk[side]];
      for (let round = 0; high > 0 && round < refinements; round++) {
        const middle = (low + high) / 2;
        const nearer: Sunk = { ...sunk, [side]: middle };
        const scale = scaleAt(share, nearer);
        if (sides.every((each) => isClear(each, scale, nearer))) {
          sunk = nearer;
          high = middle;
        } else low = middle;
      }
    }
    return { scale: scaleAt(share, sunk), axes, sunk, centre };
  }
  return undefined;
}

function isIn(region: Region, { x, y }: Point, room: Region): boolean {
  const placed = region.map((ring) => ring.map((point) => ({ x: point.x + x, y: point.y + y })));
  return area(difference(placed, [room])) < roundingMm2;
}

/** The largest ellipse round the middle of its box that is as wide to its height as that. */
function ellipseIn(region: Region): { readonly centre: Point; readonly axes: HalfAxes } | undefined {
  const box = boundsOf(region);
  if (!box) return undefined;
  const centre = boxCentre(box);
  if (!contains(region, centre)) return undefined;
  const [a, b] = [(box.maxX - box.minX) / 2, (box.maxY - box.minY) / 2];
  // In a picture squeezed to where it is a circle, the edge comes as near as the nearest of its sides.
  const squeezed = region.map((ring) => ring.map(({ x, y }) => ({ x: (x - centre.x) / a, y: (y - centre.y) / b })));
  const share = Math.min(...squeezed.map(nearest));
  return { centre, axes: { a: a * share, b: b * share } };
}

/** From the origin to the ring. */
function nearest(ring: Ring): number {
  let least = Infinity;
  let from = ring.at(-1)!;
  for (const to of ring) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const along = Math.min(1, Math.max(0, -(from.x * dx + from.y * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(from.x + along * dx, from.y + along * dy));
    from = to;
  }
  return least;
}
