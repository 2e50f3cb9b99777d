/** What has no room for its margin at the side where it is placed: it stays where the box round it has that margin. */

import { mm } from '../../core/figures.ts';
import type { Finding } from '../../core/issue.ts';
import { capitalised } from '../../core/names.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { boundsOf, contains, ringArea } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Place } from '../../spec/model/shape-model.ts';
import { isBeside } from '../../tag/shapes/place.ts';
import type { Mark, Piece, Source, Tag } from '../../tag/tag.ts';
import { distanceTo } from './blame.ts';
import { nameForMessage } from './origin.ts';
import { perRegion } from './per-region.ts';

/** A margin that is short by less than this, in mm, is not seen (our own judgement). */
const seenMm = 0.2;

/** Of the margin at its own sides, what is about that (our own judgement). */
const aboutShare = 0.9;

/** From the edge at its other sides it is to be so far, or as far as from its own if that is less (our own judgement). */
const otherSideMm = 1.5;

export function offMargin(piece: Piece, made: Tag['made']): Finding[] {
  const bodies = piece.sources.filter(({ use }) => use === 'body');
  const marks = piece.marks.filter(({ region }) => difference(region, [piece.body]).length === 0);
  return [...bodies, ...marks].flatMap((each) => offMarginOf(each, piece, made));
}

function offMarginOf(each: Source | Mark, piece: Piece, made: Tag['made']): Finding[] {
  const { region, area, shape, path } = each;
  const { place, fit, nudge } = shape.modifiers;
  if (!place || !area || fit || nudge || isBeside(place.at) || place.at === 'center') return [];
  // What stands on a line of its own stays on it.
  if ('evenly' in shape.generator) return [];
  const target = made.get(place.shape);
  if (place.margin === 0 || target?.lettering || place.part !== undefined) return [];
  const outline = outersOf(area.target);
  // Where a piece has a size of its own, what it is made of is scaled with its margins.
  const isScaled = 'use' in each && each.use === 'body' && piece.glueTo === undefined;
  const margin = place.margin * (isScaled ? widthOf(area.target) / widthOf(target?.region ?? area.target) : 1);
  if (difference(region, [offset(outline, seenMm - margin)]).length === 0) return [];
  const sides = sidesOf(place.at);
  const [first, ...others] = region
    .flat()
    .map((point) => ({ point, left: leftAt(point, outline) }))
    .filter(
      ({ point, left }) => left < Math.min(margin, otherSideMm) - seenMm || isNear(point, outline, sides, margin),
    );
  if (!first) return [];
  const { point, left } = others.reduce((least, each) => (each.left < least.left ? each : least), first);
  const what = capitalised(nameForMessage(shape) ?? 'this shape');
  const on = nameForMessage(place.shape) ?? 'what it is placed on';
  const isOut = left < -seenMm;
  const said = isOut
    ? `ends ${mm(-left)} beyond ${on}`
    : `comes as near as ${mm(Math.max(0, left))} to the edge of ${on}`;
  return [
    {
      code: 'sticks-out',
      severity: isOut ? 'warning' : 'info',
      piece: piece.id,
      path,
      points: [point],
      width: Math.abs(left),
      message: `${what} ${said}: at the ${place.at.replace('-', ' ')} there is no room for it with a margin of ${mm(margin)}.`,
    },
  ];
}

/** Directions to the sides at which it is placed. */
function sidesOf(at: Place['at']): Point[] {
  return [
    ...(at.includes('left') ? [{ x: -1, y: 0 }] : []),
    ...(at.includes('right') ? [{ x: 1, y: 0 }] : []),
    ...(at.includes('bottom') ? [{ x: 0, y: -1 }] : []),
    ...(at.includes('top') ? [{ x: 0, y: 1 }] : []),
  ];
}

/** Whether the outline is nearer than the margin towards one of the sides. */
function isNear({ x, y }: Point, outline: Region, sides: readonly Point[], margin: number): boolean {
  const way = aboutShare * margin - seenMm;
  return sides.some((side) => !contains(outline, { x: x + way * side.x, y: y + way * side.y }));
}

/** Negative outside. */
function leftAt(point: Point, outline: Region): number {
  const distance = distanceTo(outline, point);
  return contains(outline, point) ? distance : -distance;
}

function widthOf(region: Region): number {
  const { minX, maxX } = boundsOf(region) ?? { minX: 0, maxX: 1 };
  return maxX - minX;
}

const outersOf = perRegion((region): Region => region.filter((ring) => ringArea(ring) > 0));
