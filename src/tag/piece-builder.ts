/** Builds pieces: bodies united, marks in place, hangers joined and openings cut. */

import { transform } from '../geometry/affine.ts';
import { difference, offset, union, unionOfWhole } from '../geometry/clipper.ts';
import { area } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import { mm } from '../core/figures.ts';
import type { ShapeEntry, Hanger, PieceModel, TagModel } from '../spec/model/model.ts';
import type { Shape, Target } from '../spec/model/shape-model.ts';
import { Neighbourhood } from './fit/neighbourhood.ts';
import type { BesideHole } from './fit/neighbourhood.ts';
import { mapAskedWidths } from './asked-width.ts';
import type { AskedWidth } from './asked-width.ts';
import { clearedBorder } from './shapes/border.ts';
import type { Stage } from './cache.ts';
import { clearModules, squareOf } from './shapes/code.ts';
import { Evaluator } from './evaluate.ts';
import { inMiddleOf, isLine, lowestOf } from './fit/line-order.ts';
import type { Obstacles } from './fit/no-room.ts';
import { bottomPieceOf } from './pieces-below.ts';
import { copiesBeside, makesRoom } from './shapes/copies-beside.ts';
import { fromMarksMm, obstacleOf } from './hanger/clear-of.ts';
import { noRoomFor, openingInWords } from './hanger/in-words.ts';
import { placeHanger } from './hanger/hanger.ts';
import { besideFrame } from './hanger/beside-frame.ts';
import { noReading, readingOf, scaledReading, seenAs } from './hanger/reading.ts';
import { slitsMm, withoutSlits } from './hanger/slits.ts';
import type { Resources } from './resources.ts';
import { centreOf, mapShape } from './made-shape.ts';
import type { MadeShape } from './made-shape.ts';
import type { Area, Piece, PlacedHanger } from './tag.ts';
import { scaledBy, wholeScale } from './whole-size.ts';
import { ids, regions, finishedOutline, sources, marks } from './made-entries.ts';
import type { MadeEntry } from './made-entries.ts';

/** Scale of the shapes of a piece, and whether its rings take into account how they read. */
interface PieceScale {
  readonly factor: number;
  readonly usesReading: boolean;
}

export class PieceBuilder {
  readonly evaluator: Evaluator;
  readonly #model: TagModel;
  readonly #resources: Resources;
  readonly #neighbourhood: Neighbourhood;

