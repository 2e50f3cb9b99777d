/** A tag as solid geometry: what the checks judge, the preview draws and the outputs write. */

import type { Point, Region } from '../geometry/types.ts';
import type { YamlPath } from '../core/issue.ts';
import type { CutFrom, HangerPlace, Unfilled } from '../spec/model/model.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Machine, Output, Sheet, Stock, Tie } from '../spec/model/workshop-model.ts';
import type { Code } from './shapes/code.ts';
import type { ReadAs } from './hanger/reading.ts';
import type { Lettering } from './lettering/letters.ts';
import type { Approval } from './approval/read-approval.ts';
import type { AskedWidth } from './asked-width.ts';
import type { MadeShape } from './made-shape.ts';
import type { Drawn } from './open-lines.ts';

/** Operations of the beam along or inside a path, in the order in which a sheet is worked. */
export const operations = ['engrave', 'score', 'cut-inner', 'cut-outer'] as const;
export type Operation = (typeof operations)[number];

/** The area that a shape was fitted into or placed on. */
export interface Area {
  /** The shape that `in` or `on` names. */
  readonly target: Region;
  /** For a fitted shape: the room its outline may fill. */
  readonly room?: Region;
  /** For a fitted shape with `at_most`: its size as a share of that. */
  readonly ofMost?: number;
}

/** Something drawn on a piece without cutting through it. */
export interface Mark extends Drawn {
  readonly operation: 'engrave' | 'score';
  /** The area it was fitted into or placed on, if any. */
  readonly area?: Area;
  readonly shape: Shape;
  /** Path of the list entry that asks for it. */
  readonly path: YamlPath;
  readonly lettering?: readonly Lettering[];
  readonly codes?: readonly Code[];
}

/** A shape that a piece is made of. */
export interface Source {
  readonly use: 'body' | 'cut';
  readonly region: Region;
  /** The area it was fitted into or placed on, if any. */
  readonly area?: Area;
  readonly shape: Shape;
  /** Path of the list entry that asks for it. */
  readonly entry: YamlPath;
  /** Path of the shape's definition: under `shapes`, or in the piece's list. */
  readonly path: YamlPath;
  readonly lettering?: readonly Lettering[];
  readonly codes?: readonly Code[];
}

/** A hanger with its place. */
export interface PlacedHanger {
  readonly kind: 'ring' | 'hole' | 'slot' | 'keyhole';
  /** Centre of the opening; for a keyhole, where its nail rests. */
  readonly centre: Point;
  /** The place that the spec asks for. */
  readonly at: HangerPlace;
  readonly opening: Region;
  /** Diameter of a round opening, or the smaller inner width of a slot or of a keyhole's slot, in mm. */
  readonly openingSize: number;
  /** The inner length of the opening, in mm; equal to `openingSize` if it is round. */
  readonly openingLength: number;
  /** The disc of a ring, with its neck if it has one, before it is united with the body. */
  readonly lug?: Region;
  /** For a ring: the width of material round its hole that is asked for, in mm, and its depth below touching. */
  readonly wall?: number;
  readonly sink?: number;
  /** For a ring on a neck: the letter that this stands on. */
  readonly neckOn?: string;
  /** For a ring: what it may read as beside the lettering it hangs. */
  readonly readAs?: readonly ReadAs[];
  /** For a ring: the letter that it covers much of. */
  readonly covers?: string | undefined;
  readonly path: YamlPath;
}

/** One part (or, with `parts: many`, several) that is cut free of the sheet. */
export interface Piece {
  readonly id: string;
  readonly title: string;
  /** Finished outline, after the beam has passed. */
  readonly region: Region;
  /** Path of the beam's middle, if that is not half a kerf beside `region`: the outline as drawn. */
  readonly cutLine?: Region;
  /** The united body before openings and hanger. */
  readonly body: Region;
  /** The shapes united into the body and those cut through it, to find the line of the spec behind a finding. */
  readonly sources: readonly Source[];
  /** The letters that its body is made of or has as openings, where its shapes are not kept. */
  readonly spelt?: string;
  readonly marks: readonly Mark[];
  /** Widths that the spec asks for explicitly. */
  readonly asked?: readonly AskedWidth[];
  /** One, two if it hangs level between them, or none. */
  readonly hangers: readonly PlacedHanger[];
  /** `many`: separate parts are intended. */
  readonly parts: 'one' | 'many';
  /** The piece that this one is glued onto, in the same coordinates. */
  readonly glueTo?: string;
  /** Absent if it is cut from the tag's own stock. */
  readonly cutFrom?: CutFrom;
  readonly path: YamlPath;
}

export interface Tag {
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly stock: Stock;
  readonly tie?: Tie;
  readonly sheet?: Sheet;
  readonly machine?: Machine;
  readonly output: Output;
  /** Every shape as made, including unused ones and those written in place. */
  readonly made: ReadonlyMap<Shape, MadeShape>;
  /** Growth in mm of the shapes that grow as much as they need. */
  readonly growths?: ReadonlyMap<Shape, number>;
  readonly pieces: readonly Piece[];
  /** Words on it that no batch fills in. */
  readonly unfilled?: readonly Unfilled[];
  /** What the customer approved, where the spec names a record of it. */
  readonly approval?: Approval;
  /**
   * Shapes drawn beside the pieces but never made: those that no piece uses, and those that lack their font or drawing.
   */
  readonly ghosts?: readonly Ghost[];
}

/** A shape that is shown but not made. */
export interface Ghost {
  readonly path: YamlPath;
  /** The name of the shape in the spec. */
  readonly name: string;
  /** In mm, where it would be. */
  readonly region: Region;
  /** `unused`: no piece uses it. `lacking`: its font or its drawing cannot be loaded. */
  readonly why: 'unused' | 'lacking';
}
