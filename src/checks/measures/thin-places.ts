/** The necks of pieces that are too narrow, and their free ends, found once for all the checks that use them. */

import { findNarrow } from '../../geometry/necks.ts';
import type { Neck, Tip } from '../../geometry/necks.ts';
import { boundsOf, perimeter } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { FaultPlace } from '../../core/issue.ts';
import type { Stock } from '../../spec/model/workshop-model.ts';
import type { AskedWidth } from '../../tag/asked-width.ts';
import type { Piece, PlacedHanger } from '../../tag/tag.ts';
import { distanceTo, hangerAt } from './blame.ts';
import { mm } from '../../core/figures.ts';
import { measuredOn } from '../../spec/model/measured-values.ts';
import { perRegion } from './per-region.ts';
import { slackOf } from './slack.ts';
import { groupedBy } from '../../core/grouped.ts';

export interface ThinPlace extends Neck {
  /** Its least allowed width, in mm. */
  readonly minimum: number;
}

/** Finding necks is by far the most expensive check. */
const narrowOf = perRegion(findNarrow);

/** The end of a neck is on something drawn that wide if it lies this near to its outline, in mm. */
const onOutlineMm = 0.05;

/**
 * Least width of a piece, in mm. One that is glued onto something is carried by it, and only has to survive handling;
 * with a hanger it bears a load all the same.
 */
export function limitOf({ glueTo, hangers }: Piece, { minWeb, leastWeb }: Stock): number {
  return glueTo === undefined || hangers.length > 0 ? minWeb : leastWeb;
}

/** What is carried all over breaks only in the hand, and by its limit nobody means hundredths: as a share of it (our own judgement). */
const carriedSlack = 0.05;

function slackIn({ glueTo }: Piece, limit: number): number {
  return glueTo === undefined ? slackOf(limit) : Math.max(carriedSlack * limit, slackOf(limit));
}

/** What a width lacks of its limit at most to be worth a look and no more: beam and sheet differ by as much from one day to the next (rule of thumb, no source). */
const hardlyShare = 0.05;

/** Of places that are too narrow, the narrowest first. */
export function severityOf([narrowest]: readonly ThinPlace[]): 'info' | 'warning' {
  const { width, minimum } = narrowest!;
  return width >= (1 - hardlyShare) * minimum ? 'info' : 'warning';
}

/** The necks of a piece that are too narrow, the narrowest first: those at the given hanger, or those at none. */
export function thinPlaces(piece: Piece, stock: Stock, where: PlacedHanger | 'elsewhere'): ThinPlace[] {
  const wantedHanger = where === 'elsewhere' ? undefined : where;
  const limit = limitOf(piece, stock);
  const asked = intendedWidths(piece, limit);
  return narrowOf(piece.region, limit)
    .necks.filter((neck) => hangerAt(piece, neck.ends) === wantedHanger)
    .map((neck) => {
      const width = askedWidthOf(neck, asked);
      return { ...neck, minimum: width === undefined ? limit : Math.max(width, stock.leastWeb) };
    })
    .filter(({ width, minimum }) => width < minimum - slackIn(piece, minimum));
}

/** The free ends of a piece, as far as they are narrower than it may be. */
export function tipsOf(piece: Piece, stock: Stock): readonly Tip[] {
  return narrowOf(piece.region, limitOf(piece, stock)).tips;
}

/** Widths below the limit that the spec asks for. */
interface IntendedWidths {
  readonly drawn: readonly AskedWidth[];
  readonly walls: readonly { readonly opening: Region; readonly lug: Region; readonly wall: number }[];
  /** Total length in mm over which a piece may be that narrow. */
  readonly longest: number;
}

function intendedWidths({ asked = [], hangers }: Piece, limit: number): IntendedWidths {
  const drawn = asked.filter(({ width }) => width < limit);
  const walls = hangers.flatMap(({ opening, lug, wall }) =>
    lug && wall !== undefined && wall < limit ? [{ opening, lug, wall }] : [],
  );
  const lengths = [
    ...drawn.map(({ region, width }) => perimeter(region) / 2 + width),
    ...walls.map(({ lug, wall }) => perimeter(lug) + wall),
  ];
  return { drawn, walls, longest: lengths.reduce((sum, length) => sum + length, 0) };
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

/**
 * The width that the spec asks for at a neck, if it accounts for the whole neck: a web of strokes is not intended just
 * because a strap is part of it.
 */
function askedWidthOf({ ends, length }: Neck, { drawn, walls, longest }: IntendedWidths): number | undefined {
  if (length > longest) return undefined;
  // Straps and bridges that overlap are wider together: then each end is on one of them.
  const [from, to] = ends.map((end) => drawn.filter(({ region }) => isOn(region, end))) as [AskedWidth[], AskedWidth[]];
  const strips = from.length > 0 && to.length > 0 ? [...from, ...to] : [];
  const rings = walls.filter(({ opening, lug }) =>
    [opening, lug].every((outline) => ends.some((end) => isOn(outline, end))),
  );
  const widths = [...strips.map(({ width }) => width), ...rings.map(({ wall }) => wall)];
  return widths.length > 0 ? Math.min(...widths) : undefined;
}

/** Groups of places with the same limit, the one with the narrowest place first. */
export function byMinimum(places: readonly ThinPlace[]): readonly (readonly ThinPlace[])[] {
  return [...groupedBy(places, ({ minimum }) => minimum).values()];
}

/** The place of a neck in a finding. */
export function faultPlaceOf({ ends, width }: Neck): FaultPlace {
  return { points: ends, width };
}

/** The limit that several places fall short of, with the day on which it was measured, if it was. */
export function minimumDated(minimum: number, { minWeb, measuredOn: days }: Stock): string {
  const isMeasured = minimum === minWeb && days?.min_web !== undefined;
  return `${mm(minimum)}${isMeasured ? `, the minimum${measuredOn(days.min_web).slice(1)}` : ''}`;
}

/** The limit, with the day on which it was measured, if it was. */
export function minimumNote(minimum: number, { minWeb, measuredOn: days }: Stock): string {
  return `minimum ${mm(minimum)}${minimum === minWeb ? measuredOn(days?.min_web) : ''}`;
}