  constructor(model: TagModel, resources: Resources) {
    this.#model = model;
    this.#resources = resources;
    this.#neighbourhood = new Neighbourhood(model);
    this.evaluator = new Evaluator(resources, {
      around: (shape) => this.#around(shape),
      pieceScale: async (shape) => {
        const piece = this.#neighbourhood.pieceUnder(shape);
        return piece ? (await this.#scaleOf(piece)).factor : 1;
      },
    });
  }

  /** `undefined` if the body has no material, which its shapes have reported. */
  async build(model: PieceModel): Promise<Piece | undefined> {
    const { cache } = this.#resources;
    const { factor, usesReading } = await this.#scaleOf(model);
    const make = (entries: readonly ShapeEntry[]) => this.#makeAll(entries, factor);
    const bodies = await make(model.body);
    const plainCuts = await make(model.cut);
    const body = this.#united(bodies);
    if (body.value.length === 0) return undefined;
    const hangerStages: Stage<PlacedHanger | undefined>[] = [];
    for (const hanger of model.hangers) {
      const placed = await this.#hang(hanger, model, body, bodies, { factor, usesReading });
      if (!placed.value) this.#noRoom(hanger, bodies);
      hangerStages.push(placed);
    }
    const hangers = hangerStages.flatMap(({ value }) => value ?? []);
    const clear = this.#clearing(hangerStages, plainCuts);
    const cuts = clear('cut', plainCuts);
    const inputs = [body.id, ids(cuts), hangerStages.map(({ id }) => id)];
    const region = cache.get('piece', inputs, () => finishedOutline(body.value, regions(cuts), hangers));
    const asked = await this.#asked([...model.body, ...model.cut], factor);
    const { id, title, path, parts, glueTo, cutFrom } = model;
    return {
      id,
      title,
      path,
      region: region.value,
      body: body.value,
      sources: [...sources('body', bodies), ...sources('cut', cuts)],
      marks: [
        ...marks('engrave', clear('mark', await make(model.engrave))),
        ...marks('score', clear('mark', await make(model.score))),
      ],
      asked,
      hangers,
      parts,
      ...(glueTo === undefined ? {} : { glueTo }),
      ...(cutFrom ? { cutFrom } : {}),
    };
  }

  /** The obstacles of a fitted shape, at the size that shapes have before their piece is scaled. */
  async #around(shape: Shape): Promise<Stage<Obstacles> | undefined> {
    const { entries, piecesWithHangers } = this.#neighbourhood.of(shape);
    const { cache } = this.#resources;
    const openings: Stage<Region>[] = [];
    const names: string[] = [];
    for (const piece of piecesWithHangers) {
      const { factor, usesReading } = await this.#scaleOf(piece);
      const bodies = await this.#makeAll(piece.body, factor);
      const body = this.#united(bodies);
      for (const hanger of piece.hangers) {
        const { id, value } = await this.#hang(hanger, piece, body, bodies, { factor, usesReading });
        if (value && hanger.kind !== 'ring') names.push(openingInWords(value, body.value));
        if (value)
          openings.push(
            cache.get('hanger in the way', [id, factor], () => transform(value.opening, scaledBy(1 / factor))),
          );
      }
    }
    const stages = [...openings];
    const codes: MadeShape[] = [];
    const codeIds: number[] = [];
    const above: Stage<MadeShape>[] = [];
    const middle: Stage<MadeShape>[] = [];
    const apart = [...openings];
    const fillers: (string | undefined)[] = [];
    let leading: Stage<MadeShape> | undefined;
    let isAfter = false;
    const words: Stage<MadeShape>[] = [];
    for (const { entry, isLine: isScored, order } of entries) {
      const made = await this.evaluator.target(entry);
      const { id, value } = made;
      if (order) (order === 'below' ? above : middle).push(made);
      if (order === 'below' && entry.shape.modifiers.fit) {
        fillers.push(entry.shape.name);
        if (!entry.shape.modifiers.place) leading = made;
      }
      isAfter ||= order === 'after the middle';
      if (isLine(entry.shape.generator)) words.push(made);
      if (entry.shape.name !== undefined) names.push(`“${entry.shape.name}”`);
      if (value.codes && !isScored) {
        codes.push(value);
        codeIds.push(id);
      }
      const inTheWay = cache.get(
        'in the way',
        [id, isScored, value.border && openings.map((opening) => opening.id)],
        () => {
          const { region } = value.border ? clearedBorder(value, union(openings.map((each) => each.value))) : value;
          return isScored ? scoredLine(region) : region;
        },
      );
      stages.push(inTheWay);
      if (!order || order === 'below') apart.push(inTheWay);
    }
    if (stages.length === 0) return undefined;
    const isOpeningsAlone =
      openings.length > 0 && entries.every(({ entry }) => entry.shape.generator.kind === 'border');
    const lines = [above, middle, words].map((each) => each.map(({ id }) => id));
    return cache.get(
      'around',
      [stages.map(({ id }) => id), codeIds, names, lines, fillers, leading?.id, isAfter, isOpeningsAlone],
      () => ({
        names,
        above: lowestOf(above.map(({ value }) => value)),
        middle: inMiddleOf(
          middle.map(({ value }) => value),
          () => union(apart.map(({ value }) => value)),
          isAfter,
        ),
        fillers,
        isOpeningsAlone,
        words: words.flatMap(({ value }) => centreOf(value, 'eye') ?? []),
        leading: leading && centreOf(leading.value, 'eye'),
        things: union(stages.map(({ value }) => value)),
        quiet: union(codes.flatMap((made) => made.codes!.map((code) => [squareOf(code, clearModules)]))),
      }),
    );
  }

