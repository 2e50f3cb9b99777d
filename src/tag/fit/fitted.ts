/** A shape made as large as goes in: its size, its growth and its turn taken into account. */

import { chain, identity, rotation, scaling, translation } from '../../geometry/affine.ts';
import { boundsOf, boxCentre, contains } from '../../geometry/measure.ts';
import type { Affine, Point } from '../../geometry/types.ts';
import type { Modifiers } from '../../spec/model.ts';
import type { Checkpoint } from '../cache.ts';
import { centreOf, evenMiddle, mapSolid } from '../made-shape.ts';
import type { LetterBand, MadeShape } from '../made-shape.ts';
import type { CurveOutline } from '../outline.ts';
import { largestFit } from './fit.ts';
import type { Room } from './room.ts';
import { largestScale } from './scale.ts';
import type { Placement } from './search.ts';

/** Less the margin and the growth to come, and less the margin alone. */
export interface Rooms {
  readonly free: Room;
  readonly outer: Room;
}

export interface Fitted {
  /** How many times its natural size it is, before growth. */
  readonly scale: number;
  readonly solid: MadeShape;
  /** Turns it and puts it where it fits; without one, `place` says where it goes. */
  readonly move?: Affine;
}

/** What the shape is put on with `place`. */
export interface Goal {
  readonly target: MadeShape;
  readonly margin: number;
}

export interface Fitting {
  readonly modifiers: Modifiers;
  readonly rooms: Rooms;
  /** How many times its natural size it is at the most, before growth. */
  readonly most: number;
  readonly goal?: Goal | undefined;
  /** Grown and finished at so many times its natural size. */
  readonly sized: (scale: number) => Promise<MadeShape>;
  readonly checkpoint: Checkpoint;
}

/** How often a shape is fitted again that is grown or spaced out; each time leaves a hundredth of what was left. */
const regrowths = 2;

/** Of what was made to judge it by: made so much smaller, it is as smooth as if made anew, and has hardly more points. */
const isSmoothAt = (share: number): boolean => share > 0.6 && share <= 1.01;

/** Whether a shape is only as large as it is, and neither grown nor spaced nor drawn with a line of some width. */
function isAsDrawn({ lines }: MadeShape, { changes, ungrown }: CurveOutline, { grow, tidy }: Modifiers): boolean {
  return !grow && !tidy && !changes && !ungrown && !lines;
}

/** `undefined` where it goes in at no size. */
export async function fitted(outline: CurveOutline, fitting: Fitting): Promise<Fitted | undefined> {
  const { modifiers, rooms, most, sized, checkpoint } = fitting;
  const box = boundsOf(rooms.free.region);
  if (!outline.bounds || !box) return undefined;
  // Judged at about the final size, so that it is as smooth as what will be cut.
  const guess = (box.maxX - box.minX) / Math.max(outline.bounds.maxX - outline.bounds.minX, 1e-9);
  const guessed = await outline.at(guess, guess, checkpoint);
  const turned = mapSolid(guessed, turning(modifiers, { x: 0, y: 0 }));
  let found = find(turned, rooms.free, fitting, most / guess, modifiers.grow ?? 0);
  if (!found) return undefined;
  let scale = guess * found.scale;
  let solid =
    isSmoothAt(found.scale) && isAsDrawn(guessed, outline, modifiers)
      ? mapSolid(guessed, scaling(found.scale, found.scale, { x: 0, y: 0 }))
      : await sized(scale);
  await checkpoint();
  // Growth moves the middle a little; what that leaves or takes is made good at the shape itself.
  for (let round = 0; (modifiers.grow || outline.changes) && round < regrowths; round++) {
    const again = find(turnedSolid(solid, modifiers), rooms.outer, fitting, most / scale, 0);
    if (!again) break;
    found = again;
    scale *= again.scale;
    solid = await sized(scale);
    await checkpoint();
  }
  if (modifiers.place) return { scale, solid };
  const bounds = boundsOf(solid.region);
  if (!bounds) return undefined;
  const turn = turning(modifiers, boxCentre(bounds));
  const put = mapSolid(solid, turn);
  const middle = centreOf(put, 'eye')!;
  // What stands on a line was found by its foot.
  const y = put.band?.head === undefined ? middle.y : put.band.baseline;
  return { scale, solid, move: chain(turn, translation(found.x - middle.x, found.y - y)) };
}

