/** Makes shapes: the generator, then the modifiers in their order, each stage kept for as long as its inputs stay the same. */

import { chain, identity, rotation, scaling, translation } from '../geometry/affine.ts';
import { offset } from '../geometry/clipper.ts';
import { boundsOf, boxCentre, contains } from '../geometry/measure.ts';
import { bridged } from '../geometry/bridges.ts';
import { strapped } from '../geometry/straps.ts';
import { poleOf } from '../geometry/pole.ts';
import type { Affine, Point, Region } from '../geometry/types.ts';
import type { Modifiers, Shape, Target } from '../spec/model.ts';
import { ofBar, ofStrips } from './asked-width.ts';
import type { Checkpoint, Stage } from './cache.ts';
import { withBridges } from './code.ts';
import { largestScale } from './fit.ts';
import { generate } from './generate.ts';
import type { CurveOutline } from './outline.ts';
import { placing } from './place.ts';
import type { Resources } from './resources.ts';
import { sizeAndGrow } from './size.ts';
import { asArea, centreOf, mapSolid } from './made-shape.ts';
import type { MadeShape } from './made-shape.ts';

export class Evaluator {
  readonly #resources: Resources;
  readonly #made = new Map<Shape, Stage<MadeShape>>();

  constructor(resources: Resources) {
    this.#resources = resources;
  }

  /** All that has been made so far. */
  get made(): ReadonlyMap<Shape, MadeShape> {
    return new Map([...this.#made].map(([shape, { value }]) => [shape, value]));
  }

  /** The finished solid of a shape; an empty one has been reported. */
  async make(shape: Shape): Promise<Stage<MadeShape>> {
    const known = this.#made.get(shape);
    if (known) return known;
    const made = await this.#attempt(shape);
    this.#made.set(shape, made ?? this.#nothing());
    if (made?.value.region.length === 0) this.#reportEmpty(shape);
    return made ?? this.#nothing();
  }

  /** `undefined` where it cannot be made, which has been reported. */
  async #attempt(shape: Shape): Promise<Stage<MadeShape> | undefined> {
    try {
      const outline = await generate(shape, this.#resources, (each) => this.make(each));
      await this.#resources.checkpoint();
      const made = outline && (await this.#placed(shape, this.#held(shape, await this.#sized(shape, outline))));
      await this.#resources.checkpoint();
      return made;
    } catch (error) {
      // What geometry says of figures too large for it; anything else is not the spec's fault.
      if (!(error instanceof RangeError)) throw error;
      const message = `This shape cannot be made: ${error.message}`;
      this.#resources.report({ code: 'bad-value', severity: 'error', path: shape.path, message });
      return undefined;
    }
  }

  #nothing(): Stage<MadeShape> {
    return this.#resources.cache.get('nothing', 0, () => ({ region: [] }));
  }

  async #sized({ modifiers }: Shape, outline: Stage<CurveOutline>): Promise<Stage<MadeShape>> {
    const { tidy, grow, corners, width, height, fit, rotate, mirror, place } = modifiers;
    const natural = outline.value.ownScale ?? 1;
    const sizing = { scale: natural, tidy, grow, corners, width, height };
    const room = fit && (await this.#room(modifiers));
    const fitting = room && [room.id, rotate, mirror, place?.by];
    const { cache, checkpoint } = this.#resources;
    return cache.getLater('sized', [outline.id, sizing, fitting], async () => {
      const sized = (scale: number) => sizeAndGrow(outline.value, { ...sizing, scale }, checkpoint);
      if (!room) return sized(natural);
      let scale = await fittingScale(outline.value, modifiers, room.value, checkpoint);
      let solid = await sized(scale);
      // Growth moves the centre a little; what that leaves or takes is made good at the grown shape itself.
      for (let round = 0; grow && round < regrowths; round++) {
        scale *= slackOf(solid, modifiers, room.value);
        solid = await sized(scale);
      }
      return solid;
    });
  }

  /** Straps between its parts and bridges across its strokes, as wide as they are asked for whatever the size. */
  #held({ generator, modifiers: { straps, bridges } }: Shape, sized: Stage<MadeShape>): Stage<MadeShape> {
    const bar = ofBar(generator, sized.value.region);
    const [code] = sized.value.codes ?? [];
    if (generator.kind === 'code' && bridges && code)
      return this.#resources.cache.get('code with bridges', [sized.id, bridges.width], () =>
        withBridges(sized.value, code, bridges.width),
      );
    if (straps === undefined && !bridges && bar.length === 0) return sized;
    return this.#resources.cache.get('held', [sized.id, straps, bridges], () => {
      const { region, asked = [] } = sized.value;
      const joined = straps === undefined ? { region, strips: [] } : strapped(region, straps);
      const held = bridges ? bridged(joined.region, bridges.width, bridges.sides) : { ...joined, strips: [] };
      const { border } = sized.value;
      return {
        ...asArea(sized.value),
        ...(border ? { border: { ...border, ends: true } } : {}),
        region: held.region,
        asked: [
          ...asked,
          ...bar,
          ...ofStrips(joined.strips, straps ?? 0),
          ...ofStrips(held.strips, bridges?.width ?? 0),
        ],
      };
    });
  }

  async #placed({ modifiers }: Shape, sized: Stage<MadeShape>): Promise<Stage<MadeShape>> {
    const { fit, rotate, mirror, place, nudge } = modifiers;
    // A fitted shape goes to the middle of its room unless it is told where to go.
    const goal = place ?? (fit && { ...fit, at: 'center' as const, margin: 0, by: 'eye' as const });
    const target = goal && (await this.target(goal));
    if (rotate === undefined && !mirror && !target && !nudge) return sized;
    const middle = fit && !place ? (await this.#room(modifiers)).value.centre : undefined;
    const aim = target && [target.id, goal.at, goal.margin, goal.by, middle];
    return this.#resources.cache.get('placed', [sized.id, rotate, mirror, aim, nudge], () => {
      const bounds = boundsOf(sized.value.region);
      let solid = bounds ? mapSolid(sized.value, turning(modifiers, boxCentre(bounds))) : sized.value;
      if (target) solid = mapSolid(solid, placing(solid, target.value, goal.at, goal.margin, goal.by, middle));
      return nudge ? mapSolid(solid, translation(nudge.x, nudge.y)) : solid;
    });
  }

  /** What a shape may fill, and about which point: the centre by its rule, or where that is outside, that of the largest disc. */
  async #room({ fit, grow = 0, place }: Modifiers): Promise<Stage<Room>> {
    const target = await this.target(fit!);
    const by = place?.by ?? 'eye';
    return this.#resources.cache.get('room', [target.id, fit!.margin + grow, by], () => {
      const { region } = target.value;
      const free = offset(region, -(fit!.margin + grow), 'miter');
      const centre = centreOf({ region }, by);
      const outer = grow === 0 ? free : offset(region, -fit!.margin, 'miter');
      return { free, outer, centre: centre && contains(free, centre) ? centre : poleOf(free) };
    });
  }

  /** What the target is made as: the shape, or its member where it stands in it. */
  async target({ shape, part }: Target): Promise<Stage<MadeShape>> {
    const made = await this.make(shape);
    if (part === undefined) return made;
    return this.#resources.cache.get('part', [made.id, part], () => ({ region: made.value.parts?.get(part) ?? [] }));
  }

  /** Only where the shape itself is to blame: what it is made from has reported its own emptiness. */
  #reportEmpty({ generator, modifiers, path }: Shape): void {
    const sources = 'shapes' in generator ? generator.shapes : 'shape' in generator ? [generator.shape] : [];
    if (sources.length > 0 && sources.every((source) => this.#made.get(source)?.value.region.length === 0)) return;
    const { fit, grow = 0, width, height } = modifiers;
    let reason = 'has no area';
    if (generator.kind === 'border') reason = 'has no room inside the shape that it runs along';
    if (generator.kind === 'code') reason = 'has bridges as wide as its modules';
    if (generator.kind === 'stick') reason = 'meets nothing of what it should carry';
    if (fit) reason = 'does not fit inside the shape named in “fit”';
    else if (grow < 0) reason = 'is thinned away to nothing';
    else if (grow > 0 && Math.min(width ?? Infinity, height ?? Infinity) <= 2 * grow)
      reason = 'cannot be grown that much and stay that small';
    this.#resources.report({ code: 'empty-shape', severity: 'error', path, message: `This shape ${reason}.` });
  }
}

