/** A shape made as large as fits, with its size, growth and rotation taken into account. */

import { chain, identity, rotation, scaling, translation } from '../../geometry/affine.ts';
import { boundsOf, boxCentre, contains } from '../../geometry/measure.ts';
import type { Affine, Point } from '../../geometry/types.ts';
import type { Modifiers } from '../../spec/model/shape-model.ts';
import type { Checkpoint } from '../cache.ts';
import { clearModules, squareOf } from '../shapes/code.ts';
import { isBeside } from '../shapes/place.ts';
import { middleFor } from '../shapes/seat.ts';
import { centreOf, evenMiddle, mapShape } from '../made-shape.ts';
import type { LetterBand, MadeShape } from '../made-shape.ts';
import type { CurveOutline } from '../curve-outline.ts';
import { largestFit } from './fit.ts';
import type { FitRoom } from './room.ts';
import { largestScale } from './scale.ts';
import type { FitPlacement } from './search.ts';

/** The room less margin and growth to come, and less the margin alone. */
export interface Rooms {
  readonly free: FitRoom;
  readonly outer: FitRoom;
}

export interface Fitted {
  /** Scale over its natural size, before growth. */
  readonly scale: number;
  readonly shape: MadeShape;
  /** Rotates it and moves it to where it fits; without a move, `place` determines its place. */
  readonly move?: Affine;
  /** Of lines that run round: the share of the size that they would have with nothing in their way. */
  readonly ofFree?: number;
}

/** The target of the shape's `place`. */
export interface PlaceTarget {
  readonly target: MadeShape;
  readonly margin: number;
}

export interface FittingInput {
  readonly modifiers: Modifiers;
  readonly rooms: Rooms;
  /** Largest scale over its natural size, before growth. */
  readonly most: number;
  readonly goal?: PlaceTarget | undefined;
  /** Whether the quiet zone of a code takes room as the code itself does. */
  readonly withQuietZone?: boolean;
  /** The shape grown and finished at a scale over its natural size. */
  readonly sized: (scale: number) => Promise<MadeShape>;
  readonly checkpoint: Checkpoint;
}

/** Times that a shape with growth or spacing is fitted again; each reduces the remaining error to a hundredth. */
const regrowths = 2;

/**
 * Whether the outline made for judging can be scaled by `share`: reduced by so little, it is as smooth as a new one,
 * with hardly more points.
 */
const isSmoothAt = (share: number): boolean => share > 0.6 && share <= 1.01;

/** Whether only scaling changes a shape: it has no growth, no spacing and no lines with a width of their own. */
function isAsDrawn({ lines }: MadeShape, { changes, slid }: CurveOutline, { grow, tidy }: Modifiers): boolean {
  return !grow && !tidy && !changes && !slid && !lines;
}

/** `undefined` if it fits at no size. */
export async function fitted(outline: CurveOutline, fitting: FittingInput): Promise<Fitted | undefined> {
  const { modifiers, rooms, most, sized, checkpoint } = fitting;
  const box = boundsOf(rooms.free.region);
  if (!outline.bounds || !box) return undefined;
  // Judged at about the final size, so that it is as smooth as what will be cut.
  const guess = Math.min(most, (box.maxX - box.minX) / Math.max(outline.bounds.maxX - outline.bounds.minX, 1e-9));
  const guessed = await outline.at(guess, guess, checkpoint);
  const turned = mapShape(guessed, turning(modifiers, { x: 0, y: 0 }));
  let found = findPlacement(turned, rooms.free, fitting, most / guess, modifiers.grow ?? 0);
  if (!found) return undefined;
  let scale = guess * found.scale;
  let shape =
    isSmoothAt(found.scale) && isAsDrawn(guessed, outline, modifiers)
      ? mapShape(guessed, scaling(found.scale, found.scale, { x: 0, y: 0 }))
      : await sized(scale);
  await checkpoint();
  // Growth moves the middle a little; fitting the grown shape itself corrects that.
  for (let round = 0; (modifiers.grow || outline.changes) && round < regrowths; round++) {
    const again = findPlacement(turnedShape(shape, modifiers), rooms.outer, fitting, most / scale, 0);
    if (!again) break;
    found = again;
    scale *= again.scale;
    shape = await sized(scale);
    await checkpoint();
  }
  if (modifiers.place) return { scale, shape };
  const bounds = boundsOf(shape.region);
  if (!bounds) return undefined;
  const turn = turning(modifiers, boxCentre(bounds));
  const put = mapShape(shape, turn);
  const middle = centreOf(put, 'eye')!;
  // Lettering on a line was placed by its foot.
  const y = put.band?.even === undefined ? middle.y : put.band.baseline;
  return { scale, shape, move: chain(turn, translation(found.x - middle.x, found.y - y)) };
}

