/** Makes shapes: the generator, then the modifiers in order, each stage cached as long as its inputs stay the same. */

import { chain, translation } from '../geometry/affine.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import { bridged } from '../geometry/bridges.ts';
import { strappedAs } from '../geometry/straps-round.ts';
import type { HoldWidth, Modifiers, Shape, Target } from '../spec/model/shape-model.ts';
import { barWidth, stripWidths } from './asked-width.ts';
import { growthLacking, mostGrowths } from './auto-growth.ts';
import type { Stage } from './cache.ts';
import { withBridges } from './shapes/code.ts';
import { turning } from './fit/fitted.ts';
import { ShapeFitter } from './fit/shape-fitter.ts';
import type { FitContext } from './fit/shape-fitter.ts';
import { generate } from './generate.ts';
import type { CurveOutline } from './curve-outline.ts';
import { isBeside, placeMargin, placingMove } from './shapes/place.ts';
import type { Resources } from './resources.ts';
import { sizeAndGrow } from './size.ts';
import { whyEmpty } from './why-empty.ts';
import { asArea, mapShape } from './made-shape.ts';
import type { MadeShape } from './made-shape.ts';
import type { Area } from './tag.ts';

export class Evaluator {
  readonly #resources: Resources;
  readonly #context: FitContext;
  readonly #made = new Map<Shape, Stage<MadeShape>>();

  readonly #fitter: ShapeFitter;
  readonly #areas = new Map<Shape, Area>();
  readonly #growths = new Map<Shape, number>();

  constructor(resources: Resources, context: FitContext) {
    this.#resources = resources;
    this.#context = context;
    this.#fitter = new ShapeFitter(resources, context, (target) => this.target(target));
  }

  /** The scale of a fitted shape, over its natural size. */
  scaleOf(shape: Shape): number | undefined {
    return this.#fitter.scaleOf(shape);
  }

  /**
   * The area that a shape was fitted into or placed on; `undefined` for one that stands by itself or beside another.
   */
  areaOf(shape: Shape): Area | undefined {
    return this.#fitter.areaOf(shape) ?? this.#areas.get(shape);
  }

  /** Growth in mm of each shape that grows as much as it needs. */
  get growths(): ReadonlyMap<Shape, number> {
    return this.#growths;
  }

  /** All shapes made so far. */
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

  /** `undefined` if it cannot be made, which has been reported. */
  async #attempt(shape: Shape): Promise<Stage<MadeShape> | undefined> {
    try {
      return await (shape.modifiers.growAuto ? this.#grownEnough(shape) : this.#madeWith(shape, shape.modifiers));
    } catch (error) {
      // Geometry reports figures that are too large with a RangeError; anything else is not the spec's fault.
      if (!(error instanceof RangeError)) throw error;
      const message = `This shape cannot be made: ${error.message}`;
      this.#resources.report({ code: 'bad-value', severity: 'error', path: shape.path, message });
      return undefined;
    }
  }

