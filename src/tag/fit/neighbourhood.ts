/** Finds what else is on the pieces of fitted shapes and gets in their way. */

import type { ShapeEntry, PieceModel, TagModel } from '../../spec/model/model.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import { orderOf } from './line-order.ts';
import type { Order } from './line-order.ts';
import { piecesBelow, bottomPieceOf } from '../pieces-below.ts';
import { withDependencies } from '../load.ts';

/** Something that a fitted shape keeps clear of. */
export interface Neighbour {
  readonly piece: PieceModel;
  readonly entry: ShapeEntry;
  /** A scored shape is a line; the area inside is free. */
  readonly isLine: boolean;
  /** How the shape is to stand to it, if it is words. */
  readonly order?: Order | undefined;
}

/** Something that a hole for the tie keeps clear of. */
export interface BesideHole {
  readonly entry: ShapeEntry;
  readonly as: 'cut' | 'engraved' | 'scored' | 'glued on';
}

export interface Neighbours {
  readonly entries: readonly Neighbour[];
  /** Pieces whose hangers are in the way. */
  readonly piecesWithHangers: readonly PieceModel[];
}

/**
 * Decides which shapes keep clear of which. Fitted shapes keep clear of those that are not fitted; of two fitted ones,
 * the first in the order of the pieces and their lists has the first choice. So no two shapes wait for each other.
 */
export class Neighbourhood {
  readonly #pieces: readonly PieceModel[];
  /** Fitted shapes with their ranks. */
  readonly #ranks = new Map<Shape, number>();
  readonly #behind = new Map<Shape, ReadonlySet<Shape>>();

  constructor({ pieces }: TagModel) {
    this.#pieces = pieces;
    for (const piece of pieces) {
      for (const { entry } of marksOn(piece, pieces)) {
        for (const shape of this.#partsOf(entry.shape)) {
          if (shape.modifiers.fit && !this.#ranks.has(shape)) this.#ranks.set(shape, this.#ranks.size);
        }
      }
    }
  }

  of(shape: Shape): Neighbours {
    const rank = this.#ranks.get(shape);
    if (rank === undefined) return { entries: [], piecesWithHangers: [] };
    const room = this.#all(shape.modifiers.fit!.shape);
    const isEarlier = this.#isEarlierThan(rank);
    const entries: Neighbour[] = [];
    const piecesWithHangers: PieceModel[] = [];
    for (const base of this.#basesOf((entry) => this.#partsOf(entry).has(shape))) {
      const layers = this.#pieces.filter((piece) => bottomPieceOf(piece, this.#pieces) === base);
      const marks = layers.flatMap((piece) => marksOn(piece, this.#pieces));
      const own = marks.findIndex(({ entry }) => this.#partsOf(entry.shape).has(shape));
      for (const [index, neighbour] of marks.entries()) {
        const other = neighbour.entry.shape;
        // A shape fitted into a mark, or into something made from it, is meant to be there. A border is no field but a line.
        const isRoom = room.has(other) && other.generator.kind !== 'border';
        if (isEarlier(other) && !isRoom) entries.push({ ...neighbour, order: orderOf(shape, other, own > index) });
      }
      if (shapesOf(base).every(isEarlier)) piecesWithHangers.push(base);
    }
    return { entries, piecesWithHangers };
  }

  /** The bottom piece that carries a fitted shape or a placed one, if its size does not depend on it; of several, the first. */
  pieceUnder(shape: Shape): PieceModel | undefined {
    const rank = this.#ranks.get(shape);
    if (rank === undefined) {
      const bases = this.#basesOf((entry) => this.#all(entry).has(shape));
      return [...bases].find((base) => this.#isSizedWithout(base, shape));
    }
    const isEarlier = this.#isEarlierThan(rank);
    return [...this.#basesOf((entry) => this.#partsOf(entry).has(shape))].find((base) =>
      shapesOf(base).every(isEarlier),
    );
  }

  /** Whether nothing that a piece consists of is made from a shape, or keeps clear of it. */
  #isSizedWithout(base: PieceModel, shape: Shape): boolean {
    const behind = shapesOf(base).flatMap((each) => [...this.#all(each)]);
    return behind.every(
      (each) => each !== shape && this.of(each).entries.every(({ entry }) => !this.#all(entry.shape).has(shape)),
    );
  }

  #isEarlierThan(rank: number): (shape: Shape) => boolean {
    return (shape) => [...this.#all(shape)].every((each) => (this.#ranks.get(each) ?? -1) < rank);
  }

  /** Everything on a piece that does not wait for its hangers; fitted shapes do, as they keep clear of them. */
  besideHangers(piece: PieceModel): BesideHole[] {
    const over = this.#pieces.filter((other) => piecesBelow(other, this.#pieces).includes(piece));
    const all = [
      ...piece.cut.map((entry) => ({ entry, as: 'cut' as const })),
      ...piece.engrave.map((entry) => ({ entry, as: 'engraved' as const })),
      ...piece.score.map((entry) => ({ entry, as: 'scored' as const })),
      ...over.flatMap(({ body }) => body.map((entry) => ({ entry, as: 'glued on' as const }))),
    ];
    return all.filter(({ entry }) => [...this.#all(entry.shape)].every((shape) => !this.#ranks.has(shape)));
  }

  /** The bottom pieces of those that carry such a shape. */
  #basesOf(isSuch: (entry: Shape) => boolean): Set<PieceModel> {
    const having = this.#pieces.filter((piece) =>
      marksOn(piece, this.#pieces).some(({ entry }) => isSuch(entry.shape)),
    );
    return new Set(having.map((piece) => bottomPieceOf(piece, this.#pieces)));
  }

  /** The shape with everything that it is made from, placed on or fitted into. */
  #all(shape: Shape): ReadonlySet<Shape> {
    const known = this.#behind.get(shape) ?? withDependencies(shape);
    this.#behind.set(shape, known);
    return known;
  }

  /** The shape with everything that it is made from. */
  #partsOf(shape: Shape): ReadonlySet<Shape> {
    const found = new Set<Shape>();
    const waiting = [shape];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      if (found.has(next)) continue;
      found.add(next);
      const { generator } = next;
      if ('shapes' in generator) waiting.push(...generator.shapes.toReversed());
      if ('shape' in generator) waiting.push(generator.shape);
    }
    return found;
  }
}

/** What a piece is made of, and what its hangers are joined to. */
function shapesOf({ body, hangers }: PieceModel): Shape[] {
  return [...body.map((entry) => entry.shape), ...hangers.flatMap(({ on }) => on?.shape ?? [])];
}

/** Everything on a piece rather than of it: its cuts and its marks and, if it is glued onto another, its own body. */
function marksOn(piece: PieceModel, pieces: readonly PieceModel[]): Neighbour[] {
  const body = bottomPieceOf(piece, pieces) === piece ? [] : piece.body;
  return [
    ...[...body, ...piece.cut, ...piece.engrave].map((entry) => ({ piece, entry, isLine: false })),
    ...piece.score.map((entry) => ({ piece, entry, isLine: true })),
  ];
}
