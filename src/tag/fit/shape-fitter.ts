/** Makes shapes as large as goes into what they name, clear of everything else on their pieces. */

import { transform } from '../../geometry/affine.ts';
import { offset, union } from '../../geometry/clipper.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Modifiers, Shape, Target } from '../../spec/model/shape-model.ts';
import type { Stage } from '../cache.ts';
import { insideBorder } from '../shapes/border.ts';
import { quietZoneOf } from '../shapes/code.ts';
import type { CurveOutline } from '../curve-outline.ts';
import type { MadeShape } from '../made-shape.ts';
import { isBeside } from '../shapes/place.ts';
import { seatOf } from '../shapes/seat.ts';
import { sizeKey } from '../resources.ts';
import type { Resources } from '../resources.ts';
import { sizeAndGrow } from '../size.ts';
import { scaledBy } from '../whole-size.ts';
import type { Area } from '../tag.ts';
import { fitted, usualScaleIn } from './fitted.ts';
import type { Fitted } from './fitted.ts';
import { fittedRound } from './fit-round.ts';
import { isLine, standsAmong, isWorthOrder, isWorthSide, over, standsAbove, standsBelow, under } from './line-order.ts';
import { besideOthers, noRoom, squeezedBeside, squeezedRound } from './no-room.ts';
import type { Obstacles } from './no-room.ts';
import { roomIn } from './room.ts';
import type { FitRoom } from './room.ts';

/** The pieces that carry a shape. */
export interface FitContext {
  /** Everything else on them that a fitted shape keeps clear of; `undefined` if there is nothing. */
  readonly around: (shape: Shape) => Promise<Stage<Obstacles> | undefined>;
  /** The factor by which the shapes of its piece are enlarged afterwards. */
  readonly pieceScale: (shape: Shape) => Promise<number>;
}

type FittedStage = Promise<Stage<Fitted | undefined>>;

export class ShapeFitter {
  readonly #resources: Resources;
  readonly #context: FitContext;
  readonly #target: (target: Target) => Promise<Stage<MadeShape>>;
  readonly #scales = new Map<Shape, number>();
  readonly #areas = new Map<Shape, Area>();

  /** @param target Makes what a shape goes into. */
  constructor(resources: Resources, context: FitContext, target: (target: Target) => Promise<Stage<MadeShape>>) {
    this.#resources = resources;
    this.#context = context;
    this.#target = target;
  }

  /** The scale of a shape, over its natural size. */
  scaleOf(shape: Shape): number | undefined {
    return this.#scales.get(shape);
  }

  /** What a shape was fitted into. */
  areaOf(shape: Shape): Area | undefined {
    return this.#areas.get(shape);
  }

  /** `undefined` if there is no room, which has been reported. */
  async fit(shape: Shape, modifiers: Modifiers, outline: Stage<CurveOutline>): FittedStage {
    if (shape.generator.kind !== 'code') return this.#fitted(shape, modifiers, outline, 0);
    // A code is as large as goes with its quiet zone, unless the spec keeps more than that free.
    const whole = await this.#fitted(shape, modifiers, outline, 'quiet zone');
    const zone = whole.value ? quietZoneOf(whole.value.shape) : 0;
    const { fit, place } = modifiers;
    const asked = Math.max(fit!.margin, fit!.clear, place && !place.isUsualGap ? place.margin : 0);
    return whole.value && zone >= asked ? whole : this.#fitted(shape, modifiers, outline, zone);
  }

