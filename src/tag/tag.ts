/** A tag as solid geometry: what the checks judge, the preview draws and the outputs write. */

import type { Line, Point, Region } from '../geometry/types.ts';
import type { YamlPath } from '../core/issue.ts';
import type { CutFrom, HangerPlace, Machine, Output, Shape, Sheet, Stock, Tie } from '../spec/model.ts';
import type { Unfilled } from '../spec/problems.ts';
import type { Code } from './code.ts';
import type { ReadAs } from './hanger/reading.ts';
import type { Lettering } from './letters.ts';
import type { AskedWidth } from './asked-width.ts';
import type { MadeShape } from './made-shape.ts';

/** What the beam does along or inside a path, in the order in which a sheet is worked. */
export const operations = ['engrave', 'score', 'cut-inner', 'cut-outer'] as const;
export type Operation = (typeof operations)[number];

/** What a shape was put into or onto, where that is. */
export interface Area {
  /** What `in` or `on` names. */
  readonly target: Region;
  /** Of a shape that is fitted: what its outline may fill. */
  readonly room?: Region;
}

/** Something drawn on a piece without cutting through it. */
export interface Mark {
  readonly operation: 'engrave' | 'score';
  readonly region: Region;
  /** Where it is drawn along lines: these, and the region is what is burnt along them. */
  readonly lines?: readonly Line[];
  /** Where it was put into or onto something. */
  readonly area?: Area;
  /** What is drawn. */
  readonly shape: Shape;
  /** The list entry that asks for it. */
  readonly path: YamlPath;
  /** Every text in it. */
  readonly lettering?: readonly Lettering[];
  /** Every code in it. */
  readonly codes?: readonly Code[];
}

/** A shape that a piece is made of. */
export interface Source {
  readonly use: 'body' | 'cut';
  readonly region: Region;
  /** Where it was put into or onto something. */
  readonly area?: Area;
  readonly shape: Shape;
  /** The list entry that asks for it. */
  readonly entry: YamlPath;
  /** Where the shape is defined: under `shapes`, or in the piece's list. */
  readonly path: YamlPath;
  /** Every text in it. */
  readonly lettering?: readonly Lettering[];
  /** Every code in it. */
  readonly codes?: readonly Code[];
}

/** What holds the tie, once it has a place. */
export interface PlacedHanger {
  readonly kind: 'ring' | 'hole' | 'slot' | 'keyhole';
  /** Centre of the opening; of a keyhole, where its nail rests. */
  readonly centre: Point;
  /** Where the spec asks for it. */
  readonly at: HangerPlace;
  /** The opening that the tie goes through. */
  readonly opening: Region;
  /** Diameter of a round opening, or the smaller inner width of a slot or of a keyhole's, in mm. */
  readonly openingSize: number;
  /** The inner length of the opening, in mm; equal to `openingSize` where it is round. */
  readonly openingLength: number;
  /** The disc of a ring, before it is united with the body. */
  readonly lug?: Region;
  /** Of a ring: the material round its hole that is asked for, in mm, and how much deeper than touching it is set. */
  readonly wall?: number;
  readonly sink?: number;
  /** Of a ring: what the eye may take it for beside the lettering it hangs. */
  readonly readAs?: readonly ReadAs[];
  readonly path: YamlPath;
}

/** One part (or, with `parts: many`, several) that is cut free of the sheet. */
export interface Piece {
  readonly id: string;
  readonly title: string;
  /** Finished outline: what is left when the beam has passed. */
  readonly region: Region;
  /** Where the beam's middle runs, if that is not half a kerf beside `region`: the outline as it was drawn. */
  readonly cutLine?: Region;
  /** The united body before openings and hanger. */
  readonly body: Region;
  /** What the body is united from, and what is cut through it: to tell which line of the spec a finding comes from. */
  readonly sources: readonly Source[];
  readonly marks: readonly Mark[];
  /** Widths of it that are meant to be what they are. */
  readonly asked?: readonly AskedWidth[];
  /** One, two where it hangs level between them, or none. */
  readonly hangers: readonly PlacedHanger[];
  /** `many`: separate parts are intended. */
  readonly parts: 'one' | 'many';
  /** The piece this one is glued on, in the same coordinates. */
  readonly glueTo?: string;
  /** Absent where it is cut from the tag's own stock. */
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
  /** Every shape as it was made, the unused ones too; those written in place included. */
  readonly made: ReadonlyMap<Shape, MadeShape>;
  /** By how much the shapes were grown that are to grow as much as they need, in mm. */
  readonly growths?: ReadonlyMap<Shape, number>;
  readonly pieces: readonly Piece[];
  /** Words on it that no batch has filled in. */
  readonly unfilled?: readonly Unfilled[];
  /** Drawn beside them, and never made: what no piece uses yet, and what lacks its font or its drawing. */
  readonly ghosts?: readonly Ghost[];
}

/** A shape that is shown but not made. */
export interface Ghost {
  readonly path: YamlPath;
  /** What the spec calls it. */
  readonly name: string;
  /** In mm, where it would be. */
  readonly region: Region;
  /** `unused`: no piece has it. `lacking`: its font or its drawing cannot be had. */
  readonly why: 'unused' | 'lacking';
}