/** @param toGrow Growth beyond its outline that is still to come. */
function findPlacement(
  made: MadeShape,
  room: FitRoom,
  { modifiers, goal, withQuietZone = false }: FittingInput,
  most: number,
  toGrow: number,
): FitPlacement | undefined {
  const { place } = modifiers;
  const own = centreOf(made, place?.by ?? 'eye');
  if (!own) return undefined;
  const zones = (made.codes ?? []).map((code) => squareOf(code, clearModules));
  const turned: MadeShape = withQuietZone ? { region: zones } : made;
  if (!place || !goal) {
    const { band } = turned;
    const home = band && (band.even || most < Infinity) ? usualLineIn(room, band, most) : undefined;
    if (!home || !band) return largestFit(turned, own, room, { most });
    if (!band.even) return largestFit(turned, own, room, { most, home: home.middle });
    const limits = { most, home: home.foot, baseline: home.foot.y };
    return largestFit(turned, { x: own.x, y: band.baseline }, room, limits);
  }
  const pin = fixedPoint(turned, own, goal, modifiers, toGrow);
  if (!pin || !contains(room.region, pin.at)) return undefined;
  const scale = Math.min(most, largestScale(turned.region, pin.own, room.region, pin.at));
  return scale > 0 ? { scale, ...pin.at } : undefined;
}

interface UsualLine {
  readonly foot: Point;
  readonly middle: Point;
  readonly scale: number;
}

/** How large a line of typical words would be in a room: with an upper limit over the size of this shape as a share of that. */
export function usualScaleIn(room: FitRoom, { band }: MadeShape, most: number): number | undefined {
  return band && (usualLineIn(room, band, most)?.scale ?? 0);
}

/** In each room, the places found so far: they are the same for every name in one font and size. */
const usualLines = new WeakMap<FitRoom, Map<string, UsualLine | undefined>>();

/** Lengths of a line of typical words from its baseline, in mm or in its own units, are rounded to this share of one. */
const perUnit = 1e6;

/** The place of a line of typical words at the size asked for, so that the names of a batch line up. */
function usualLineIn(room: FitRoom, { baseline, even, usual }: LetterBand, most: number): UsualLine | undefined {
  const isLimited = most < Infinity;
  // At the largest size, whatever size the name was made at for judging; rounded, so that all names find the same.
  const middle = evenMiddle(baseline, even ?? { head: usual.tall, hasSmall: true });
  const above = [usual.deep, usual.tall, middle].map((y) => y - baseline);
  const lengths = [...above, usual.long].map(
    (length) => Math.round((isLimited ? most : 1) * length * perUnit) / perUnit,
  );
  const known = usualLines.get(room) ?? new Map<string, UsualLine | undefined>();
  usualLines.set(room, known);
  const key = `${isLimited} ${lengths.join(' ')}`;
  if (!known.has(key)) known.set(key, findUsualLine(room, lengths, isLimited ? 1 : Infinity));
  return known.get(key);
}

/** Of its size: what is no larger than this would make all names of a batch smaller for the sake of the longest. */
const usualKeeps = 0.98;

function findUsualLine(room: FitRoom, lengths: readonly number[], most: number): UsualLine | undefined {
  const [deep, tall, middle, long] = lengths as [number, number, number, number];
  const line = [
    { x: -long / 2, y: deep },
    { x: long / 2, y: deep },
    { x: long / 2, y: tall },
    { x: -long / 2, y: tall },
  ];
  const own = { x: 0, y: middle };
  const found = largestFit({ region: [line] }, own, room, { most, keeps: usualKeeps });
  if (!found) return undefined;
  const { x, y, scale } = found;
  return { middle: { x, y }, foot: { x, y: y - scale * own.y }, scale };
}

/** Distance from the edge, in mm, too small to see, that keeps a shape along the edge inside. */
const offEdgeMm = 1e-3;

/** The point of the shape that stays put at any size because `place` determines it, and its place. */
function fixedPoint(
  turned: MadeShape,
  own: Point,
  { target, margin }: PlaceTarget,
  { place }: Modifiers,
  toGrow: number,
): { readonly own: Point; readonly at: Point } | undefined {
  const box = boundsOf(turned.region);
  const frame = boundsOf(target.region);
  const { at, by } = place!;
  const centre = isBeside(at) ? centreOf({ region: target.region }, by) : middleFor(turned, target, by);
  if (!box || !frame || !centre) return undefined;
  const beside = margin + toGrow;
  if (at === 'above') return { own: { x: own.x, y: box.minY }, at: { x: centre.x, y: frame.maxY + beside } };
  if (at === 'below') return { own: { x: own.x, y: box.maxY }, at: { x: centre.x, y: frame.minY - beside } };
  if (at === 'left of') return { own: { x: box.maxX, y: own.y }, at: { x: frame.minX - beside, y: centre.y } };
  if (at === 'right of') return { own: { x: box.minX, y: own.y }, at: { x: frame.maxX + beside, y: centre.y } };
  const inset = margin + toGrow + offEdgeMm;
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

function turnedShape(made: MadeShape, modifiers: Modifiers): MadeShape {
  const bounds = boundsOf(made.region);
  return bounds ? mapShape(made, turning(modifiers, boxCentre(bounds))) : made;
}

export function turning({ rotate, mirror }: Modifiers, about: Point): Affine {
  const turn = rotate === undefined ? identity : rotation(rotate, about);
  if (!mirror) return turn;
  return chain(turn, mirror === 'left-right' ? scaling(-1, 1, about) : scaling(1, -1, about));
}
