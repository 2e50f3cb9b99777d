/** Parts of a piece that a glued piece hides in a way that spoils the look. */

import { difference } from '../../geometry/clipper.ts';
import { area, contains, ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { mm2 } from '../../core/figures.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { pointsAlong } from './points-along.ts';
import { nameForMessage, isLettering, isMadeFromSame } from './origin.ts';
import { areaOfAll, beyondAHair, overlapCentre, overlapsOf, swallowedShare } from './overlap.ts';
import { perRegion } from './per-region.ts';
import { perRegionPair } from './per-region-pair.ts';

export interface Hiding {
  readonly isSevere: boolean;
  readonly point: Point;
  readonly message: string;
}

/**
 * An ornament is spoiled once more than this share of it is hidden and the rest still shows; fields and borders that
 * lettering is glued onto keep more than that visible (our own judgement).
 */
const mostlyShare = 2 / 3;

/** Marks of `under` that the piece on top cuts short. */
export function hiddenMarks(piece: Piece, under: Piece, made: Tag['made']): Hiding[] {
  return under.marks.flatMap((mark): Hiding[] => {
    // A mark drawn from the same shape belongs to the piece: a placement line, a halo, a shadow.
    if (isMadeFromSame(mark.shape, piece, made)) return [];
    const overlaps = overlapsOf(mark.region, piece.region);
    const [largest] = overlaps;
    if (!largest) return [];
    const share = areaOfAll(overlaps) / area(mark.region);
    const isWhole = share > swallowedShare;
    const letters = isLettering(mark.shape);
    const what = `${nameForMessage(mark.shape) ?? 'a mark'} on “${under.title}”`;
    if (isWhole && !letters) return [];
    if (isWhole) {
      const message = `“${piece.title}” covers all of ${what}. For an assembly mark, that is fine.`;
      return [{ isSevere: false, point: overlapCentre(largest), message }];
    }
    const isOrnament = share <= mostlyShare || mark.operation === 'score' || goesRound(mark.region, piece.region);
    if (!letters && isOrnament) return [];
    const percent = Math.round(100 * share);
    return [
      { isSevere: true, point: overlapCentre(largest), message: `“${piece.title}” covers ${percent} % of ${what}.` },
    ];
  });
}

/** Whether the whole piece lies within the outer edge of a mark: a field or a rim that it is set in. */
const goesRound = perRegionPair((mark, piece): boolean => {
  const outers = mark.filter((ring) => ringArea(ring) > 0);
  return difference(piece, [outers]).length === 0;
});

/** Openings of `under` that the piece covers wholly or in part. Spanning one, as a name spans a hoop, is intended. */
export function hiddenOpenings(piece: Piece, under: Piece): Hiding[] {
  const found = openingsOf(under.region)
    // A covered hanger opening is reported by `hole-blocked`.
    .filter((opening) => !under.hangers.some(({ centre }) => contains(opening, centre)))
    .filter((opening, _, all) => !isOfPattern(opening, all))
    .map((opening) => covered(opening, piece.region))
    .filter((each) => each !== undefined);
  const whole = found.filter(({ isWhole }) => isWhole);
  const partly = found.filter(({ isWhole }) => !isWhole);
  return [
    ...hidingsOf(partly, `“${piece.title}” reaches into`, under),
    ...hidingsOf(whole, `“${piece.title}” covers`, under),
  ];
}

/**
 * This many openings of a size are a pattern, such as a lattice, that continues under glued pieces (our own judgement).
 */
const patternCount = 6;
const patternSlack = 0.1;

function isOfPattern(opening: Region, all: readonly Region[]): boolean {
  const size = area(opening);
  return all.filter((other) => Math.abs(area(other) - size) < patternSlack * size).length >= patternCount;
}

function hidingsOf(found: readonly CoveredArea[], words: string, under: Piece): Hiding[] {
  if (found.length === 0) return [];
  const largest = found.reduce((a, b) => (b.area > a.area ? b : a));
  const what = found.length === 1 ? 'an opening' : `${found.length} openings`;
  const most = found.length === 1 ? '' : 'up to ';
  const message = `${words} ${what} of “${under.title}” (${most}${mm2(largest.area, 1)}).`;
  return [{ isSevere: true, point: largest.point, message }];
}

interface CoveredArea {
  readonly isWhole: boolean;
  /** Covered area, in mm². */
  readonly area: number;
  readonly point: Point;
}

const covered = perRegionPair((opening, piece): CoveredArea | undefined => {
  const overlaps = overlapsOf(opening, piece);
  const [largest] = overlaps;
  if (!largest) return undefined;
  const edge = pointsAlong(opening[0]!, 0.5);
  const isOnEdge = (point: Point) => contains(piece, point);
  // A part inside the opening that is nowhere on its edge is not held at all; `off-backing` reports that.
  if (!edge.some(isOnEdge)) return undefined;
  const isWhole = areaOfAll(overlaps) > swallowedShare * area(opening);
  // A piece that frames an opening, as a window frames a larger pocket, does not show its edge.
  if (!isWhole && (edge.every(isOnEdge) || isSpanned(opening, piece))) return undefined;
  return { isWhole, area: areaOfAll(overlaps), point: overlapCentre(largest) };
});

/** Whether the piece crosses an opening larger than itself and splits it into more parts. */
function isSpanned(opening: Region, piece: Region): boolean {
  const across = partsOf(piece).filter((part) => overlapsOf(opening, part).length > 0);
  return area(opening) > area(across.flat()) && beyondAHair(difference(opening, [piece])).length > 1;
}

/** Each hole of a region as an area of its own. */
const openingsOf = perRegion((region): readonly Region[] =>
  region.filter((ring) => ringArea(ring) < 0).map((ring): Region => [[...ring].reverse()]),
);