  /** Scale of the shapes of a piece at which the piece, or what it is glued to, has the size asked for. */
  async #scaleOf(piece: PieceModel): Promise<PieceScale> {
    const { size, path, body, hangers } = bottomPieceOf(piece, this.#model.pieces);
    if (!size) return { factor: 1, usesReading: true };
    const bodies = await this.#makeAll(body, 1);
    const united = this.#united(bodies);
    const on: (Region | undefined)[] = [];
    const plain: unknown[] = [];
    for (const { on: target, ...hanger } of hangers) {
      const made = target && (await this.evaluator.target(target));
      on.push(made?.value.region);
      plain.push([hanger, made?.id]);
    }
    const read = readingOf(besideFrame(bodies.map(({ stage }) => stage.value)));
    const inputs = [united.id, plain, size, this.#resources.minWeb];
    const found = this.#resources.cache.get('whole size', inputs, (): PieceScale | undefined => {
      // If the ring jumps from place to place as the size changes and no size is found, how it reads is left out of
      // account.
      for (const reading of [read, noReading]) {
        const factor = wholeScale(
          united.value,
          (tried) => {
            const scaled = transform(united.value, scaledBy(tried));
            return hangers.flatMap((hanger, index) => {
              const joined = on[index] && transform(on[index], scaledBy(tried));
              return (
                placeHanger(hanger, joined ?? scaled, scaled, scaledReading(reading, tried), this.#resources.minWeb) ??
                []
              );
            });
          },
          size,
        );
        if (factor !== undefined) return { factor, usesReading: reading === read };
      }
      return undefined;
    });
    if (found.value === undefined && united.value.length > 0) {
      const message = `No size of the shapes makes the whole piece ${mm(size.mm)} ${size.side === 'width' ? 'wide' : 'high'}.`;
      this.#resources.report({ code: 'empty-shape', severity: 'error', path: [...path, size.side], message });
    }
    return found.value ?? { factor: 1, usesReading: true };
  }

  async #makeAll(entries: readonly ShapeEntry[], factor: number): Promise<MadeEntry[]> {
    const made: MadeEntry[] = [];
    for (const entry of entries) {
      const stage = await this.#scaled(entry, factor);
      made.push({ stage, entry, area: this.#areaOf(entry, factor) });
    }
    return made;
  }

  #areaOf({ shape }: ShapeEntry, factor: number): Area | undefined {
    const area = this.evaluator.areaOf(shape);
    if (!area || factor === 1) return area;
    const scale = scaledBy(factor);
    return { target: transform(area.target, scale), ...(area.room && { room: transform(area.room, scale) }) };
  }

