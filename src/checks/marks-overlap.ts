/** Marks of one piece that lie on top of each other: an engraved name across a leaf, or across a score line. */

import { offset } from '../geometry/clipper.ts';
import { stretchesInside } from '../geometry/length-inside.ts';
import type { InsideStretch } from '../geometry/length-inside.ts';
import { area } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { Shape } from '../spec/model.ts';
import { mm, mm2 } from '../core/figures.ts';
import type { Mark, Piece, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { calledOf, isLettering, originOf } from './origin.ts';
import {
  areaOfAll,
  beyondAHair,
  doBoxesMeet,
  hairMm,
  middleOf,
  overlapsOf,
  swallowedShare,
  touchLength,
  touchesIn,
  touchesOf,
  uncovered,
} from './overlap.ts';
import { perRegion } from './per-region.ts';
import { remembered } from './remembered.ts';

/** Lines that run through engraving over less than this in all, in mm, are not noticed (our own judgement). */
const seenMm = 1;

export const marksOverlap: Check = (tag) => tag.pieces.flatMap((piece) => overlapsOn(piece, tag));

/** One finding per pair, at the mark that is made later. */
function overlapsOn(piece: Piece, { pieces }: Tag): Finding[] {
  const { marks } = piece;
  const covers = pieces.filter(({ glueTo }) => glueTo === piece.id).map(({ region }) => region);
  return marks.flatMap((later, index) =>
    marks.slice(0, index).flatMap((earlier): Finding[] => {
      const told = collisionOf(earlier, later, covers);
      if (!told) return [];
      const { point, message, isGrave } = told;
      const severity = isGrave ? 'warning' : 'info';
      return [{ code: 'marks-overlap', severity, piece: piece.id, path: later.path, points: [point], message }];
    }),
  );
}

interface Collision {
  readonly point: Point;
  readonly message: string;
  readonly isGrave: boolean;
}

/** Engraving comes before scoring, so of two kinds the later one is the line. */
function collisionOf(earlier: Mark, later: Mark, covers: readonly Region[]): Collision | undefined {
  if (later.operation === 'engrave') return bothEngraved(earlier, later, covers);
  // A line drawn from the same shape belongs to it: an edge, an inline, a shadow.
  if (originOf(earlier.shape) === originOf(later.shape)) return undefined;
  if (earlier.operation === 'engrave') return crossed(earlier, later, covers);
  // Lines cross each other in many drawings; across letters they are in the way.
  if (isLettering(earlier.shape)) return crossed(earlier, later, covers);
  return isLettering(later.shape) ? crossed(later, earlier, covers) : undefined;
}

function bothEngraved(earlier: Mark, later: Mark, covers: readonly Region[]): Collision | undefined {
  const all = overlapsOf(earlier.region, later.region);
  const seen = covers.length === 0 ? all : all.flatMap(({ region }) => beyondAHair(uncovered(region, covers)));
  const [largest, ...others] = seen.toSorted((a, b) => b.area - a.area);
  if (!largest)
    return isLettering(earlier.shape) || isLettering(later.shape) ? touching(earlier, later, covers) : undefined;
  const point = middleOf(largest);
  const [inner, outer] = area(later.region) <= area(earlier.region) ? [later, earlier] : [earlier, later];
  if (areaOfAll(all) > swallowedShare * area(inner.region)) {
    const message = `${begun(inner.shape)} lies entirely inside ${named(outer.shape)}: dark on dark, it will not be seen.`;
    return { point, message, isGrave: true };
  }
  const figures = `${mm2(areaOfAll(seen), 1)}${others.length > 0 ? ` in ${others.length + 1} places` : ''}`;
  const message = `${begun(later.shape)} lies over ${named(earlier.shape)} (${figures}): engraved together, they merge.`;
  return { point, message, isGrave: isLettering(earlier.shape) || isLettering(later.shape) };
}

/** Stricter than for ornaments: a letter that touches a border is no longer that letter. */
function touching(earlier: Mark, later: Mark, covers: readonly Region[]): Collision | undefined {
  const all = touchesOf(earlier.region, later.region);
  const seen = covers.length === 0 ? all : all.flatMap(({ region }) => touchesIn(uncovered(region, covers)));
  const [longest, ...others] = seen.toSorted((a, b) => touchLength(b) - touchLength(a));
  if (!longest) return undefined;
  const length = seen.reduce((sum, each) => sum + touchLength(each), 0);
  const figures = `${mm(length, 1)}${others.length > 0 ? ` in ${others.length + 1} places` : ''}`;
  const message = `${begun(later.shape)} touches ${named(earlier.shape)} (${figures}): engraved together, they merge.`;
  return { point: middleOf(longest), message, isGrave: true };
}

function crossed(under: Mark, line: Mark, covers: readonly Region[]): Collision | undefined {
  const within = linesWithin(line.region, under.region);
  if (lengthOf(within) <= seenMm) return undefined;
  const seen = covers.length === 0 ? within : runsInside(line.region, uncovered(deepOf(under.region), covers));
  const length = lengthOf(seen);
  if (length <= seenMm) return undefined;
  const longest = seen.reduce((a, b) => (b.length > a.length ? b : a));
  const figures = `${mm(length, 1)}${seen.length > 1 ? ` in ${seen.length} places` : ''}`;
  const what = under.operation === 'engrave' ? 'the engraving of' : 'the letters of';
  const message = `The score line of ${named(line.shape)} runs through ${what} ${named(under.shape)} (${figures}).`;
  return { point: longest.middle, message, isGrave: true };
}

const lengthOf = (stretches: readonly InsideStretch[]): number =>
  stretches.reduce((sum, { length }) => sum + length, 0);

const linesWithin = remembered((line, under): readonly InsideStretch[] =>
  doBoxesMeet(line, under) ? runsInside(line, deepOf(under)) : [],
);

const runsInside = remembered(stretchesInside);

/** A line along the edge of an engraved area belongs to it; only what runs deeper counts. */
const thinnedBy = perRegion((region, hair) => offset(region, -hair / 2));
const deepOf = (region: Region): Region => thinnedBy(region, hairMm);

const named = (shape: Shape): string => calledOf(shape) ?? 'another mark';
const begun = (shape: Shape): string => calledOf(shape) ?? 'This mark';
