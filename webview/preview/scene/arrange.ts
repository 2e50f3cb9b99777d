/**
 * Arrangement of the pieces: in place ("assembled"), each layer lifted off the one below ("exploded"), or side by side
 * ("apart"). Pure; mm, y down. Pieces that are glued together share coordinates; separate ones would overlap, so each
 * assembly gets a place of its own.
 */

import type { Scene, ScenePiece } from '../../../src/protocol/scene.ts';
import { joinedBox, moved, type Box, type XY } from '../../common/camera/viewport.ts';

export const arrangements = ['assembled', 'exploded', 'apart'] as const;
export type Arrangement = (typeof arrangements)[number];

export interface Arranged {
  /** Offset of each piece, by its id. */
  readonly offsets: ReadonlyMap<string, readonly [number, number]>;
  /** Pieces drawn as one: an assembly, or a single piece; bounds after moving. */
  readonly groups: readonly { readonly pieces: readonly ScenePiece[]; readonly bounds: Box }[];
  readonly bounds: Box;
  /** Lowest first, so that a piece glued on another is drawn over it. */
  readonly order: readonly ScenePiece[];
}

/** Target aspect ratio, width to height, of pieces laid out side by side. */
const wantedAspect = 1.4;
const gapMm = 8;
/** Gap between a lifted layer and the one below, in mm. */
const liftGapMm = 5;

/** `keep`: offsets of pieces that should stay where they are. */
export function arrange(scene: Scene, arrangement: Arrangement, keep?: Arranged['offsets']): Arranged {
  const depths = new Map(scene.pieces.map((piece) => [piece.id, glueChain(scene, piece).length]));
  const order = [...scene.pieces].sort((a, b) => depths.get(a.id)! - depths.get(b.id)!);
  const sets = arrangement === 'apart' ? scene.pieces.map((piece) => [piece]) : assemblies(scene);
  const lifts = new Map(sets.flatMap((pieces) => (arrangement === 'exploded' ? liftsOf(pieces, depths) : [])));
  const lifted = ({ id, bounds }: ScenePiece): Box => moved(bounds, [0, lifts.get(id) ?? 0]);
  const boxes = sets.map((pieces) => pieces.map(lifted).reduce(joinedBox));
  const fresh = sideBySide(boxes);
  const offsets = new Map(
    sets.flatMap((pieces, index) =>
      pieces.map(({ id }) => {
        const [x, y] = fresh[index]!;
        return [id, keep?.get(id) ?? ([x, y + (lifts.get(id) ?? 0)] as const)] as const;
      }),
    ),
  );
  const boxOf = ({ id, bounds }: ScenePiece): Box => moved(bounds, offsets.get(id)!);
  // The size over lifted layers is meaningless, so the lowest layer is measured instead.
  const measured = sets.map((pieces) => (lifts.size > 0 ? pieces.slice(0, 1) : pieces));
  const all = [...scene.pieces.map(boxOf), ...(scene.ghosts.length > 0 ? [scene.bounds] : [])];
  return {
    offsets,
    groups: measured.map((pieces) => ({ pieces, bounds: pieces.map(boxOf).reduce(joinedBox) })),
    bounds: all.length > 0 ? all.reduce(joinedBox) : scene.bounds,
    order,
  };
}

/** Upward moves of an assembly's pieces that lift every layer clear of those below. */
function liftsOf(pieces: readonly ScenePiece[], depths: ReadonlyMap<string, number>): [string, number][] {
  const layers: ScenePiece[][] = [];
  for (const piece of pieces) (layers[depths.get(piece.id)!] ??= []).push(piece);
  let top = Infinity;
  return layers.flatMap((layer) => {
    const [, minY, , maxY] = layer.map(({ bounds }) => bounds).reduce(joinedBox);
    const lift = top === Infinity ? 0 : top - liftGapMm - maxY;
    top = minY + lift;
    return layer.map(({ id }): [string, number] => [id, lift]);
  });
}

/** Lines from both ends of a lifted piece's lower edge down to its place on the piece below. */
export function leadersOf(scene: Scene, { offsets }: Arranged): (readonly [XY, XY])[] {
  return scene.pieces.flatMap((piece) => {
    const below = glueChain(scene, piece)[0];
    if (!below) return [];
    const [from, to] = [piece, below].map(({ id }) => moved(piece.bounds, offsets.get(id)!)) as [Box, Box];
    return ([0, 2] as const).map(
      (side) =>
        [
          [from[side], from[3]],
          [to[side], to[3]],
        ] as const,
    );
  });
}

/** The pieces under this one, nearest first. A cyclic chain ends before it would repeat. */
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
    const set = sets.get(root.id) ?? [];
    // The piece that all others lie on comes first.
    if (piece === root) set.unshift(piece);
    else set.push(piece);
    sets.set(root.id, set);
  }
  return [...sets.values()];
}

/** Moves that arrange boxes in a grid, left aligned; the first box stays where it is. */
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
