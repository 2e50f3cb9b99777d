/** The losses of a letter that is grown or thinned: white that fills in, strokes that disappear. */

import { transform, translation } from '../../geometry/affine.ts';
import { offset, union } from '../../geometry/clipper.ts';
import { area, boundsOf, contains, perimeter, ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import type { Letter } from '../../tag/lettering/letters.ts';
import { hairlinesOf, hairlineStrokes } from '../../tag/overlap/hairlines.ts';

export interface LetterLoss {
  /** Letters with the same number have the same outline. */
  readonly like: number;
  /** Lower left corner of the box of the letter. */
  readonly at: Point;
  readonly counters: { readonly drawn: number; readonly open: number };
  /** Share of its ink in strokes too thin to survive. */
  readonly gone: number;
  /** Number of parts more than the font draws. */
  readonly fallen: number;
  /** Thickness of its strokes in mm: that of a long bar with the same area and perimeter. */
  readonly stem: number;
  /** Simplified to within `outlineShare` of the x-height. */
  readonly outline: Region;
  /** The outline grown, so that it bounds the white that is left. */
  readonly grown: Region;
}

/** In mm. */
export interface LetterChange {
  /** Radii of discs: white survives only where the first fits, and strokes only where the second fits. */
  readonly grow: number;
  readonly thin: number;
  /** Width to which hairlines are thickened before that; 0 if they are as drawn. */
  readonly hairline: number;
}

/** Share of the x-height that the outlines compared may be off by: far below what any reader sees. */
const outlineShare = 0.01;

/** A hole smaller than this share of the x-height squared is a flaw of the font, or an ornament. */
const counterShare = 0.004;

/** A counter is closed if less than this share of it is left, or less than a speck. */
const openShare = 0.06;

/** The loss of each letter; equal outlines are examined once, so a long text costs no more than its alphabet. */
export function letterLosses(letters: readonly Letter[], xHeight: number, change: LetterChange): LetterLoss[] {
  const known = new Map<string, LetterLoss>();
  return letters.map(({ text, region }) => {
    const { minX, minY, maxX, maxY } = boundsOf(region)!;
    const size = [maxX - minX, maxY - minY].map((each) => Math.round((each / xHeight) * 1e4));
    const points = region.map((ring) => ring.length);
    const key = [text, ...size, ...points].join(' ');
    const before = known.get(key);
    const at = { x: minX, y: minY };
    if (before) {
      const shift = translation(minX - before.at.x, minY - before.at.y);
      const { outline, grown } = before;
      return { ...before, at, outline: transform(outline, shift), grown: transform(grown, shift) };
    }
    const loss = { ...lossOf(region, xHeight, change), like: known.size, at };
    known.set(key, loss);
    return loss;
  });
}

function lossOf(region: Region, xHeight: number, change: LetterChange): Omit<LetterLoss, 'like' | 'at'> {
  const { grow, thin, hairline } = change;
  const tolerance = outlineShare * xHeight;
  const outline = simplified(region, tolerance);
  // Less is lost when the outline is simplified.
  const stout = hairline > tolerance ? thickened(outline, hairline) : outline;
  const ink = area(stout);
  const grown = grow > 0 ? offset(stout, grow, 'round', tolerance) : stout;
  const core = thin > 0 ? offset(stout, -thin, 'round', tolerance) : stout;
  const left = thin > 0 ? offset(core, thin, 'round', tolerance) : stout;
  const counters = outline.filter((ring) => -ringArea(ring) > counterShare * xHeight * xHeight);
  const holes = grown.filter((ring) => ringArea(ring) < 0);
  return {
    counters: {
      drawn: counters.length,
      open: grow > 0 || hairline > 0 ? counters.filter((counter) => isOpen(counter, holes)).length : counters.length,
    },
    gone: ink > 0 ? Math.max(0, ink - area(left)) / ink : 0,
    fallen: thin > 0 ? Math.max(0, partsOf(core).length - partsOf(stout).length) : 0,
    stem: (2 * ink) / Math.max(perimeter(stout), 1e-9),
    outline,
    grown,
  };
}

function thickened(outline: Region, width: number): Region {
  const strokes = hairlineStrokes(hairlinesOf(outline, width));
  return strokes.length > 0 ? union([outline, strokes]) : outline;
}

function isOpen(counter: Ring, holes: readonly Ring[]): boolean {
  const least = -openShare * ringArea(counter);
  return holes.some((hole) => -ringArea(hole) > least && contains([counter], hole[0]!));
}