  async #roomIn(target: Target): Promise<Stage<Region>> {
    const { id, value } = await this.#target(target);
    const { border, region } = value;
    return this.#resources.cache.get('to fill', id, () => (border ? insideBorder(border) : region));
  }

  /** Of words that take less than half the width of a plate on which nothing else is but what it hangs by: the share of the size that they would have without that. */
  async #shareOfFree(
    { generator, modifiers }: Shape,
    { scale, shape }: Fitted,
    { around, target, most, alone }: Alone,
  ): Promise<number | undefined> {
    const isSuch = around?.isOpeningsAlone && isLine(generator) && !modifiers.place && !modifiers.fit!.sameSize;
    const [box, whole] = [boundsOf(shape.region), boundsOf(target)];
    if (!isSuch || scale >= most || !box || !whole) return undefined;
    if (box.maxX - box.minX > leastWidth * (whole.maxX - whole.minX)) return undefined;
    const free = await alone();
    return free.value && scale / free.value.scale;
  }

  /** @param kept From everything, whatever the spec says: a distance in mm, or the quiet zone of the code and no more. */
  async #fitted(
    shape: Shape,
    modifiers: Modifiers,
    outline: Stage<CurveOutline>,
    kept: number | 'quiet zone',
  ): FittedStage {
    const { tidy, grow, corners, rotate, mirror, place } = modifiers;
    const fit = modifiers.fit!;
    // Distances are those of the finished piece.
    const scale = await this.#context.pieceScale(shape);
    const { cache, checkpoint } = this.#resources;
    const target = await this.#roomIn(fit);
    const goal = place && (await this.#target(place));
    const around = await this.#context.around(shape);
    const withQuietZone = kept === 'quiet zone';
    const isForWords = isLine(shape.generator);
    const atLeast = (asked: number): number => (withQuietZone ? 0 : Math.max(asked / scale, kept));
    const [margin, clear] = [atLeast(fit.margin), atLeast(fit.clear)];
    const room = (more: number, side: Side): Stage<FitRoom> =>
      cache.get('room', [target.id, margin + more, around?.id, clear + more, place?.by, side, isForWords], () => {
        const obstacles = isByLetters(side)
          ? grown(around?.value, clear, more)
          : offset(around!.value.middle!.apart, clear + more);
        const taken =
          side === 'anywhere' ? obstacles : union([obstacles, beyond(side, target.value, around!.value, clear + more)]);
        const seat = isForWords ? seatOf(target.value) : undefined;
        const others = around?.value.words ?? [];
        const leading = around?.value.leading;
        return roomIn(target.value, margin + more, taken, { by: place?.by ?? 'eye', seat, others, leading });
      });
    const alone = () => {
      const whole = (more: number): Stage<FitRoom> =>
        cache.get('room', [target.id, margin + more, 'alone'], () =>
          roomIn(target.value, margin + more, [], { by: 'eye', seat: seatOf(target.value) }),
        );
      return { free: whole(grow ?? 0), outer: whole(0) };
    };
    const roomsOf = (side: Side) => ({ free: room(grow ?? 0, side), outer: room(0, side) });
    const same = fit.sameSize ? this.#resources.sameSizes?.get(sizeKey(shape)) : undefined;
    const most = Math.min(largestScaleOf({ ...shape, modifiers }, outline.value, scale), same ?? Infinity);
    const sizing = { tidy, grow, corners };
    const aim = place && [place.at, place.margin, place.isUsualGap, goal?.id];
    const { round } = outline.value;
    const foundIn = ({ free, outer }: ReturnType<typeof roomsOf>): FittedStage => {
      const inputs = [outline.id, sizing, free.id, outer.id, most, rotate, mirror, aim, kept, scale];
      return cache.getLater('fitted', inputs, () => {
        const sized = (size: number, of = outline.value) => sizeAndGrow(of, { ...sizing, scale: size }, checkpoint);
        if (round) {
          const inner = offset(target.value, -(margin + (grow ?? 0)));
          return fittedRound(outline.value, round, { inner, room: free.value.region, most, modifiers, sized });
        }
        // A gap that was asked for is from ink to ink.
        const isFree = place && (place.isUsualGap || !isBeside(place.at));
        return fitted(outline.value, {
          modifiers,
          rooms: { free: free.value, outer: outer.value },
          most,
          goal: goal && { target: goal.value, margin: isFree ? atLeast(place.margin) : place.margin / scale },
          withQuietZone,
          sized,
          checkpoint,
        });
      });
    };
    let rooms = roomsOf('anywhere');
    let found = await foundIn(rooms);
    const { above, middle } = around?.value ?? {};
    const choose = (side: { readonly rooms: typeof rooms; readonly found: typeof found }): void => {
      if (found.value && isWorthOrder(side.found.value, found.value)) ({ rooms, found } = side);
    };
    const on = async (side: Side) => ({ rooms: roomsOf(side), found: await foundIn(roomsOf(side)) });
    if (found.value && above && !standsBelow(found.value, above)) choose(await on('below'));
    else if (found.value && middle && !above) {
      const { value: anywhere } = found;
      const upper = { ...(await on('above the middle')), isThere: standsAbove(anywhere, middle) };
      const lower = { ...(await on('below the middle')), isThere: standsBelow(anywhere, middle) };
      const line = fit.atMost ? 'lesser' : 'filling';
      const usualAt = (side: Side) => usualScaleIn(room(grow ?? 0, side).value, anywhere.shape, most / anywhere.scale);
      const judged = ({ found: { value }, isThere }: typeof upper, side: Side) => ({
        scale: isThere ? anywhere.scale : value?.scale,
        usual: usualAt(side),
      });
      const [over, under] = [judged(upper, 'above the line'), judged(lower, 'below the line')];
      const isLower = middle.isFirst ? isWorthSide(under, over, line) : !isWorthSide(over, under, line);
      const side = isLower ? lower : upper;
      if (!side.isThere) choose(side);
    }
    this.#areas.set(shape, { target: target.value, room: rooms.outer.value.region });
    if (found.value) {
      this.#scales.set(shape, found.value.scale);
      if (fit.atMost && most < Infinity)
        this.#areas.set(shape, { ...this.#areas.get(shape)!, ofMost: found.value.scale / most });
    }
    if (found.value?.ofFree !== undefined && found.value.ofFree < leastOfFree)
      this.#resources.report({
        code: 'squeezed',
        severity: 'info',
        path: [...shape.path, 'fit'],
        message: squeezedRound(fit, around?.value.names ?? [], found.value.ofFree),
      });
    const { fillers = [] } = around?.value ?? {};
    if (found.value && above && fillers.length > 0 && standsAmong(found.value, above))
      this.#resources.report({
        code: 'squeezed',
        severity: 'info',
        path: [...shape.path, 'fit'],
        message: besideOthers(shape, fit, fillers),
      });
    const share =
      found.value &&
      (await this.#shareOfFree(shape, found.value, {
        around: around?.value,
        target: target.value,
        most,
        alone: () => foundIn(alone()),
      }));
    if (share !== undefined && share < leastBeside)
      this.#resources.report({
        code: 'squeezed',
        severity: 'info',
        path: [...shape.path, 'fit'],
        message: squeezedBeside(shape, fit, around?.value.names ?? [], share),
      });
    const finished = (region: Region): Region => transform(region, scaledBy(scale));
    if (!found.value && !withQuietZone && outline.value.bounds && target.value.length > 0) {
      this.#resources.report({
        code: 'empty-shape',
        severity: 'error',
        path: [...shape.path, 'fit'],
        message: noRoom(
          fit,
          finished(target.value),
          around && { ...around.value, things: finished(around.value.things), quiet: finished(around.value.quiet) },
          (grow ?? 0) * scale,
          round !== undefined,
        ),
      });
    }
    return found;
  }
}

