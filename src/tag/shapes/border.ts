/** Borders: lines along an outline, inset from it, that go round anything cut through the piece. */

import { clippedCorners, hasCorners } from '../../geometry/clip-corners.ts';
import { transform, translation } from '../../geometry/affine.ts';
import { difference, intersection, normalise, offset, union } from '../../geometry/clipper.ts';
import { hullOf } from '../../geometry/hull.ts';
import { area, boundsOf, centroid, contains, ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { simplified } from '../../geometry/simplify.ts';
import { strokeMm, strokesAlong } from '../../geometry/strokes.ts';
import type { Line, Point, Region } from '../../geometry/types.ts';
import type { BorderGenerator } from '../../spec/model/shape-model.ts';
import { oppositeOf, pointsOf, withoutPoints } from './barbs.ts';

/** The construction of a border, so that it can be led round openings once they are known. */
export interface Border {
  /** The area inside its outer edge. */
  readonly within: Region;
  /**
   * Its lines as distances in mm from the outer edge of `within` inwards; the two are equal for a line without width.
   */
  readonly lines: readonly { readonly from: number; readonly to: number }[];
  /** Distance kept from openings, in mm, and the least where a bay would take a pointed corner off. */
  readonly clear: number;
  readonly leastClear: number;
  /** Whether it ends before an opening instead of going round it: lines held by bridges cannot be led elsewhere. */
  readonly ends: boolean;
  /** Whether its corners were to be cut off where it has none. */
  readonly lacksCorners?: boolean;
}

export interface Bordered extends DrawnBorder {
  readonly border: Border;
}

interface DrawnBorder {
  readonly region: Region;
  /** The lines that the beam follows, if they have no width. */
  readonly lines?: readonly Line[];
}

/** The border goes round an opening where a strip beside it is no wider than its lines plus this, in mm. */
const spareMm = 0.1;

/** What comes no nearer than this merely touches, in mm. */
const touchingMm = 0.05;

/** Half as wide is what rounding leaves of an edge, in mm; and so far beyond, at most, a round runs into the outline. */
const sliverMm = 0.01;
const tangentMm = 0.8;

/** Chords of curves differ by less than this, in mm. */
const chordMm = 0.005;

/**
 * Radii of the innermost line where a border turns into a bay, in mm, and the share of the inside that one must leave to
 * be preferred to the next: round shoulders need room (our own judgement).
 */
const shouldersMm = [3, 2, 1];
const leftByShoulders = 0.9;

/** The border of a shape; empty if there is no room for the lines in it. */
export function borderOf(region: Region, { inset, lines, radius, clip, clear, leastClear }: BorderGenerator): Bordered {
  const setIn = offset(outerRings(region), -inset, 'eased');
  const within = withCorners(setIn, radius, clip);
  const lacksCorners = clip > 0 && setIn.length > 0 && !hasCorners(setIn);
  const border = clearOf(
    { within, lines, clear, leastClear, ends: false, ...(lacksCorners ? { lacksCorners } : {}) },
    holeRings(region),
  );
  return { border, ...drawBorder(border) };
}

/** The border kept clear of anything cut through the piece that it is drawn on. */
export function clearedBorder<T extends Partial<Bordered> & { region: Region }>(made: T, openings: Region): T {
  const { border } = made;
  if (!border || openings.length === 0) return made;
  if (border.ends) return { ...made, region: difference(made.region, [offset(openings, border.clear)]) };
  const cleared = clearOf(border, openings);
  return cleared === border ? made : { ...made, border: cleared, ...drawBorder(cleared) };
}

/** What a border runs round. */
export function insideBorder({ within, lines }: Border): Region {
  return offset(within, -Math.max(...lines.map(({ to }) => to)), 'eased');
}

/** The border with its lines as wide as they are after growing. */
export function grownBorder(border: Border, by: number): Border {
  return { ...border, lines: border.lines.map(({ from, to }) => ({ from: from - by, to: to + by })) };
}

/** The border scaled with the shape, lines included. */
export function scaledBorder(border: Border, within: Region, scale: number): Border {
  const lines = border.lines.map(({ from, to }) => ({ from: from * scale, to: to * scale }));
  return { ...border, within, lines, clear: border.clear * scale, leastClear: border.leastClear * scale };
}

function drawBorder({ within, lines }: Border): DrawnBorder {
  const inside = (by: number): Region => offset(within, -by, 'eased');
  if (lines.every(({ from, to }) => from === to)) {
    const followed = lines.flatMap(({ from }) => inside(from).map((ring): Line => [...ring, ring[0]!]));
    return { region: strokesAlong(followed, strokeMm), lines: followed };
  }
  return { region: lines.flatMap(({ from, to }) => [...difference(inside(from), [inside(to)])]) };
}

function withCorners(within: Region, radius: number, clip: number): Region {
  if (radius > 0) return offset(offset(offset(offset(within, -radius), radius), radius), -radius);
  return clippedCorners(within, clip);
}

/**
 * Only the openings that the lines would meet push them aside: one in the middle of a plate needs no line round it. The border
 * passes an opening on the side away from the edge, in a bay with round shoulders.
 */
function clearOf(border: Border, openings: Region): Border {
  const kept = offset(outerRings(openings), border.clear);
  const deepest = Math.max(...border.lines.map(({ to }) => to));
  const band = difference(border.within, [offset(border.within, -deepest - spareMm, 'eased')]);
  const meets = (part: Region, by: number): boolean => intersection(offset(part, -by), band).length > 0;
  const met = partsOf(kept).filter((part) => meets(part, touchingMm));
  if (met.length === 0) return border;
  const within = partsOf(border.within).flatMap((part) => {
    const points = pointsOf(part);
    const bayRound = (each: Region): Region => bayOf(each, part, deepest + shouldersMm[0]!);
    const around = (bays: Region, outline = part): Region =>
      withBays(outerRings(difference(outline, [bays])), bays, deepest);
    const takenBy = (bays: Region): Point[] => {
      const left = offset(around(bays), touchingMm);
      return points.filter((point) => !contains(left, point));
    };
    const yielding =
      points.length === 0 ? [] : met.filter((each) => !meets(each, border.clear - border.leastClear + touchingMm));
    // Where one hole stays inside, so does its like: with a bay round one of them the border would look lopsided.
    const inside = yielding.some((each) => takenBy(bayRound(each)).length > 0) ? yielding : [];
    const bays = union(met.filter((each) => !inside.includes(each)).map(bayRound));
    if (bays.length === 0) return part;
    // So it would with one barb of two.
    const taken = takenBy(bays);
    const even = oppositeOf(
      taken,
      points.filter((point) => !taken.includes(point)),
      part,
    );
    return [...around(bays, even.length > 0 ? withoutPoints(part, even) : part)];
  });
  return { ...border, within };
}

function withBays(left: Region, bays: Region, deepest: number): Region {
  let found: Region = [];
  for (const shoulder of shouldersMm) {
    found = partsOf(withRoundShoulders(left, bays, deepest + shoulder))[0] ?? [];
    if (area(found) > leftByShoulders * area(left)) break;
  }
  return found;
}

/**
 * What is kept clear round an opening, and all between that and the edge that it is nearest to.
 * @param reach Distance from the edge, in mm, within which an opening is in the way.
 */
function bayOf(kept: Region, within: Region, reach: number): Region {
  const beyond = difference(offset(kept, reach), [within]);
  const [from, to] = [centroid(kept), centroid(beyond)];
  const box = boundsOf(within);
  if (!from || !to || !box) return kept;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // All round it is the outside: it lies beside the border.
  if (length < touchingMm) return kept;
  const far = (box.maxX - box.minX + box.maxY - box.minY) / length;
  const shift = translation((to.x - from.x) * far, (to.y - from.y) * far);
  return [hullOf([...kept, ...transform(kept, shift)].flat())];
}

/** Rounds the corners that bays have left in an outline; corners elsewhere stay as they are, straits beside bays go. */
function withRoundShoulders(region: Region, bays: Region, radius: number): Region {
  const rounded = offset(offset(region, -radius), radius);
  const beside = offset(bays, touchingMm);
  // Rounding leaves slivers along straight edges, which would join one corner with the next.
  const lost = offset(difference(region, [rounded]), -sliverMm);
  const corners = partsOf(lost).filter((part) => intersection(part, beside).length > 0);
  if (corners.length === 0) return region;
  // Up to where the round and the outline are one, or a step would be left between them.
  const patch = offset(corners.flat(), tangentMm);
  // Where they meet, the chords of one curve and those of the other differ a little, which a line further in would show.
  return simplified(union([difference(region, [patch]), intersection(rounded, patch)]), chordMm);
}

function outerRings(region: Region): Region {
  return normalise(region.filter((ring) => ringArea(ring) > 0));
}

function holeRings(region: Region): Region {
  return normalise(region.filter((ring) => ringArea(ring) < 0).map((ring) => ring.toReversed()));
}
