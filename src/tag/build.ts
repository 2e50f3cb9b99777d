/** From a model to the tag: pieces with their bodies united, marks in place, hangers joined and openings cut. */

import { difference, union } from '../geometry/clipper.ts';
import type { Region } from '../geometry/types.ts';
import type { Entry, Hanger, PieceModel, TagModel } from '../spec/model.ts';
import type { Stage } from './cache.ts';
import { Evaluator } from './evaluate.ts';
import { placeHanger } from './hanger/hanger.ts';
import type { Resources } from './resources.ts';
import type { Solid } from './solid.ts';
import type { Mark, Piece, PlacedHanger, Source, Tag } from './tag.ts';

/**
 * The tag with everything that can be made of it. Unused shapes are made too, so that their problems show while they are
 * being written.
 * @throws whatever `resources.checkpoint` throws to stop it; nothing else.
 */
export async function buildTag(model: TagModel, resources: Resources): Promise<Tag> {
  const evaluator = new Evaluator(resources);
  for (const shape of model.shapes.values()) await evaluator.make(shape);
  const pieces: Piece[] = [];
  for (const piece of model.pieces) {
    const built = await buildPiece(piece, evaluator, resources);
    if (built) pieces.push(built);
    await resources.checkpoint();
  }
  const { title, units, stock, tie, sheet } = model;
  const { made } = evaluator;
  return { title, units, stock, ...(tie ? { tie } : {}), ...(sheet ? { sheet } : {}), made, pieces };
}

interface Made {
  readonly stage: Stage<Solid>;
  readonly entry: Entry;
}

/** `undefined` where the body has no material, which its shapes have reported. */
async function buildPiece(model: PieceModel, evaluator: Evaluator, resources: Resources): Promise<Piece | undefined> {
  const { cache } = resources;
  const make = async (entries: readonly Entry[]) => {
    const stages: Made[] = [];
    for (const entry of entries) stages.push({ stage: await evaluator.make(entry.shape), entry });
    return stages;
  };
  const ids = (stages: readonly Made[]) => stages.map(({ stage }) => stage.id);
  const regions = (stages: readonly Made[]) => stages.map(({ stage }) => stage.value.region);
  const bodies = await make(model.body);
  const cuts = await make(model.cut);
  const body = cache.get('body', ids(bodies), () => union(regions(bodies)));
  if (body.value.length === 0) return undefined;
  const hung: Stage<PlacedHanger | undefined>[] = [];
  for (const hanger of model.hangers) hung.push(await hang(hanger, body, evaluator, resources));
  const hangers = hung.flatMap(({ value }) => value ?? []);
  const hungIds = hung.map((stage) => stage.id);
  const region = cache.get('piece', [body.id, ids(cuts), hungIds], () => finished(body.value, regions(cuts), hangers));
  const { id, title, path, parts, glueTo } = model;
  return {
    id,
    title,
    path,
    region: region.value,
    body: body.value,
    sources: [...sources('body', bodies), ...sources('cut', cuts)],
    marks: [...marks('engrave', await make(model.engrave)), ...marks('score', await make(model.score))],
    hangers,
    parts,
    ...(glueTo === undefined ? {} : { glueTo }),
  };
}

async function hang(
  hanger: Hanger,
  body: Stage<Region>,
  evaluator: Evaluator,
  resources: Resources,
): Promise<Stage<PlacedHanger | undefined>> {
  const { on, ...rest } = hanger;
  const joined = on && (await evaluator.make(on));
  const placed = resources.cache.get('hanger', [body.id, joined?.id, rest], () =>
    placeHanger(hanger, joined?.value.region ?? body.value, body.value),
  );
  if (!placed.value) {
    const message = `There is no room for the ${hanger.kind} here; make the body larger or the ${hanger.kind} smaller.`;
    resources.report({ code: 'empty-shape', severity: 'error', path: hanger.path, message });
  }
  return placed;
}

/** One boolean for everything: what is cut is cut from the body and the lug as if they were united. */
function finished(body: Region, cuts: readonly Region[], hangers: readonly PlacedHanger[]): Region {
  const openings = [...cuts, ...hangers.map(({ opening }) => opening)];
  const lugs = hangers.flatMap(({ lug }) => lug ?? []);
  return openings.length > 0 ? difference([...body, ...lugs], openings) : body;
}

function sources(use: Source['use'], made: readonly Made[]): Source[] {
  return made.map(({ stage, entry }) => ({ use, region: stage.value.region, path: entry.shape.path }));
}

function marks(operation: Mark['operation'], made: readonly Made[]): Mark[] {
  return made.map(({ stage, entry }) => ({ operation, region: stage.value.region, path: entry.path }));
}