/** Letters that run round are told to be small below this share of what the edge alone would allow (our own judgement). */
const leastOfFree = 0.6;

/** So are words beside what a plate hangs by, if they take less than the second of its width (our own judgement). */
const leastBeside = 0.6;
const leastWidth = 0.5;

interface Alone {
  readonly around: Obstacles | undefined;
  readonly target: Region;
  readonly most: number;
  /** What is found with nothing in the way. */
  readonly alone: () => FittedStage;
}

/** Where in the room a shape is to stand beside other words; of those in the middle, what is beside their line whatever its letters. */
type Side = 'anywhere' | 'below' | 'above the middle' | 'below the middle' | 'above the line' | 'below the line';

/** Whether the words beside it are in the way by their letters, or by their line alone. */
const isByLetters = (side: Side): boolean => side !== 'above the line' && side !== 'below the line';

/** What of a region is on the other side of the words beside it. */
function beyond(side: Exclude<Side, 'anywhere'>, region: Region, { above, middle }: Obstacles, clear: number): Region {
  switch (side) {
    case 'below':
      return over(region, above!.minY - clear);
    case 'below the middle':
      return over(region, middle!.minY - clear);
    case 'above the middle':
      return under(region, middle!.maxY + clear);
    case 'below the line':
      return over(region, middle!.line.low - clear);
    case 'above the line':
      return under(region, middle!.line.high + clear);
  }
}

function grown(around: Obstacles | undefined, clear: number, more: number): Region {
  if (!around) return [];
  const things = offset(around.things, clear + more);
  return around.quiet.length > 0 ? union([things, offset(around.quiet, more)]) : things;
}

/** The largest scale of a fitted shape over its natural size, before growth and before its piece is enlarged by `pieceScale`. */
function largestScaleOf(
  { generator, modifiers }: Shape,
  { bounds, heights }: CurveOutline,
  pieceScale: number,
): number {
  const { fit, grow = 0 } = modifiers;
  const { width, ...letters } = fit?.atMost ?? {};
  // Letters that slide get their size before they are grown.
  const own = generator.kind === 'text' && generator.overlap !== undefined ? 0 : grow;
  const scales = (['capitals', 'small letters'] as const).flatMap((of) => {
    const mm = letters[of];
    return heights && mm !== undefined ? [(mm / pieceScale - 2 * own) / heights[of]] : [];
  });
  if (width !== undefined && bounds) scales.push((width / pieceScale - 2 * grow) / (bounds.maxX - bounds.minX));
  return Math.min(Infinity, ...scales);
}
