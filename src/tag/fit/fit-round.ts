/** Lines that run round, as large as go in along the edge of a shape, clear of what else is there. */

import { chain, translation } from '../../geometry/affine.ts';
import { difference } from '../../geometry/clipper.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { area } from '../../geometry/measure.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import type { Modifiers } from '../../spec/model/shape-model.ts';
import type { MadeShape } from '../made-shape.ts';
import type { CurveOutline, RoundRoom, RoundSetter, RoundSide, Sunk } from '../curve-outline.ts';
import { edgeEllipse, ellipseIn } from './edge-ellipse.ts';
import type { PlacedEllipse } from './edge-ellipse.ts';
import { turning } from './fitted.ts';
import type { Fitted } from './fitted.ts';
import { spaceAbout } from './space-about.ts';

/** How much further in the lines are set from one try to the next, in mm, and how far at most, as a share of the half axis. */
const stepMm = 0.5;
const deepest = 0.5;

/** Halvings of the last step. */
const refinements = 4;

/** Before they go deeper than this share, smaller letters nearer to the edge are better; what is then given up of their size. */
const smaller = [1, 0.85, 0.7, 0.55, 0.4];

/** What may stick out of the room by rounding, in mm². */
const roundingMm2 = 1e-4;

/** A point of a letter further outside than this, in mm, leaves no doubt. */
const plainlyMm = 0.05;

/** Only each third point is looked at: their neighbours lie closer than that. */
const lookedAt = 3;

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
  const { scale, axes, alone, sunk, centre } = found;
  const ofFree = scale / lines.largest(alone, most);
  const shape = await sized(1, { ...outline, changes: false, at: () => lines.at(axes, scale, sunk).solid });
  return { scale, shape, ofFree, move: chain(turning(modifiers, { x: 0, y: 0 }), translation(centre.x, centre.y)) };
}

/** An ellipse and what is free in it, also with nothing in the way. */
interface Along {
  readonly axes: RoundRoom;
  readonly alone: RoundRoom;
  /** Of the ellipse. */
  readonly centre: Point;
}

interface RoundFit extends Along {
  readonly scale: number;
  readonly sunk: Sunk;
}

const sides: readonly RoundSide[] = ['top', 'bottom'];

/** How far in a line runs at its ends where something is in its way, as a share of how far it does in the middle: the flatter it is, the more of the room it uses. */
const flatter = 0.25;

/** What lines give up of their size at most to be flatter (our own judgement, by looking). */
const worthFlat = 0.95;

/** What lines on one side give up of their size at most to follow the edge there (our own judgement, by looking). */
const worthFollowing = 0.9;

/** Lines on one side alone follow its edge, where that is the end of an ellipse; others run round inside the whole. */
function fitRound(lines: RoundSetter, inner: Region, room: Region, most: number): RoundFit | undefined {
  const whole = ellipseIn(inner);
  const [side, ...others] = new Set(lines.sides);
  const edge = side && others.length === 0 ? edgeEllipse(inner, side, whole) : undefined;
  const followed = edge && sunkFlat(lines, along(edge, inner, room, true), room, most);
  const round = whole && sunkFlat(lines, along(whole, inner, room, false), room, most);
  return followed && followed.scale >= worthFollowing * (round?.scale ?? 0) ? followed : round;
}

function along({ centre, axes }: PlacedEllipse, inner: Region, room: Region, isEdge: boolean): Along {
  const free = spaceAbout(inner, centre);
  const edge = isEdge ? { edge: free } : {};
  return {
    centre,
    axes: { ...axes, ...edge, middle: spaceAbout(room, centre) },
    alone: { ...axes, ...edge, middle: free },
  };
}

function sunkFlat(lines: RoundSetter, ellipse: Along, room: Region, most: number): RoundFit | undefined {
  const even = sunkRound(lines, ellipse, room, most, 1);
  if (even && Math.max(even.sunk.top, even.sunk.bottom) < stepMm) return even;
  const flat = sunkRound(lines, ellipse, room, most, flatter);
  return flat && flat.scale >= worthFlat * (even?.scale ?? 0) ? flat : even;
}

/** Each line goes in as far as what is in its way makes it: the other one stays at the edge, where it has more room. */
function sunkRound(
  lines: RoundSetter,
  ellipse: Along,
  room: Region,
  most: number,
  aside: number,
): RoundFit | undefined {
  const { centre, axes } = ellipse;
  const furthest = deepest * Math.min(axes.a, axes.b);
  const scaleAt = (share: number, sunk: Sunk): number => share * lines.largest(axes, most / share, sunk);
  const edges = new EdgeIndex(room);
  const isClear = (side: RoundSide, scale: number, sunk: Sunk): boolean => {
    const placed = lines
      .outlines(axes, scale, sunk, side)
      .map((ring) => ring.map(({ x, y }) => ({ x: x + centre.x, y: y + centre.y })));
    return !placed.some((ring) => sticksOut(ring, edges)) && area(difference(placed, [room])) < roundingMm2;
  };
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
    return { ...ellipse, scale: scaleAt(share, sunk), sunk };
  }
  return undefined;
}

/** Whether a letter is plainly outside, which is seen many times as fast as how much of it is: most tries end here. */
function sticksOut(outline: Ring, room: EdgeIndex): boolean {
  return outline.some(
    (point, index) => index % lookedAt === 0 && !room.contains(point) && room.near(point, plainlyMm).length === 0,
  );
}
