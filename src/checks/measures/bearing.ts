/** The support of a glued piece: how much of each part lies on material, and how far it reaches beyond the edge. */

import { difference, intersection, normalise } from '../../geometry/clipper.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { area, ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { piecesBelow } from '../../tag/pieces-below.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { pointsAlong } from './points-along.ts';
import { distanceTo } from './blame.ts';
import { isCrossed } from './crossed.ts';
import { doBoxesMeet } from './overlap.ts';
import { perRegionPair } from './per-region-pair.ts';

/** Tolerance for simplifying parts that do not lie wholly on the piece below, in mm. */
const toleranceMm = 0.005;

export interface Bearing {
  /** A connected part of the glued piece. */
  readonly part: Region;
  /** Area that lies on material, as a share of the part's own. */
  readonly share: number;
  /** Whether more than half of the part lies within the outer edge of the piece below, openings included. */
  readonly isWithin: boolean;
  /**
   * Largest distance by which the part overhangs the outer edge of the piece below, in mm, and where; 0 if it does not.
   */
  readonly overhang: number;
  readonly at: Point;
}

/** A part of which less than this share lies on material cannot be glued (our own judgement). */
const heldShare = 0.05;

export const isUnheld = ({ share }: Bearing): boolean => share < heldShare;

/** Of the pieces below the one that a piece is glued to, the nearest on which all of it lies: an opening above that is filled by it. */
export function floorOf(piece: Piece, { pieces }: Pick<Tag, 'pieces'>): Piece | undefined {
  const [, ...lower] = piecesBelow(piece, pieces);
  return lower.find((each) => bearingsOf(piece.region, each.region).every(({ share }) => share > wholeShare));
}

/** A part of which this share lies on material lies on it whole. */
const wholeShare = 0.98;

/** The bearing of each part of a glued piece, in the order of `partsOf`. */
export const bearingsOf = perRegionPair((glued, carrier): readonly Bearing[] => {
  const edges = new EdgeIndex(carrier);
  const holes = carrier.filter((ring) => ringArea(ring) < 0);
  let outline: Region | undefined;
  return partsOf(glued).map((part) => {
    const at = part[0]![0]!;
    const liesWithin = edges.contains(at) && !part.some((ring) => isCrossed(ring, edges));
    if (liesWithin && !holes.some((hole) => doBoxesMeet([hole], part)))
      return { part, share: 1, isWithin: true, overhang: 0, at };
    outline ??= normalise(carrier.filter((ring) => ringArea(ring) > 0));
    return bearingOf(simplified(part, toleranceMm), part, carrier, outline);
  });
});

function bearingOf(simple: Region, part: Region, carrier: Region, outline: Region): Bearing {
  const share = area(intersection(simple, carrier)) / area(simple);
  const beyond = difference(simple, [outline]);
  let overhang = 0;
  let at = part[0]![0]!;
  for (const point of beyond.flatMap((ring) => pointsAlong(ring, 0))) {
    const distance = distanceTo(outline, point);
    if (distance <= overhang) continue;
    overhang = distance;
    at = point;
  }
  return { part, share, isWithin: area(beyond) < 0.5 * area(simple), overhang, at };
}
