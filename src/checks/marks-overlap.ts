/** Marks of one piece that lie on top of each other: an engraved name across a leaf, or across a score line. */

import { offset } from '../geometry/clipper.ts';
import { stretchesInside } from '../geometry/length-inside.ts';
import type { InsideStretch } from '../geometry/length-inside.ts';
import { area } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { mm, mm2 } from '../core/figures.ts';
import type { Mark, Piece, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { isLettering, isMadeWith, nameForMessage, originOf } from './measures/origin.ts';
import {
  areaOfAll,
  beyondAHair,
  doBoxesMeet,
  hairMm,
  overlapCentre,
  overlapsOf,
  swallowedShare,
  touchLength,
  touchesIn,
  touchesOf,
  uncovered,
} from './measures/overlap.ts';
import { narrowGap, nearMm, roomLeft } from './measures/near.ts';
import { perRegion } from './measures/per-region.ts';
import { perRegionPair } from './measures/per-region-pair.ts';

/** Lines that run through engraving over less than this in all, in mm, are not noticed (our own judgement). */
const seenMm = 1;

export const marksOverlap: Check = (tag) => tag.pieces.flatMap((piece) => overlapsOn(piece, tag));

/** One finding per pair, at the mark that is made later. */
function overlapsOn(piece: Piece, { pieces }: Tag): Finding[] {
  const { marks } = piece;
  const covers = pieces.filter(({ glueTo }) => glueTo === piece.id).map(({ region }) => region);
  return marks.flatMap((later, index) =>
    marks.slice(0, index).flatMap((earlier): Finding[] => {
      const collision = collisionOf(earlier, later, covers);
      if (!collision) return [];
      const { point, message, isSevere, amount } = collision;
      const severity = isSevere ? 'warning' : 'info';
      return [{ code: 'marks-overlap', severity, piece: piece.id, path: later.path, points: [point], amount, message }];
    }),
  );
}

interface Collision {
  readonly point: Point;
  readonly message: string;
  readonly isSevere: boolean;
  /** Area or length in common; where they only are too near, what is missing of the gap. */
  readonly amount: number;
}

/** Engraving comes before scoring, so of two kinds the later one is the line. */
function collisionOf(earlier: Mark, later: Mark, covers: readonly Region[]): Collision | undefined {
  if (later.operation === 'engrave') return bothEngraved(earlier, later, covers);
  // A line drawn from the same shape belongs to it: an edge, an inline, a shadow.
  if (originOf(earlier.shape) === originOf(later.shape)) return undefined;
  if (earlier.operation === 'engrave') return lineCollision(earlier, later, covers);
  // Lines cross each other in many drawings; across letters they are in the way.
  if (isLettering(earlier.shape)) return lineCollision(earlier, later, covers);
  return isLettering(later.shape) ? lineCollision(later, earlier, covers) : undefined;
}

function bothEngraved(earlier: Mark, later: Mark, covers: readonly Region[]): Collision | undefined {
  const all = overlapsOf(earlier.region, later.region);
  const seen = covers.length === 0 ? all : all.flatMap(({ region }) => beyondAHair(uncovered(region, covers)));
  const [largest, ...others] = seen.toSorted((a, b) => b.area - a.area);
  if (!largest)
    return isLettering(earlier.shape) || isLettering(later.shape) ? touching(earlier, later, covers) : undefined;
  const point = overlapCentre(largest);
  const [inner, outer] = area(later.region) <= area(earlier.region) ? [later, earlier] : [earlier, later];
  if (areaOfAll(all) > swallowedShare * area(inner.region)) {
    const message = `${nameAtStart(inner.shape)} lies entirely inside ${nameInSentence(outer.shape)}: dark on dark, it will not be seen.`;
    return { point, message, isSevere: true, amount: areaOfAll(seen) };
  }
  const figures = `${mm2(areaOfAll(seen), 1)}${others.length > 0 ? ` in ${others.length + 1} places` : ''}`;
  const message = `${nameAtStart(later.shape)} lies over ${nameInSentence(earlier.shape)} (${figures}): engraved together, they merge.`;
  return { point, message, isSevere: isLettering(earlier.shape) || isLettering(later.shape), amount: areaOfAll(seen) };
}

/** Stricter than for ornaments: a letter that touches a border is no longer that letter. */
function touching(earlier: Mark, later: Mark, covers: readonly Region[]): Collision | undefined {
  const all = touchesOf(earlier.region, later.region);
  const seen = covers.length === 0 ? all : all.flatMap(({ region }) => touchesIn(uncovered(region, covers)));
  const [longest, ...others] = seen.toSorted((a, b) => touchLength(b) - touchLength(a));
  if (!longest) return all.length === 0 && covers.length === 0 ? nearly(earlier, later) : undefined;
  const length = seen.reduce((sum, each) => sum + touchLength(each), 0);
  const figures = `${mm(length, 1)}${others.length > 0 ? ` in ${others.length + 1} places` : ''}`;
  const message = `${nameAtStart(later.shape)} touches ${nameInSentence(earlier.shape)} (${figures}): engraved together, they merge.`;
  // Next to any overlap, a touch is nothing.
  return { point: overlapCentre(longest), message, isSevere: true, amount: 0 };
}

/** Engraved so near to each other that they look as if they touched, with no overlap. */
function nearly(earlier: Mark, later: Mark): Collision | undefined {
  if (isMadeWith(earlier.shape, later.shape) || isMadeWith(later.shape, earlier.shape)) return undefined;
  const gap = narrowGap(later.region, earlier.region);
  if (!gap) return undefined;
  const message = `${roomLeft(gap.width)} between ${nameInSentence(later.shape)} and ${nameInSentence(earlier.shape)}: it looks like a mistake; minimum ${mm(nearMm)}.`;
  return { point: gap.point, message, isSevere: false, amount: nearMm - gap.width };
}

function lineCollision(under: Mark, line: Mark, covers: readonly Region[]): Collision | undefined {
  const within = linesWithin(line.region, under.region);
  if (totalLength(within) <= seenMm) return undefined;
  const seen = covers.length === 0 ? within : runsInside(line.region, uncovered(deepParts(under.region), covers));
  const length = totalLength(seen);
  if (length <= seenMm) return undefined;
  const longest = seen.reduce((a, b) => (b.length > a.length ? b : a));
  const figures = `${mm(length, 1)}${seen.length > 1 ? ` in ${seen.length} places` : ''}`;
  const what = under.operation === 'engrave' ? 'the engraving of' : 'the letters of';
  const message = `The score line of ${nameInSentence(line.shape)} runs through ${what} ${nameInSentence(under.shape)} (${figures}).`;
  return { point: longest.middle, message, isSevere: true, amount: length };
}

const totalLength = (stretches: readonly InsideStretch[]): number =>
  stretches.reduce((sum, { length }) => sum + length, 0);

const linesWithin = perRegionPair((line, under): readonly InsideStretch[] =>
  doBoxesMeet(line, under) ? runsInside(line, deepParts(under)) : [],
);

const runsInside = perRegionPair(stretchesInside);

/** A line along the edge of an engraved area belongs to it; only what runs deeper counts. */
const thinnedBy = perRegion((region, hair) => offset(region, -hair / 2));
const deepParts = (region: Region): Region => thinnedBy(region, hairMm);

const nameInSentence = (shape: Shape): string => nameForMessage(shape) ?? 'another mark';
const nameAtStart = (shape: Shape): string => nameForMessage(shape) ?? 'This mark';
