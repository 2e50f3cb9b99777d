/** Sections of a piece, and the direction in which a tag is pulled. */

import type { Point, Region } from '../geometry/types.ts';
import type { PlacedHanger } from '../tag/tag.ts';
import type { Chord } from './parting.ts';

/**
 * - `wall`: both walls beside the opening, torn apart across the pull.
 * - `tear-out`: the opening torn out through the material ahead of it, by shear.
 * - `strap`: the strip ahead of the opening, bent until it breaks.
 * - `attachment`: the joint of the ring to the body.
 * - `neck`: the weakest place that alone joins the hanger to most of the piece.
 * - `strokes`: two or more strokes side by side, cut straight across the pull.
 */
export type SectionKind = 'wall' | 'tear-out' | 'strap' | 'attachment' | 'neck' | 'strokes';

export interface Section {
  readonly what: SectionKind;
  /** Width of the narrowest wall or stroke, in mm. */
  readonly widthMm: number;
  /** Width of all material that must break, in mm: two walls, two planes of shear, all strokes. */
  readonly totalMm: number;
  /** Number of walls, planes or strokes that share the load. */
  readonly count: number;
  /** Ends of the narrowest wall or stroke, or outer ends of the first and last stroke. */
  readonly ends: Chord;
  /** Distance of its middle from the line of pull, in mm. */
  readonly offLineMm: number;
  /** The load in N at which it breaks is strength (MPa) × thickness (mm) × this (mm). */
  readonly effectiveMm: number;
}

/** The pull on a freely hanging tag, along the line from its centre of mass through its opening. */
export interface Pull {
  /** The part of the piece that contains the opening. */
  readonly island: Region;
  /** The same with fewer points, for searches over all of it. */
  readonly outlines: Region;
  readonly hanger: PlacedHanger;
  readonly centre: Point;
  /** Unit vectors: `up` towards what it hangs from, `right` across. */
  readonly up: Point;
  readonly right: Point;
  /** Distance from the opening to the centre of mass, in mm. */
  readonly lengthMm: number;
}
