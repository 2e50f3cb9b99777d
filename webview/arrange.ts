/**
 * Where each piece is drawn: in place ("assembled"), or side by side ("apart"). Pure; mm, y down. Pieces that are glued
 * together share coordinates; those that are not would lie on one another, so each assembly gets a place of its own.
 */

import type { Scene, ScenePiece } from '../src/preview/protocol.ts';
import { joined, moved, type Box } from './viewport.ts';

export const arrangements = ['assembled', 'apart'] as const;
export type Arrangement = (typeof arrangements)[number];

export interface Arranged {
  /** How far each piece is moved, by its id. */
  readonly offsets: ReadonlyMap<string, readonly [number, number]>;
  /** What is drawn as one: an assembly, or a single piece; bounds after moving. */
  readonly groups: readonly { readonly pieces: readonly ScenePiece[]; readonly bounds: Box }[];
  readonly bounds: Box;
  /** Lowest first, so that what is glued on a piece is drawn over it. */
  readonly order: readonly ScenePiece[];
}

/** The shape, width to height, that a set of pieces side by side comes nearest to. */
const wantedAspect = 1.4;
const gapMm = 8;

/** `keep`: where pieces are to stay that are drawn already. */
export function arrange(scene: Scene, arrangement: Arrangement, keep?: Arranged['offsets']): Arranged {
  const depths = new Map(scene.pieces.map((piece) => [piece.id, glueChain(scene, piece).length]));
  const order = [...scene.pieces].sort((a, b) => depths.get(a.id)! - depths.get(b.id)!);
  const sets = arrangement === 'apart' ? scene.pieces.map((piece) => [piece]) : assemblies(scene);
  const boxes = sets.map((pieces) => pieces.map((piece) => piece.bounds).reduce(joined));
  const fresh = sideBySide(boxes);
  const moves = sets.map((pieces, index) => keep?.get(pieces[0]!.id) ?? fresh[index]!);
  const groups = sets.map((pieces, index) => ({ pieces, bounds: moved(boxes[index]!, moves[index]!) }));
  return {
    offsets: new Map(sets.flatMap((pieces, index) => pieces.map((piece) => [piece.id, moves[index]!] as const))),
    groups,
    bounds: groups.map((group) => group.bounds).reduce(joined, groups[0]?.bounds ?? scene.bounds),
    order,
  };
}

/** The pieces under this one, nearest first. A chain that bites its own tail ends where it would repeat. */
export function glueChain(scene: Scene, piece: ScenePiece): ScenePiece[] {
  const chain: ScenePiece[] = [];
  let below = scene.pieces.find((other) => other.id === piece.glueTo);
  while (below && below !== piece && !chain.includes(below)) {
    chain.push(below);
    const next = below.glueTo;
    below = scene.pieces.find((other) => other.id === next);
  }
  return chain;
}

function assemblies(scene: Scene): ScenePiece[][] {
  const sets = new Map<string, ScenePiece[]>();
  for (const piece of scene.pieces) {
    const root = glueChain(scene, piece).at(-1) ?? piece;
    const set = sets.get(root.id);
    if (set) set.push(piece);
    else sets.set(root.id, [piece]);
  }
  return [...sets.values()];
}

/** Moves that lay boxes out in even columns, left aligned in rows; the first box stays where it is. */
function sideBySide(boxes: readonly Box[]): [number, number][] {
  const first = boxes[0];
  if (!first) return [];
  const cellWidth = Math.max(...boxes.map((box) => box[2] - box[0])) + gapMm;
  const cellHeight = Math.max(...boxes.map((box) => box[3] - box[1])) + gapMm;
  let columns = 1;
  let best = Infinity;
  for (let tried = 1; tried <= boxes.length; tried++) {
    const aspect = (tried * cellWidth) / (Math.ceil(boxes.length / tried) * cellHeight);
    const miss = Math.abs(Math.log(aspect / wantedAspect));
    if (miss < best) [columns, best] = [tried, miss];
  }
  return boxes.map((box, index) => [
    first[0] - box[0] + (index % columns) * cellWidth,
    first[1] - box[1] + Math.floor(index / columns) * cellHeight,
  ]);
}
