/** A spec after reading: lengths in mm, names resolved, nothing missing. */

import type { Point } from '../../geometry/types.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { Units } from '../../core/units.ts';
import type { Tie, Stock, Machine, Output, Sheet } from './workshop-model.ts';
import type { Anchor, Target, Shape } from './shape-model.ts';

/** Words with placeholders that no batch fills in. */
export interface Unfilled {
  readonly columns: readonly string[];
  /** Path in the spec. */
  readonly path: YamlPath;
}

/** `degrees` run clockwise from the top. `point` is relative to the centre of what the hanger is on. */
export type HangerPlace =
  | { readonly kind: 'auto' }
  | { readonly kind: 'anchor'; readonly anchor: Exclude<Anchor, 'center'> }
  | { readonly kind: 'degrees'; readonly degrees: number }
  | { readonly kind: 'point'; readonly offset: Point };

/** One of a row of hangers along a side. */
export interface InRow {
  /** From 0, to the right as seen with that side at the top. */
  readonly nth: number;
  readonly count: number;
  /** From middle to middle, in mm; absent where they share the width evenly. */
  readonly spacing?: number;
}

interface HangerBase {
  readonly path: YamlPath;
  /** Absent for one that stands alone. */
  readonly row?: InRow;
  /** The shape it is on, if not the body; a member of one of the body's stacks is meant where the stack puts it. */
  readonly on?: Target;
  readonly at: HangerPlace;
  /** Diameter of a round opening, short side of a slot, in mm. */
  readonly opening: number;
  readonly nudge: Point;
}

interface InsetBase extends HangerBase {
  readonly inset: number;
  /** If the spec gives no distance from the edge: the least one allowed where there is no room, or something is in the way. */
  readonly leastInset?: number;
}

export type Hole = Extract<Hanger, { kind: 'hole' }>;

/** A hanger; where another of its kind is in the other corner of the same side, they are level. */
export type Hanger = LoneHanger & { readonly pair?: Unattached<LoneHanger> };

/** Without the shape that it is on. */
export type Unattached<H> = H extends unknown ? Omit<H, 'on'> : never;

export type LoneHanger =
  | (HangerBase & { readonly kind: 'ring'; readonly wall: number; readonly sink: number })
  | (InsetBase & {
      readonly kind: 'hole';
      /** Whether it may move to another side because the spec names none. */
      readonly anySide?: true;
    })
  | (InsetBase & { readonly kind: 'slot'; readonly length: number })
  /**
   * `opening` is the width of the slot that the nail rests in, `head` the diameter of the opening for the nail's head.
   */
  | (InsetBase & {
      readonly kind: 'keyhole';
      readonly head: number;
      /** Length of the whole opening. */
      readonly length: number;
    });

/** A shape as an entry in one of a piece's lists. */
export interface ShapeEntry {
  readonly shape: Shape;
  readonly path: YamlPath;
}

/** The stock of a piece that is not cut from the tag's own stock, and how the machine cuts it. */
export interface CutFrom {
  readonly stock: Stock;
  readonly machine?: Machine;
}

export interface PieceModel {
  readonly id: string;
  readonly title: string;
  readonly path: YamlPath;
  readonly body: readonly ShapeEntry[];
  readonly cut: readonly ShapeEntry[];
  readonly score: readonly ShapeEntry[];
  readonly engrave: readonly ShapeEntry[];
  readonly hangers: readonly Hanger[];
  /** Size asked for the whole piece, its hangers included. */
  readonly size?: { readonly side: 'width' | 'height'; readonly mm: number };
  readonly parts: 'one' | 'many';
  readonly glueTo?: string;
  /** Absent if it is the tag's own stock. */
  readonly cutFrom?: CutFrom;
}

export interface TagModel {
  readonly title: string;
  readonly units: Units;
  readonly stock: Stock;
  readonly tie?: Tie;
  readonly sheet?: Sheet;
  readonly machine?: Machine;
  readonly output: Output;
  /** The record of what the customer approved, relative to the folder of the spec. */
  readonly approved?: { readonly file: string; readonly path: YamlPath };
  /** Every shape that could be read, by name, in the order of the text. */
  readonly shapes: ReadonlyMap<string, Shape>;
  readonly pieces: readonly PieceModel[];
  /** Words left as written, `{column}` included, as there is no batch. */
  readonly unfilled?: readonly Unfilled[];
}
