/** Engraving and score lines that run beyond the edge of their piece: part is lost, or burnt into the next piece. */

import { difference } from '../geometry/clipper.ts';
import { EdgeIndex } from '../geometry/edge-index.ts';
import { innerPoint } from '../geometry/inner-point.ts';
import { area, boundsOf, contains, distanceToSegment, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import { simplified } from '../geometry/simplify.ts';
import { strokeMm } from '../geometry/strokes.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Mark, Piece } from '../tag/tag.ts';
import { pointsAlong } from './measures/points-along.ts';
import type { Check } from './check.ts';
import { isCrossed } from './measures/crossed.ts';
import { isLettering } from './measures/origin.ts';
import { mm, mmByMm } from '../core/figures.ts';
import { narrowGap, nearMm, roomLeft } from './measures/near.ts';
import { perRegion } from './measures/per-region.ts';
import { perRegionPair } from './measures/per-region-pair.ts';

/** Outlines this near to each other, in mm, are the same line drawn with different points; far below any kerf. */
const sameLineMm = 0.05;

/** Tolerance for simplifying outlines, in mm, which saves more than half of the time. */
const toleranceMm = 0.01;

/** Lettering that loses more than this share of its area is no longer the word (our own judgement). */
const letteringLost = 0.1;

/** Of any other mark that loses more than this share of its area nothing is left to speak of (our own judgement). */
const markLost = 0.9;

export const markOffBody: Check = ({ pieces }) =>
  pieces.flatMap((piece) => piece.marks.flatMap((mark) => offBody(mark, piece)));

/** `hole-blocked` reports marks across a hanger's opening. */
function offBody({ region, operation, path, shape, lines }: Mark, piece: Piece): Finding[] {
  const opening = piece.hangers.flatMap((hanger) => [...hanger.opening]);
  const [largest, ...others] = (lines ? linesBeyond : beyond)(region, piece.region).filter(({ edge }) =>
    edge.some((point) => !contains(opening, point)),
  );
  if (!largest) return isLettering(shape) ? atTheEdge(region, path, piece) : [];
  const what = operation === 'engrave' ? 'Engraving' : 'A score line';
  const where = contains(outersOf(piece.region), largest.edge[0]!) ? 'into an opening' : 'beyond the edge';
  const box = boundsOf(largest.part)!;
  const size = mmByMm(box.maxX - box.minX, box.maxY - box.minY);
  const places = others.length === 0 ? size : `${others.length + 1} places, the largest ${size}`;
  const inner = innerPoint(largest.part[0]!);
  const share = [largest, ...others].reduce((sum, { part }) => sum + area(part), 0) / area(region);
  const isCutShort = share > (isLettering(shape) ? letteringLost : markLost);
  const lost = isCutShort
    ? ` ${Math.round(100 * share)} % of ${isLettering(shape) ? 'its letters are' : 'it is'} lost.`
    : '';
  return [
    {
      code: 'mark-off-body',
      severity: isCutShort ? 'error' : 'warning',
      piece: piece.id,
      path,
      points: [contains(largest.part, inner) ? inner : largest.edge[0]!],
      amount: share,
      message: `${what} runs ${where} of “${piece.title}” (${places}).${lost}${ofSameDrawing(shape, piece)}`,
    },
  ];
}

/** Lines of a drawing have a size of their own, and do not fit the rest of it unless neither has. */
function ofSameDrawing({ generator, modifiers }: Shape, { sources }: Piece): string {
  if (generator.kind !== 'drawing' || (modifiers.width === undefined && modifiers.height === undefined)) return '';
  const isWithRest = sources.some(
    ({ shape: { generator: other } }) => other.kind === 'drawing' && other.file === generator.file,
  );
  return isWithRest
    ? ` It and the body are of one drawing, each as large as it says by itself: give the size to the piece instead, and they stay together.`
    : '';
}

/** Letters that just miss the edge of the piece; `hole-blocked` reports those beside a hanger's opening. */
function atTheEdge(letters: Region, path: YamlPath, piece: Piece): Finding[] {
  const gap = narrowGap(letters, outersOf(piece.region));
  if (!gap) return [];
  return [
    {
      code: 'mark-off-body',
      severity: 'info',
      piece: piece.id,
      path,
      points: [gap.point],
      amount: nearMm - gap.width,
      message: `${roomLeft(gap.width)} between these letters and the edge of “${piece.title}”: it looks like a mistake; minimum ${mm(nearMm)}.`,
    },
  ];
}

const outersOf = perRegion((region): Region => region.filter((ring) => ringArea(ring) > 0));

interface PartOffBody {
  readonly part: Region;
  /** Points of the mark's own outline that lie off the body. */
  readonly edge: readonly Point[];
}

/**
 * The parts of a mark that are off the body, largest first, if the mark's outline ends there. If it goes all round an
 * opening, the opening is cut out of an engraved field or framed by a line, and nothing is lost.
 */
const beyond = perRegionPair((mark, region) => partsBeyond(mark, region, sameLineMm));

/** The same for lines, which may end at the edge: half of what the beam burns is beyond it then. */
const linesBeyond = perRegionPair((mark, region) => partsBeyond(mark, region, strokeMm / 2 + sameLineMm));

function partsBeyond(mark: Region, region: Region, tolerance: number): PartOffBody[] {
  const edges = new EdgeIndex(region);
  // The usual case for text: the whole mark lies within, and what it surrounds is an opening.
  if (mark.every((ring) => edges.contains(ring[0]!) && !isCrossed(ring, edges))) return [];
  const parts = partsOf(difference(simplified(mark, toleranceMm), [simplified(region, toleranceMm)]));
  if (parts.length === 0) return [];
  const isOff = (point: Point) =>
    edges.near(point, tolerance).every(([from, to]) => distanceToSegment(point, from, to) > tolerance);
  return parts
    .map((part) => ({ part, edge: part.flatMap((ring) => pointsAlong(ring, 0.5)).filter(isOff) }))
    .filter(({ edge }) => edge.length > 0);
}
