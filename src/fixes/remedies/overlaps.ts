/** Remedies that separate overlapping marks and glued pieces. */

import { samePath } from '../../core/values.ts';
import { isLettering } from '../../checks/measures/origin.ts';
import { hairMm } from '../../checks/measures/overlap.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { area, boundsArea, boundsOf, boxRing, contains } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Mark, Piece } from '../../tag/tag.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, replacing, shapeAt, specLength } from '../candidate.ts';
import { clearWays, clearanceMm } from './clear-ways.ts';
import { madeSmaller, movedBy, withoutEntry } from './moving.ts';

/** Unengraved margin around lettering that crosses another engraving, in mm (rule of thumb, no source). */
const haloMm = [0.8, 1.2];

/** Two marks that overlap. */
export function marksApart(at: Case): Remedy[] {
  const later = at.piece?.marks.find(({ path }) => samePath(path, at.issue.path));
  const earlier = later && markBelow(at, later);
  if (!later || !earlier) return [];
  // The surrounding mark stays where it is.
  const [small, large] = areaOfBox(later.region) <= areaOfBox(earlier.region) ? [later, earlier] : [earlier, later];
  const within = inTheOther(at, small, large);
  return [
    ...(within.length > 0 ? within : clearRound(at, earlier, later)),
    { words: `Move ${shapeTitle(small.shape)}`, candidates: movedBy(at, small.shape, waysOff(at, small, large)) },
    ...[small, large].map(({ shape }) => ({
      words: `Make ${shapeTitle(shape)} smaller`,
      candidates: madeSmaller(at, shape),
    })),
  ];
}

/** A line is moved out of the lettering altogether, not into a gap between two letters. */
function waysOff({ piece }: Case, moved: Mark, other: Mark): Point[] {
  const whole = moved.operation === other.operation ? ({ region }: Mark) => region : wholeMark;
  const others = piece!.marks.filter((mark) => mark !== moved && mark !== other).map(drawnBy);
  const openings = piece!.hangers.map(({ opening }) => opening);
  const cuts = piece!.sources.filter(({ use }) => use === 'cut').map(({ region }) => region);
  return clearWays(whole(moved), piece!.body, [whole(other), ...others, ...openings, ...cuts]);
}

function wholeMark(mark: Mark): Region {
  const box = boundsOf(mark.region);
  return box && isLettering(mark.shape) ? [boxRing(box)] : drawnBy(mark);
}

/** The area that the beam darkens: for a score line, only its outline. */
function drawnBy({ operation, region }: Mark): Region {
  return operation === 'engrave' ? region : difference(offset(region, hairMm / 2), [offset(region, -hairMm / 2)]);
}

/** The mark below the later one at the place in question. */
function markBelow({ issue, piece }: Case, later: Mark): Mark | undefined {
  const [point] = issue.points ?? [];
  const before = piece?.marks.slice(0, piece.marks.indexOf(later)) ?? [];
  return point && (before.find(({ region }) => contains(region, point)) ?? before.at(-1));
}

/** Cuts the lower engraving back around what lies over it. */
function clearRound(at: Case, earlier: Mark, later: Mark): Remedy[] {
  const isEngraved = earlier.operation === 'engrave' && later.operation === 'engrave';
  // Cutting letters or the modules of a code back would spoil them.
  if (!isEngraved || !isOrnament(earlier)) return [];
  const [below, over] = [earlier, later].map(({ path }) => textAt(at, path));
  return [
    {
      words: `Clear ${shapeTitle(earlier.shape)} around ${shapeTitle(later.shape)}`,
      candidates: haloMm.map((by) => {
        const grow = specLength(by, at.tag.units);
        const text = `{difference: [${below}, {from: ${over}, grow: ${grow}}]}`;
        return { description: `by ${grow}`, edits: [replacing(at, earlier.path, text)] };
      }),
      // A border is broken there, and no longer goes round its holes.
      ...(earlier.shape.generator.kind === 'border' && { isChoice: true as const }),
    },
  ];
}

/**
 * A mark wholly surrounded by a dark field is left out, or cut out of the field. Lettering does not count as a field.
 */
function inTheOther(at: Case, inner: Mark, outer: Mark): Remedy[] {
  const isEngraved = inner.operation === 'engrave' && outer.operation === 'engrave';
  if (!isEngraved || !isOrnament(outer) || !isSurrounded(inner.region, outer.region)) return [];
  const text = `{difference: [${textAt(at, outer.path)}, ${textAt(at, inner.path)}]}`;
  const [noOuter, noInner] = [outer, inner].map(({ path }) => withoutEntry(at, path));
  return [
    {
      words: `Cut ${shapeTitle(inner.shape)} out of ${shapeTitle(outer.shape)}`,
      candidates: noOuter ? [{ description: 'bright on dark', edits: [replacing(at, inner.path, text), noOuter] }] : [],
    },
    {
      words: `Leave ${shapeTitle(inner.shape)} out`,
      candidates: noInner ? [{ description: 'it is not seen', edits: [noInner] }] : [],
    },
  ];
}

/** Whether nothing is read from it, by eye or by a phone. */
function isOrnament({ shape, lettering = [], codes = [] }: Mark): boolean {
  return codes.length === 0 && lettering.length === 0 && !isLettering(shape);
}

/** Whether a rim of one clearance remains all round. */
function isSurrounded(inner: Region, outer: Region): boolean {
  return area(difference(offset(inner, clearanceMm), [outer])) < 0.01;
}

/** A glued piece that overlaps another of its layer, or covers what should be seen. */
export function piecesApart(at: Case): Remedy[] {
  const { piece } = at;
  const shape = shapeAt(at, at.issue.path);
  const other = piece && underneath(at, piece);
  if (!shape || !piece || !other || other.length === 0) return [];
  const carrier = at.tag.pieces.find(({ id }) => id === piece.glueTo);
  const beside = at.tag.pieces.filter((each) => each !== piece && each.glueTo === piece.glueTo);
  const ways = clearWays(piece.region, carrier?.region ?? [], [other, ...beside.map(({ region }) => region)]);
  return [
    { words: `Move ${shapeTitle(shape)}`, candidates: movedBy(at, shape, ways) },
    { words: `Make ${shapeTitle(shape)} smaller`, candidates: madeSmaller(at, shape) },
  ];
}

/** What lies under the place in question: a piece glued on beside this one, a mark, or the covered opening. */
function underneath({ issue, tag }: Case, piece: Piece): Region {
  const [point] = issue.points ?? [];
  if (!point) return [];
  const beside = tag.pieces.find((each) => each !== piece && each.glueTo !== undefined && contains(each.region, point));
  if (beside) return beside.region;
  const marks = tag.pieces.flatMap((each) => (each === piece ? [] : each.marks));
  const mark = marks.find(({ region }) => contains(region, point));
  if (mark) return mark.region;
  const ring = tag.pieces
    .flatMap((each) => (each === piece ? [] : [...each.region]))
    .filter((each) => contains([each], point))
    .sort((a, b) => areaOfBox([a]) - areaOfBox([b]))[0];
  return ring ? [ring] : [];
}

function areaOfBox(region: Region): number {
  const box = boundsOf(region);
  return box ? boundsArea(box) : 0;
}

function textAt({ report: { source } }: Case, path: Mark['path']): string {
  const { start, end } = source.range(path);
  return source.text.slice(start, end);
}