  async #asked(entries: readonly ShapeEntry[], factor: number): Promise<AskedWidth[]> {
    const asked: AskedWidth[] = [];
    for (const { shape } of entries) asked.push(...((await this.evaluator.make(shape)).value.asked ?? []));
    return factor === 1 ? asked : mapAskedWidths(asked, scaledBy(factor));
  }

  async #scaled(target: Target, factor: number): Promise<Stage<MadeShape>> {
    const { cache } = this.#resources;
    const made = await this.evaluator.target(target);
    return cache.get('in piece', [made.id, factor], () =>
      factor === 1 ? made.value : mapShape(made.value, scaledBy(factor)),
    );
  }

  /**
   * Leads borders round anything cut through the piece. A border that is itself cut ends there, and is held by the
   * material between its ends.
   */
  #clearing(hung: readonly Stage<PlacedHanger | undefined>[], cuts: readonly MadeEntry[]) {
    const plain = cuts.filter(({ stage }) => !stage.value.border);
    const openings = [...regions(plain).flat(), ...hung.flatMap(({ value }) => value?.opening ?? [])];
    const inputs = [ids(plain), hung.map(({ id }) => id)];
    const hangers = hung.flatMap(({ value }) => value?.opening ?? []);
    return (use: 'cut' | 'mark', made: readonly MadeEntry[]): MadeEntry[] =>
      made.map((each) => {
        const { id, value } = each.stage;
        if (makesRoom(each.entry.shape, value)) {
          const kept = use === 'cut' ? this.#model.stock.minWeb : fromMarksMm;
          const beside = this.#resources.cache.get('copies beside', [id, inputs, kept], () =>
            copiesBeside(value, hangers, kept),
          );
          return { ...each, stage: beside };
        }
        if (!value.border) return each;
        const border = use === 'cut' ? { ...value.border, ends: true } : value.border;
        const stage = this.#resources.cache.get('clear of openings', [id, inputs, use], () =>
          clearedBorder({ ...value, border }, openings),
        );
        const left = area(stage.value.border.within) / area(border.within);
        if (value.region.length > 0 && (left < enclosedShare || stage.value.region.length === 0))
          this.#resources.report({
            code: 'empty-shape',
            severity: stage.value.region.length === 0 ? 'error' : 'warning',
            path: each.entry.path,
            message: `The openings of the piece leave this border ${stage.value.region.length === 0 ? 'no way round' : 'hardly anything to go round'}; set it in less, or make the piece larger.`,
          });
        return { ...each, stage };
      });
  }

  #united(bodies: readonly MadeEntry[]): Stage<Region> {
    return this.#resources.cache.get('body', ids(bodies), () => unionOfWhole(regions(bodies)));
  }

  async #hang(
    hanger: Hanger,
    piece: PieceModel,
    body: Stage<Region>,
    bodies: readonly MadeEntry[],
    { factor, usesReading }: PieceScale,
  ): Promise<Stage<PlacedHanger | undefined>> {
    const { on, ...rest } = hanger;
    const joined = on && (await this.#scaled(on, factor));
    const beside = await this.#besideHole(hanger, piece, factor);
    const besides = beside.map(({ made, as }) => [made.id, as]);
    const inputs = [body.id, joined?.id, ids(bodies), rest, usesReading, besides, this.#resources.minWeb];
    return this.#resources.cache.get('hanger', inputs, () => {
      const reading = readingOf(besideFrame(bodies.map(({ stage }) => stage.value)));
      const usedReading = usesReading ? reading : noReading;
      const inTheWay = beside.map(({ made, as }) => obstacleOf(made.value, as, this.#model));
      const placed = placeHanger(
        hanger,
        joined?.value.region ?? body.value,
        body.value,
        usedReading,
        this.#resources.minWeb,
        inTheWay,
      );
      if (!placed || hanger.kind !== 'ring') return placed;
      const size = { hole: hanger.opening / 2, wall: hanger.wall };
      const hasLetters = bodies.some(({ stage }) => stage.value.lettering);
      const isBacking = bodies.some(({ entry }) => entry.shape.generator.kind === 'around');
      const slits = hasLetters ? slitsMm.letters : isBacking ? slitsMm.backing : 0;
      const lug = slits > 0 ? withoutSlits(placed.lug!, body.value, slits) : placed.lug!;
      return { ...placed, lug, ...seenAs(reading, placed.centre, size, placed.neckOn) };
    });
  }

  /** The obstacles of a hole that is the only hanger of a piece and whose place the spec leaves open. */
  async #besideHole(hanger: Hanger, piece: PieceModel, factor: number) {
    if (hanger.kind !== 'hole' || piece.hangers.length > 1) return [];
    if (hanger.leastInset === undefined && !hanger.anySide) return [];
    const found: { readonly made: Stage<MadeShape>; readonly as: BesideHole['as'] }[] = [];
    for (const { entry, as } of this.#neighbourhood.besideHangers(piece)) {
      const made = await this.#scaled(entry, factor);
      // A border goes round the opening, wherever that is, and copies along an edge make room for it.
      if (!made.value.border && !makesRoom(entry.shape, made.value)) found.push({ made, as });
    }
    return found;
  }

  #noRoom(hanger: Hanger, bodies: readonly MadeEntry[]): void {
    const { path, row } = hanger;
    // Those of a row have room together or not at all.
    if (row && row.nth > 0) return;
    const isLettering = bodies.every(({ stage }) => stage.value.lettering?.some(({ as }) => as === 'material'));
    const message = noRoomFor(hanger, isLettering);
    this.#resources.report({ code: 'empty-shape', severity: 'error', path, message });
  }
}

/** A border that is led round openings and encloses less than this share of what it did looks like a mistake (our own judgement). */
const enclosedShare = 0.5;

/** Width given to a line that shapes keep clear of, in mm, as obstacles must be areas. */
const lineMm = 0.01;

/** The outline of a scored shape, as a narrow area. */
function scoredLine(region: Region): Region {
  return difference(offset(region, lineMm), [offset(region, -lineMm)]);
}
