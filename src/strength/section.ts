/** What a section is, and how a tag is pulled. */

import type { Point, Region } from '../geometry/types.ts';
import type { PlacedHanger } from '../tag/tag.ts';
import type { Chord } from './parting.ts';

/**
 * - `wall`: both walls beside the opening, torn apart across the pull.
 * - `tear-out`: the opening torn out through the material ahead of it, by shear.
 * - `strap`: the strip ahead of the opening, bent until it breaks.
 * - `attachment`: where the ring is joined to the body.
 * - `neck`: the weakest place that by itself joins the hanger to most of the piece.
 * - `strokes`: two or more strokes side by side, cut straight across the pull.
 */
export type SectionKind = 'wall' | 'tear-out' | 'strap' | 'attachment' | 'neck' | 'strokes';

export interface Section {
  readonly what: SectionKind;
  /** Of the narrowest wall or stroke, mm. */
  readonly widthMm: number;
  /** Of all material that must break, mm: two walls, two planes of shear, all strokes. */
  readonly totalMm: number;
  /** How many walls, planes or strokes share the pull. */
  readonly count: number;
  /** Of the narrowest, or of the first and the last stroke. */
  readonly ends: Chord;
  /** Distance of its middle from the line of pull. */
  readonly offLineMm: number;
  /** Strength (MPa) × thickness (mm) × this (mm) is the pull in N at which it breaks. */
  readonly effectiveMm: number;
}

/** A tag that hangs freely is pulled along the line from its centre of mass through its opening. */
export interface Pull {
  /** The part of the piece that the opening is in. */
  readonly island: Region;
  /** The same with fewer points, for what looks at all of it. */
  readonly outlines: Region;
  readonly hanger: PlacedHanger;
  readonly centre: Point;
  /** Unit vectors: towards what it hangs from, and across. */
  readonly up: Point;
  readonly right: Point;
  /** From the opening to the centre of mass. */
  readonly lengthMm: number;
}
