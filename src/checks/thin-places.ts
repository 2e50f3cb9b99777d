/** The necks of pieces that are narrower than they should be, and their points, found once for all the checks that look at them. */

import { findNarrow } from '../geometry/necks.ts';
import type { Neck, Tip } from '../geometry/necks.ts';
import { boundsOf, perimeter } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { FaultPlace } from '../issue.ts';
import type { Stock } from '../spec/model.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { distanceTo, hangerAt } from './blame.ts';
import { mm } from '../spec/figures.ts';
import { perRegion } from './per-region.ts';

export interface ThinPlace extends Neck {
  /** What its width should be at least, in mm. */
  readonly minimum: number;
}

/** Finding necks is the dearest check by far. */
const narrowOf = perRegion(findNarrow);

/** The end of a neck is on what was drawn so wide when it lies this near to its outline, in mm. */
const onOutlineMm = 0.05;

/** A width counts as large enough that lacks no more than this, in mm, or 2 % if that is less: as for any neck. */
const slackMm = 0.01;

/**
 * How narrow a piece may be, in mm: one that is glued on something is carried by it, and need only survive handling. What hangs
 * bears a load all the same.
 */
function limitOf({ glueTo, hangers }: Piece, { minWeb, leastWeb }: Stock): number {
  return glueTo === undefined || hangers.length > 0 ? minWeb : leastWeb;
}

/** Necks of a piece narrower than they should be, the narrowest first: those at one of its hangers, or those at none. */
export function thinPlaces(piece: Piece, stock: Stock, where: PlacedHanger | 'elsewhere'): ThinPlace[] {
  const wantedHanger = where === 'elsewhere' ? undefined : where;
  const limit = limitOf(piece, stock);
  const asked = askedOf(piece, limit);
  return narrowOf(piece.region, limit)
    .necks.filter((neck) => hangerAt(piece, neck.ends) === wantedHanger)
    .map((neck) => {
      const width = askedWidthOf(neck, asked);
      return { ...neck, minimum: width === undefined ? limit : Math.max(width, stock.leastWeb) };
    })
    .filter(({ width, minimum }) => width < minimum - Math.min(slackMm, minimum / 50));
}

/** Free ends of a piece, as far as they are narrower than it may be. */
export function tipsOf(piece: Piece, stock: Stock): readonly Tip[] {
  return narrowOf(piece.region, limitOf(piece, stock)).tips;
}

/** A width asked for that is less than the limit, and how to tell that a neck is what was asked for. */
interface Meant {
  readonly width: number;
  /** Length in mm over which it may be that narrow. */
  readonly length: number;
  readonly has: (ends: Neck['ends']) => boolean;
}

function askedOf({ asked = [], hangers }: Piece, limit: number): Meant[] {
  const drawn = asked.map(({ region, width }): Meant => {
    return { width, length: perimeter(region) / 2, has: (ends) => ends.every((end) => isOn(region, end)) };
  });
  const walls = hangers.flatMap(({ opening, lug, wall }): Meant[] =>
    lug && wall !== undefined
      ? [
          {
            width: wall,
            length: perimeter(lug),
            has: (ends) => ends.some((end) => isOn(opening, end)) && ends.some((end) => isOn(lug, end)),
          },
        ]
      : [],
  );
  return [...drawn, ...walls].filter(({ width }) => width < limit);
}

function isOn(outline: Region, point: Point): boolean {
  const { minX, minY, maxX, maxY } = boundsOf(outline)!;
  const isNear =
    point.x > minX - onOutlineMm &&
    point.x < maxX + onOutlineMm &&
    point.y > minY - onOutlineMm &&
    point.y < maxY + onOutlineMm;
  return isNear && distanceTo(outline, point) < onOutlineMm;
}

/** What is asked for where a neck is, if that is all there is to it: a web of strokes is not meant because a strap is in it. */
function askedWidthOf({ ends, length }: Neck, asked: readonly Meant[]): number | undefined {
  const meant = asked.filter(({ has }) => has(ends));
  if (meant.length === 0) return undefined;
  const longest = asked.reduce((sum, each) => sum + each.length + each.width, 0);
  return length > longest ? undefined : Math.min(...meant.map(({ width }) => width));
}

/** Places of one limit together, the narrowest of all first. */
export function byMinimum(places: readonly ThinPlace[]): readonly (readonly ThinPlace[])[] {
  const groups = new Map<number, ThinPlace[]>();
  for (const place of places) {
    const group = groups.get(place.minimum);
    if (group) group.push(place);
    else groups.set(place.minimum, [place]);
  }
  return [...groups.values()];
}

/** Where a neck is seen. */
export function placeOf({ ends, width }: Neck): FaultPlace {
  return { points: ends, width };
}

export function atLeast(minimum: number): string {
  return `minimum ${mm(minimum)}`;
}