  /**
   * Grows by what the thinnest place lacks until nothing is too thin. If the size is given, the shape is made smaller
   * to allow for the growth, so this takes a few rounds.
   */
  async #grownEnough(shape: Shape): Promise<Stage<MadeShape> | undefined> {
    const { cache, minWeb } = this.#resources;
    let grow = 0;
    for (let round = 0; ; round++) {
      const made = await this.#madeWith(shape, { ...shape.modifiers, grow });
      if (!made) return undefined;
      const lacking = cache.get('growth lacking', [made.id, minWeb], () => growthLacking(made.value.region, minWeb));
      this.#growths.set(shape, grow);
      if (lacking.value === 0 || round >= mostGrowths || grow >= minWeb / 2) return made;
      grow = Math.min(grow + lacking.value, minWeb / 2);
    }
  }

  /** @param modifiers The shape's own, with its growth in mm. */
  async #madeWith(shape: Shape, modifiers: Modifiers): Promise<Stage<MadeShape> | undefined> {
    const { checkpoint } = this.#resources;
    const outline = await generate({ ...shape, modifiers }, this.#resources, (each) => this.make(each));
    await checkpoint();
    const made = outline && (await this.#finished(shape, modifiers, outline));
    await checkpoint();
    return made;
  }

  async #finished(shape: Shape, modifiers: Modifiers, outline: Stage<CurveOutline>): Promise<Stage<MadeShape>> {
    const { fit, nudge } = modifiers;
    if (!fit) return this.#placed(shape, modifiers, this.#held(shape, await this.#sized(modifiers, outline)));
    const found = await this.#fitter.fit(shape, modifiers, outline);
    if (!found.value) return this.#nothing();
    const { cache } = this.#resources;
    const { shape: fittedShape, move } = found.value;
    const held = this.#held(
      shape,
      cache.get('fitted shape', found.id, () => fittedShape),
    );
    if (!move) return this.#placed(shape, modifiers, held);
    return cache.get('put', [held.id, found.id, nudge], () =>
      mapShape(held.value, nudge ? chain(move, translation(nudge.x, nudge.y)) : move),
    );
  }

  #nothing(): Stage<MadeShape> {
    return this.#resources.cache.get('nothing', 0, () => ({ region: [] }));
  }

  async #sized(modifiers: Modifiers, outline: Stage<CurveOutline>): Promise<Stage<MadeShape>> {
    const { tidy, grow, corners, width, height } = modifiers;
    const sizing = { scale: outline.value.ownScale ?? 1, tidy, grow, corners, width, height };
    const { cache, checkpoint } = this.#resources;
    return cache.getLater('sized', [outline.id, sizing], () => sizeAndGrow(outline.value, sizing, checkpoint));
  }

  /**
   * The shape with straps between its parts and bridges across its strokes, which keep their width whatever the size.
   */
  #held({ generator, modifiers }: Shape, sized: Stage<MadeShape>): Stage<MadeShape> {
    const inMm = (width: HoldWidth): number => (width === 'auto' ? this.#resources.minWeb : width);
    const straps = modifiers.straps && { ...modifiers.straps, width: inMm(modifiers.straps.width) };
    const bridges = modifiers.bridges && { ...modifiers.bridges, width: inMm(modifiers.bridges.width) };
    const bar = barWidth(generator, sized.value.region);
    const [code] = sized.value.codes ?? [];
    if (generator.kind === 'code' && bridges && code)
      return this.#resources.cache.get('code with bridges', [sized.id, bridges.width], () =>
        withBridges(sized.value, code, bridges.width),
      );
    if (!straps && !bridges && bar.length === 0) return sized;
    return this.#resources.cache.get('held', [sized.id, straps, bridges], () => {
      const { region, asked = [] } = sized.value;
      const level = sized.value.band?.top;
      const joined = straps ? strappedAs(region, straps, level) : { region, strips: [] };
      const held = bridges ? bridged(joined.region, bridges.width, bridges.sides) : { ...joined, strips: [] };
      const { border } = sized.value;
      return {
        ...asArea(sized.value),
        ...(border ? { border: { ...border, ends: true } } : {}),
        region: held.region,
        asked: [
          ...asked,
          ...bar,
          ...stripWidths(joined.strips, straps?.width ?? 0),
          ...stripWidths(held.strips, bridges?.width ?? 0),
        ],
      };
    });
  }

  async #placed(shape: Shape, modifiers: Modifiers, sized: Stage<MadeShape>): Promise<Stage<MadeShape>> {
    const { fit, rotate, mirror, place, nudge } = modifiers;
    const target = place && (await this.target(place));
    if (target && !fit && !isBeside(place.at)) this.#areas.set(shape, { target: target.value.region });
    if (rotate === undefined && !mirror && !target && !nudge) return sized;
    // A distance is that of the finished piece.
    const distance = place && place.margin / (await this.#context.pieceScale(shape));
    const aim = target && [target.id, place.at, distance, place.isUsualGap, place.by, fit !== undefined];
    return this.#resources.cache.get('placed', [sized.id, rotate, mirror, aim, nudge], () => {
      const bounds = boundsOf(sized.value.region);
      let made = bounds ? mapShape(sized.value, turning(modifiers, boxCentre(bounds))) : sized.value;
      if (target) {
        const isFitted = fit !== undefined;
        const margin = placeMargin({ ...place, margin: distance! }, made, target.value, isFitted);
        made = mapShape(made, placingMove(made, target.value, place.at, margin, place.by, isFitted));
      }
      return nudge ? mapShape(made, translation(nudge.x, nudge.y)) : made;
    });
  }

  /** The solid of a target: the shape, or its member at its place in the stack. */
  async target({ shape, part }: Target): Promise<Stage<MadeShape>> {
    const made = await this.make(shape);
    if (part === undefined) return made;
    return this.#resources.cache.get('part', [made.id, part], () => ({ region: made.value.parts?.get(part) ?? [] }));
  }

  /** Reports an empty shape, unless the shapes it is made from are all empty and have reported that. */
  #reportEmpty({ generator, modifiers, path }: Shape): void {
    const sources = 'shapes' in generator ? generator.shapes : 'shape' in generator ? [generator.shape] : [];
    if (sources.length > 0 && sources.every((source) => this.#made.get(source)?.value.region.length === 0)) return;
    if (modifiers.fit) return;
    const message = `This shape ${whyEmpty(generator, modifiers)}.`;
    this.#resources.report({ code: 'empty-shape', severity: 'error', path, message });
  }
}