/** How often a grown shape is fitted again; each time leaves a hundredth of what was left. */
const regrowths = 2;

interface Room {
  /** Less the margin and the growth to come. */
  readonly free: Region;
  /** Less the margin alone. */
  readonly outer: Region;
  readonly centre: Point | undefined;
}

/** How large to make an outline so that it fills its room, its turn taken into account; the room has made way for its growth. */
async function fittingScale(
  outline: CurveOutline,
  modifiers: Modifiers,
  { free, centre }: Room,
  checkpoint: Checkpoint,
): Promise<number> {
  const box = boundsOf(free);
  if (!outline.bounds || !centre || !box) return 0;
  // Judged at about the final size, so that it is as smooth as what will be cut.
  const guess = (box.maxX - box.minX) / Math.max(outline.bounds.maxX - outline.bounds.minX, 1e-9);
  const turned = mapSolid(await outline.at(guess, guess, checkpoint), turning(modifiers, { x: 0, y: 0 }));
  const own = centreOf(turned, modifiers.place?.by ?? 'eye');
  return own ? guess * largestScale(turned.region, own, free, centre) : 0;
}

/** How many times as large a grown shape could be. */
function slackOf(solid: MadeShape, modifiers: Modifiers, { outer, centre }: Room): number {
  const bounds = boundsOf(solid.region);
  if (!bounds || !centre) return 1;
  const turned = mapSolid(solid, turning(modifiers, boxCentre(bounds)));
  const own = centreOf(turned, modifiers.place?.by ?? 'eye');
  return (own ? largestScale(turned.region, own, outer, centre) : 0) || 1;
}

function turning({ rotate, mirror }: Modifiers, about: Point): Affine {
  const turn = rotate === undefined ? identity : rotation(rotate, about);
  if (!mirror) return turn;
  return chain(turn, mirror === 'left-right' ? scaling(-1, 1, about) : scaling(1, -1, about));
}
