/** The ground under labels: what lies where in the drawing, so that labels do not hide it. Pure; mm, y down. */

import type { PathData, ScenePiece } from '../../../src/protocol/scene.ts';
import { EdgeGrid, overlap } from './edge-grid.ts';
import { ringsOf } from '../scene/outline-points.ts';
import { moved, type Box, type XY } from '../../common/camera/viewport.ts';

/** `free`: beside everything. `material`: on plain material. `taken`: on an edge, on a letter or in an opening. */
export type GroundKind = 'free' | 'material' | 'taken';

/** One piece, in its own coordinates. */
interface PieceGround {
  /** The path data it was built from; other data needs a new one. */
  readonly key: string;
  readonly solid: EdgeGrid;
  /** Edges that must not be hidden; filled ones must not have their inside hidden either. */
  readonly drawn: readonly { readonly edges: EdgeGrid; readonly isFilled: boolean }[];
}

export class Obstacles {
  /** Cached by piece: most keystrokes leave most pieces unchanged, and zooming leaves all. */
  private readonly known = new Map<string, PieceGround>();
  private shown: readonly { readonly ground: PieceGround; readonly bounds: Box; readonly at: XY }[] = [];

  show(pieces: readonly ScenePiece[], offsets: ReadonlyMap<string, XY>): void {
    this.shown = pieces.map((piece) => {
      const at = offsets.get(piece.id) ?? [0, 0];
      return { ground: this.of(piece), bounds: moved(piece.bounds, at), at };
    });
    const ids = new Set(pieces.map(({ id }) => id));
    for (const id of this.known.keys()) if (!ids.has(id)) this.known.delete(id);
  }

  under(box: Box): GroundKind {
    let kind: GroundKind = 'free';
    const middle: XY = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2];
    for (const { ground, bounds, at } of this.shown) {
      if (!overlap(box, bounds)) continue;
      const back: XY = [-at[0], -at[1]];
      const own = moved(box, back);
      const point: XY = [middle[0] + back[0], middle[1] + back[1]];
      if (ground.solid.meets(own)) return 'taken';
      for (const { edges, isFilled } of ground.drawn) {
        if (edges.meets(own) || (isFilled && edges.encloses(point))) return 'taken';
      }
      if (ground.solid.encloses(point)) kind = 'material';
    }
    return kind;
  }

  private of(piece: ScenePiece): PieceGround {
    const { id, parts, shapes } = piece;
    const letters = shapes.filter(({ isLettering }) => isLettering === true);
    const key = [...parts, ...letters].map(({ data }) => data).join(' ');
    const known = this.known.get(id);
    if (known?.key === key) return known;
    const grid = (data: PathData): EdgeGrid => new EdgeGrid(ringsOf(data, [0, 0]));
    const cuts = parts.filter(({ operation }) => operation === 'cut-outer' || operation === 'cut-inner');
    const made: PieceGround = {
      key,
      solid: grid(cuts.map(({ data }) => data).join('')),
      drawn: [
        ...parts
          .filter(({ operation }) => operation !== 'cut-outer')
          .map(({ data, operation }) => ({ edges: grid(data), isFilled: operation !== 'score' })),
        ...letters.map(({ data }) => ({ edges: grid(data), isFilled: true })),
      ],
    };
    this.known.set(id, made);
    return made;
  }
}
