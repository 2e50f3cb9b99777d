/** Builds the tag from a model: pieces with bodies united, marks in place, hangers joined and openings cut. */

import type { TagModel } from '../spec/model/model.ts';
import { textsOf } from '../spec/model/shape-model.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { cutOnTheLine } from './uncompensated.ts';
import { everyShape } from './load.ts';
import type { Resources } from './resources.ts';
import type { Piece, Tag } from './tag.ts';
import { PieceBuilder } from './piece-builder.ts';

/**
 * The tag with everything that can be made of it. Unused shapes are made too, so that their problems show while they
 * are being written.
 * @throws whatever `resources.checkpoint` throws to stop it; nothing else.
 */
export async function buildTag(model: TagModel, resources: Resources): Promise<Tag> {
  const builder = new PieceBuilder(model, resources);
  for (const shape of model.shapes.values()) await builder.evaluator.make(shape);
  const pieces: Piece[] = [];
  for (const piece of model.pieces) {
    const built = await builder.build(piece);
    if (built) pieces.push(built);
    await resources.checkpoint();
  }
  const { title, units, stock, tie, sheet, machine, output, unfilled } = model;
  const { made, growths } = builder.evaluator;
  return {
    title,
    units,
    stock,
    ...(tie ? { tie } : {}),
    ...(sheet ? { sheet } : {}),
    ...(machine ? { machine } : {}),
    output,
    made,
    ...(growths.size > 0 ? { growths } : {}),
    ...(unfilled ? { unfilled } : {}),
    pieces: output.compensate ? pieces : cutOnTheLine(pieces, stock, resources),
  };
}

/** Largest possible scales, on this tag, of shapes that must be equally large on all tags of a batch. */
export async function fittedScales(model: TagModel, resources: Resources): Promise<FittedScale[]> {
  const { evaluator } = new PieceBuilder(model, resources);
  const scales: FittedScale[] = [];
  for (const shape of sameSized(model)) {
    await evaluator.make(shape);
    const scale = evaluator.scaleOf(shape);
    const { ofMost } = evaluator.areaOf(shape) ?? {};
    if (scale !== undefined) scales.push({ shape, scale, ...(ofMost === undefined ? {} : { ofMost }) });
    await resources.checkpoint();
  }
  return scales;
}

export interface FittedScale {
  readonly shape: Shape;
  /** Over its natural size. */
  readonly scale: number;
  /** Share of the largest that was asked for. */
  readonly ofMost?: number;
}

/** Whether tags look as they do because of the others of their batch. */
export function isMadeTogether(model: TagModel): boolean {
  const isEven = ({ generator }: Shape): boolean => textsOf(generator).some(({ evenly }) => evenly !== undefined);
  return sameSized(model).length > 0 || [...everyShape(model)].some(isEven);
}

/** Shapes that have the same size on all tags of a batch. */
export function sameSized(model: TagModel): Shape[] {
  return [...everyShape(model)].filter(({ modifiers }) => modifiers.fit?.sameSize);
}
