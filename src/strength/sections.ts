/** The sections at which a piece would break when pulled by its hanger: widths, and distances from the line of pull. */

import { EdgeIndex } from '../geometry/edge-index.ts';
import { area, centroid, contains, distance, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Point, Region, Ring } from '../geometry/types.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import {
  effectiveWidth,
  totalLength,
  massCentre,
  pointAt,
  stretchesAcross,
  stretchesBetween,
} from './line-stretches.ts';
import { extent, strap, tearOut, walls } from './opening.ts';
import { weakestParting } from './parting.ts';
import type { Chord } from './parting.ts';
import type { Pull, Section } from './section.ts';

export interface Sections {
  readonly list: readonly Section[];
  /** `open`: the tie slips out. `loose`: the hanger is not joined to most of a piece that should be one part. */
  readonly fault?: 'open' | 'loose';
}

const cache = new WeakMap<PlacedHanger, { readonly piece: Piece; readonly sections: Sections }>();

/** Cached with the hanger: an edit elsewhere keeps it, and the region, as the same objects. */
export function sectionsOf(piece: Piece, hanger: PlacedHanger): Sections {
  const before = cache.get(hanger);
  const { region, parts, body } = piece;
  if (before?.piece.region === region && before.piece.parts === parts && before.piece.body === body)
    return before.sections;
  const sections = findSections(piece, hanger);
  cache.set(hanger, { piece, sections });
  return sections;
}

/** Tolerance for simplified outlines, in mm: fewer points halve the time, and widths stay within twice this. */
const outlinesMm = 0.005;

function findSections(piece: Piece, hanger: PlacedHanger): Sections {
  const { region } = piece;
  const { centre } = hanger;
  const edge = nearestRing(region, centre);
  const island = edge && partsOf(region).find((rings) => rings.includes(edge));
  const mass = island && centroid(island);
  if (!island || !mass || ringArea(edge) > 0) return { list: [], fault: 'open' };
  if (piece.parts === 'one' && area(island) < area(region) / 2) return { list: [], fault: 'loose' };
  const [x, y] = [centre.x - mass.x, centre.y - mass.y];
  const lengthMm = Math.hypot(x, y);
  // Hung by its very centre, it may hang in any direction.
  const up = lengthMm > 1e-6 ? { x: x / lengthMm, y: y / lengthMm } : { x: 0, y: 1 };
  const pull: Pull = {
    island,
    outlines: simplified(island, outlinesMm),
    hanger,
    centre,
    up,
    right: { x: up.y, y: -up.x },
    lengthMm,
  };
  const beside = walls(pull);
  const list = [
    beside,
    tearOut(pull),
    strap(pull, beside),
    ...jointSections(pull, piece.body),
    ...strokeSections(pull),
  ];
  return list.some(({ totalMm }) => totalMm === 0) ? { list: [], fault: 'open' } : { list };
}

/** The ring nearest to a point. */
function nearestRing(region: Region, { x, y }: Point): Ring | undefined {
  let least = Infinity;
  let nearest: Ring | undefined;
  for (const ring of region) {
    let a = ring[ring.length - 1]!;
    for (const b of ring) {
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
      const away = (a.x + t * dx - x) ** 2 + (a.y + t * dy - y) ** 2;
      if (away < least) {
        least = away;
        nearest = ring;
      }
      a = b;
    }
  }
  return nearest;
}

/** The ring's own joint, and the weakest place from there to the bulk if that is weaker still. */
function jointSections(pull: Pull, body: Region): Section[] {
  const strength = ([a, b]: Chord) => effectiveWidth([[0, distance(b, a)]], offLine(pull, a, b));
  const chord = weakestParting(pull.outlines, pull.centre, strength);
  const radius = lugRadius(pull.hanger);
  const atRing = chord?.every((end) => distance(end, pull.centre) < lugEase * radius);
  const neck = chord && section(atRing ? 'attachment' : 'neck', pull, chord);
  const joint = ringJoint(pull, body, radius);
  if (!joint) return neck ? [neck] : [];
  if (!neck || neck.effectiveMm >= joint.effectiveMm) return [joint];
  return atRing ? [neck] : [joint, neck];
}

