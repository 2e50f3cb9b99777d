/** What goes on sheets, and where it has gone. */

import type { Affine, Region } from '../geometry/types.ts';

/** One piece to be cut. */
export interface PartToNest {
  /** What the path of the beam encloses, in mm, y up. */
  readonly region: Region;
  /**
   * How it may be turned on the sheet. `none`: as drawn; `half`: by 0 or 180 degrees, so that the grain of wood runs along it
   * either way; `quarter`: by quarters.
   */
  readonly turns: 'none' | 'half' | 'quarter';
}

/** The sheets there are, all alike and as many as it takes. Lengths in mm. */
export interface SheetRoom {
  readonly width: number;
  readonly height: number;
  /** Along each edge of the sheet, kept free of parts. */
  readonly margin: number;
  /** Least distance between the regions of two parts. */
  readonly gap: number;
  /**
   * What is left of the last sheet keeps this side of it whole: `width`, a strip at the top; `height`, one at the right.
   * Unless said, whichever leaves more.
   */
  readonly keep?: 'width' | 'height';
}

export interface Placement {
  /** Which of the parts given, from 0. */
  readonly part: number;
  /** Which sheet, from 0. */
  readonly sheet: number;
  /** Takes the part's region to the sheet, whose origin is its lower left corner. */
  readonly transform: Affine;
}

export interface Layout {
  /** In the order of the parts. */
  readonly placements: readonly Placement[];
  /** Parts that go on no sheet, however they are turned, or that have no area; ascending. */
  readonly unplaced: readonly number[];
  /** How many sheets it takes. */
  readonly sheets: number;
  /** The same, the last sheet counted by the share of it that is used: of two layouts, the lesser is better. */
  readonly used: number;
}

/** The sheet less its margins, and what is kept between parts. */
export interface BinSize {
  readonly width: number;
  readonly height: number;
  readonly gap: number;
}

/** Of an orientation's lower left corner in its bin, in mm. */
export interface Position {
  readonly x: number;
  readonly y: number;
}
