/** Types for nesting: the parts, the sheets and the resulting layout. */

import type { Affine, Region } from '../geometry/types.ts';

/**
 * Most pieces of one layout. As many, of 2,000 names in two pieces each, take seven minutes of processor time and 700 MB;
 * both grow with their number.
 */
export const mostPieces = 4000;

/** A piece to be cut. */
export interface PartToNest {
  /** Area enclosed by the beam, in mm, y up. */
  readonly region: Region;
  /**
   * Allowed rotations on the sheet. `none`: as drawn; `half`: 0 or 180 degrees, so that the grain of wood runs along it
   * either way; `quarter`: multiples of 90 degrees.
   */
  readonly turns: 'none' | 'half' | 'quarter';
}

/** The sheets: all alike, as many as needed. Lengths in mm. */
export interface SheetRoom {
  readonly width: number;
  readonly height: number;
  /** Width kept free along each edge of the sheet. */
  readonly margin: number;
  /** Least distance between the regions of two parts. */
  readonly gap: number;
  /**
   * Which side of the last sheet's leftover stays whole: `width`, a strip at the top; `height`, one at the right. By
   * default whichever leaves more.
   */
  readonly keep?: 'width' | 'height';
}

export interface Placement {
  /** Index of the part, from 0. */
  readonly part: number;
  /** Index of the sheet, from 0. */
  readonly sheet: number;
  /** Transform of the part's region onto the sheet, with the origin at the sheet's lower left corner. */
  readonly transform: Affine;
}

export interface Layout {
  /** In the order of the parts. */
  readonly placements: readonly Placement[];
  /** Indices of parts that fit on no sheet in any allowed orientation, or have no area; ascending. */
  readonly unplaced: readonly number[];
  readonly sheets: number;
  /** The same, the last sheet counted by the share of it that is used: of two layouts, the lesser is better. */
  readonly used: number;
}

/** The sheet less its margins, and the gap between parts. */
export interface BinSize {
  readonly width: number;
  readonly height: number;
  readonly gap: number;
}

/** Lower left corner of an orientation in its bin, in mm. */
export interface Position {
  readonly x: number;
  readonly y: number;
}