/** A chord whose ends are within this many radii of the lug from its centre is the joint of the lug. */
const lugEase = 1.1;

const lugRadius = ({ lug, centre }: PlacedHanger): number => (lug ? distance(lug[0]![0]!, centre) : 0);

/**
 * The chord that joins the lug to the body. `undefined` if it has several joints or lies mostly inside the body: then
 * it is not a single section, and the walls and strokes determine the load.
 */
function ringJoint(pull: Pull, body: Region, radius: number): Section | undefined {
  if (radius === 0) return undefined;
  const { centre } = pull;
  const angles = new EdgeIndex(body).circleCrossings(centre, radius);
  const arcs = angles
    .map((from, i) => [from, angles[i + 1] ?? angles[0]! + 2 * Math.PI] as const)
    .filter(([from, to]) => contains(body, onCircle(centre, radius, (from + to) / 2)));
  const [arc, ...others] = arcs;
  if (!arc || others.length > 0 || arc[1] - arc[0] > Math.PI) return undefined;
  return section('attachment', pull, [onCircle(centre, radius, arc[0]), onCircle(centre, radius, arc[1])]);
}

function onCircle({ x, y }: Point, radius: number, angle: number): Point {
  return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
}

/** The material along a chord: all of it, or less if an opening cuts into it. */
function section(what: Section['what'], pull: Pull, [from, to]: Chord): Section | undefined {
  const stretches = stretchesBetween(pull.island, from, to);
  const length = distance(from, to);
  if (stretches.length === 0) return undefined;
  const direction = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const middle = pointAt(from, direction, massCentre(stretches));
  const offLineMm = offLine(pull, middle, middle);
  return {
    what,
    widthMm: Math.min(...stretches.map(([a, b]) => b - a)),
    totalMm: totalLength(stretches),
    count: stretches.length,
    ends: [from, to],
    offLineMm,
    effectiveMm: effectiveWidth(stretches, offLineMm),
  };
}

/** Distance of the middle of two points from the line of pull. */
function offLine({ centre, right }: Pull, a: Point, b: Point): number {
  return Math.abs(((a.x + b.x) / 2 - centre.x) * right.x + ((a.y + b.y) / 2 - centre.y) * right.y);
}

const stepMm = 0.5;
const maxSteps = 80;

/**
 * The weakest straight cut across the pull through more than one stroke, such as the two sides of an O, between the
 * opening and the centre of mass. All material on the line counts as bearing, even with a free end; as that is
 * optimistic, this is only one of the sections.
 */
function strokeSections({ outlines, hanger, centre, up, right, lengthMm }: Pull): Section[] {
  const [back] = extent(hanger.opening, centre, up);
  const step = Math.max(stepMm, (lengthMm + back) / maxSteps);
  let weakest: Section | undefined;
  for (let down = step - back; down < lengthMm; down += step) {
    const origin = pointAt(centre, up, -down);
    const stretches = stretchesAcross(outlines, origin, right);
    if (stretches.length < 2) continue;
    const offLineMm = Math.abs(massCentre(stretches));
    const effectiveMm = effectiveWidth(stretches, offLineMm);
    if (weakest && effectiveMm >= weakest.effectiveMm) continue;
    weakest = {
      what: 'strokes',
      widthMm: Math.min(...stretches.map(([a, b]) => b - a)),
      totalMm: totalLength(stretches),
      count: stretches.length,
      ends: [pointAt(origin, right, stretches[0]![0]), pointAt(origin, right, stretches.at(-1)![1])],
      offLineMm,
      effectiveMm,
    };
  }
  return weakest ? [weakest] : [];
}