/** @param toGrow By how much it will grow beyond its outline. */
function find(
  turned: MadeShape,
  room: Room,
  { modifiers, goal }: Fitting,
  most: number,
  toGrow: number,
): Placement | undefined {
  const { place } = modifiers;
  const own = centreOf(turned, place?.by ?? 'eye');
  if (!own) return undefined;
  if (!place || !goal) {
    const { band } = turned;
    const home = band && (band.head !== undefined || most < Infinity) ? homeIn(room, band, most) : undefined;
    if (!home || !band) return largestFit(turned, own, room, { most });
    if (band.head === undefined) return largestFit(turned, own, room, { most, home: home.middle });
    const limits = { most, home: home.foot, baseline: home.foot.y };
    return largestFit(turned, { x: own.x, y: band.baseline }, room, limits);
  }
  const pin = pinned(turned, own, goal, modifiers, toGrow);
  if (!pin || !contains(room.region, pin.at)) return undefined;
  const scale = Math.min(most, largestScale(turned.region, pin.own, room.region, pin.at));
  return scale > 0 ? { scale, ...pin.at } : undefined;
}

/** Where a line of usual words would be, whatever these are, at the size asked for: so the names of a batch stand alike. */
function homeIn(
  room: Room,
  band: LetterBand,
  most: number,
): { readonly foot: Point; readonly middle: Point } | undefined {
  const { deep, tall, long } = band.usual!;
  const usual = [
    { x: -long / 2, y: deep },
    { x: long / 2, y: deep },
    { x: long / 2, y: tall },
    { x: -long / 2, y: tall },
  ];
  const own = { x: 0, y: evenMiddle(band, band.head ?? tall) };
  const found = largestFit({ region: [usual] }, own, room, { most });
  if (!found) return undefined;
  const { x, y, scale } = found;
  return { middle: { x, y }, foot: { x, y: y - scale * (own.y - band.baseline) } };
}

/** Off the edge by so little that nobody sees it, so that what lies along it is inside, in mm. */
const offEdgeMm = 1e-3;

/** The point of the shape that stays where it is at any size, since `place` says where it goes; and where that is. */
function pinned(
  turned: MadeShape,
  own: Point,
  { target, margin }: Goal,
  { place, fit }: Modifiers,
  toGrow: number,
): { readonly own: Point; readonly at: Point } | undefined {
  const box = boundsOf(turned.region);
  const frame = boundsOf(target.region);
  const centre = centreOf({ region: target.region }, place!.by);
  if (!box || !frame || !centre) return undefined;
  const { at } = place!;
  const beside = margin + toGrow;
  if (at === 'above') return { own: { x: own.x, y: box.minY }, at: { x: centre.x, y: frame.maxY + beside } };
  if (at === 'below') return { own: { x: own.x, y: box.maxY }, at: { x: centre.x, y: frame.minY - beside } };
  if (at === 'left of') return { own: { x: box.maxX, y: own.y }, at: { x: frame.minX - beside, y: centre.y } };
  if (at === 'right of') return { own: { x: box.minX, y: own.y }, at: { x: frame.maxX + beside, y: centre.y } };
  const inset = Math.max(margin, fit!.margin) + toGrow + offEdgeMm;
  let [from, to] = [own, centre];
  if (at.includes('left'))
    [from, to] = [
      { ...from, x: box.minX },
      { ...to, x: frame.minX + inset },
    ];
  if (at.includes('right'))
    [from, to] = [
      { ...from, x: box.maxX },
      { ...to, x: frame.maxX - inset },
    ];
  if (at.includes('bottom'))
    [from, to] = [
      { ...from, y: box.minY },
      { ...to, y: frame.minY + inset },
    ];
  if (at.includes('top'))
    [from, to] = [
      { ...from, y: box.maxY },
      { ...to, y: frame.maxY - inset },
    ];
  return { own: from, at: to };
}

function turnedSolid(solid: MadeShape, modifiers: Modifiers): MadeShape {
  const bounds = boundsOf(solid.region);
  return bounds ? mapSolid(solid, turning(modifiers, boxCentre(bounds))) : solid;
}

export function turning({ rotate, mirror }: Modifiers, about: Point): Affine {
  const turn = rotate === undefined ? identity : rotation(rotate, about);
  if (!mirror) return turn;
  return chain(turn, mirror === 'left-right' ? scaling(-1, 1, about) : scaling(1, -1, about));
}
