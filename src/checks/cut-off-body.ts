/** Cuts that cut nothing, and cuts that run off the edge of their piece in a way that does not shape it. */

import { difference, intersection, union } from '../geometry/clipper.ts';
import { innerPoint } from '../geometry/inner-point.ts';
import { area, boundsOf, boxCentre, contains, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Piece, Source } from '../tag/tag.ts';
import { pointsAlong } from './measures/points-along.ts';
import { distanceTo } from './measures/blame.ts';
import type { Check } from './check.ts';
import { mm, mmByMm } from '../core/figures.ts';
import { nameForMessage } from './measures/origin.ts';
import { perRegion } from './measures/per-region.ts';
import { perRegionPair } from './measures/per-region-pair.ts';

/** A cut that removes less material than this, in mm², cuts nothing. */
const nothingMm2 = 0.02;

/** A drawing that passes the edge by less than this, in mm, ends on it: far below any kerf. */
const sameLineMm = 0.05;

/**
 * A plain shape that runs over the edge makes a notch or a hollow side, a common way to shape a tag. It counts as
 * misplaced if more than this share of it lies beyond the edge and its bite, in mm, is less deep than this (our own
 * judgement).
 */
const misplacedShare = 0.8;
const shallowMm = 2;

/** Tolerance for simplifying outlines, in mm. */
const toleranceMm = 0.01;

export const cutOffBody: Check = ({ pieces }) =>
  pieces.flatMap((piece) => {
    const cuts = piece.sources.filter(({ use }) => use === 'cut');
    return cuts.flatMap((cut) => {
      const fault = faultOf(cut, piece, cuts);
      if (!fault) return [];
      const finding: Finding = {
        code: 'cut-off-body',
        severity: 'warning',
        piece: piece.id,
        path: cut.entry,
        ...fault,
      };
      return [finding];
    });
  });

type Fault = Pick<Finding, 'points' | 'amount' | 'message'>;

function faultOf(cut: Source, piece: Piece, cuts: readonly Source[]): Fault | undefined {
  const box = boundsOf(cut.region);
  if (!box) return undefined;
  const name = nameForMessage(cut.shape) ?? 'A shape';
  const lugs = piece.hangers.flatMap(({ lug }) => (lug ? [lug] : []));
  const off = subtracted(beyond(cut.region, piece.body), lugs);
  const whole = area(coarsened(cut.region));
  const share = area(off) / whole;
  const outline = [...outersOf(piece.body), ...lugs.flat()];
  if (area(off) > whole - nothingMm2) {
    const gap = Math.min(...cut.region.flat().map((point) => distanceTo(outline, point)));
    return { points: [boxCentre(box)], message: `${name} cuts nothing: it lies ${mm(gap)} beside “${piece.title}”.` };
  }
  const within = openingAround(cut, piece, cuts, lugs);
  if (within) return { points: [boxCentre(box)], message: `${name} cuts nothing: it lies entirely inside ${within}.` };
  if (isDrawn(cut.shape))
    return lostPartsFault(name, subtracted(outside(cut.region, piece.body), lugs), piece, outline);
  if (share <= misplacedShare) return undefined;
  const bite = deepestPoint(intersection(cut.region, outline), outline);
  if (!bite || bite.depth >= shallowMm) return undefined;
  const message = `${name} barely touches “${piece.title}”: ${Math.round(100 * share)} % of it lies beyond the edge, and it cuts only ${mm(bite.depth)} deep.`;
  return { points: [bite.point], message };
}

/** The fault of lettering or a drawing of which a part runs off the material. */
function lostPartsFault(name: string, off: Region, piece: Piece, outline: Region): Fault | undefined {
  const parts = partsOf(off)
    .map((part) => ({ part, box: boundsOf(part)!, size: area(part) }))
    .filter(({ part }) => (deepestPoint(part, piece.body)?.depth ?? 0) > sameLineMm)
    .sort((a, b) => b.size - a.size);
  const [largest] = parts;
  if (!largest) return undefined;
  const { minX, minY, maxX, maxY } = largest.box;
  const size = mmByMm(maxX - minX, maxY - minY);
  const places = parts.length === 1 ? size : `${parts.length} places, the largest ${size}`;
  const point = innerPoint(largest.part[0]!);
  const isInside = contains(outline, point);
  const where = isInside ? 'into an opening' : 'beyond the edge';
  const then = isInside ? 'part of it is lost' : 'part of it is lost, and the edge is open there';
  const amount = parts.reduce((sum, part) => sum + part.size, 0);
  return { points: [point], amount, message: `${name} is cut ${where} of “${piece.title}” (${places}): ${then}.` };
}

/** The opening, in words, that was already there where this is cut. Of two identical cuts, the second cuts nothing. */
function openingAround(
  cut: Source,
  piece: Piece,
  cuts: readonly Source[],
  lugs: readonly Region[],
): string | undefined {
  const at = cuts.indexOf(cut);
  const own = area(cut.region);
  const inBody =
    lugs.length === 0 ? inside(cut.region, piece.body) : intersection(cut.region, union([piece.body, ...lugs]));
  if (area(inBody) < nothingMm2) return 'an opening of the body';
  const others = cuts.filter((other, index) => {
    const size = area(other.region);
    return other !== cut && (index < at ? size > own - nothingMm2 : size > own + nothingMm2);
  });
  const openings = [
    ...others.map(({ region, shape }) => ({ region, what: `the cut ${nameForMessage(shape) ?? 'beside it'}` })),
    ...piece.hangers.map(({ opening, kind }) => ({
      region: opening,
      what: kind === 'ring' ? 'the hole of the ring' : kind === 'keyhole' ? 'the keyhole' : `the ${kind} for the tie`,
    })),
  ];
  return openings.find(({ region }) => area(difference(inBody, [region])) < nothingMm2)?.what;
}

/** Whether the visible part of a shape is lettering or a drawing, which is spoiled unless it is whole. */
function isDrawn(shape: Shape): boolean {
  const seen = new Set<Shape>();
  const waiting = [shape];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    const { generator } = next;
    if (generator.kind === 'text' || generator.kind === 'drawing') return true;
    if (generator.kind === 'from') waiting.push(generator.shape);
    if (generator.kind === 'union' || generator.kind === 'intersection') waiting.push(...generator.shapes);
    if (generator.kind === 'difference') waiting.push(...generator.shapes.slice(0, 1));
  }
  return false;
}

/** The point of a region farthest from the outline, and its distance in mm. */
function deepestPoint(region: Region, outline: Region): { readonly depth: number; readonly point: Point } | undefined {
  return region
    .flatMap((ring) => pointsAlong(ring, 0))
    .map((point) => ({ depth: distanceTo(outline, point), point }))
    .reduce<{ depth: number; point: Point } | undefined>((a, b) => (a && a.depth >= b.depth ? a : b), undefined);
}

function outersOf(region: Region): Region {
  return region.filter((ring) => ringArea(ring) > 0);
}

function subtracted(region: Region, others: readonly Region[]): Region {
  return region.length > 0 && others.length > 0 ? difference(region, others) : region;
}

const coarsenedWithin = perRegion(simplified);
const coarsened = (region: Region): Region => coarsenedWithin(region, toleranceMm);

const beyond = perRegionPair((cut, body) => difference(coarsened(cut), [outersOf(coarsened(body))]));
const outside = perRegionPair((cut, body) => difference(coarsened(cut), [coarsened(body)]));
const inside = perRegionPair((cut, body) => intersection(coarsened(cut), coarsened(body)));
