/**
 * Narrow places of a piece: all necks of a region, measured exactly, and what they join.
 *
 * A neck is a place where the largest disc that fits into the material becomes smaller towards it from both sides. The
 * discs come from a Delaunay triangulation of the closely sampled outline; see `necks/thin.ts`. Tapers, serifs, sharp
 * corners and the ends of ellipses, where the disc becomes smaller from one side only, are therefore not necks. The
 * kinds are:
 *
 * - `bridge`: cutting it parts the piece, and both parts are larger than minWeb² and wider than the neck. Necks with
 *   nothing between them that is larger than minWeb² and 15 % wider than they are count as one.
 * - `loop`: cutting it leaves the piece whole: a wall round a hole, between two holes, between a counter and the
 *   outside.
 * - `stroke`: a whole run. Nearly constant in width (up to 1.5 times its least width) over more than 3 × minWeb; or a
 *   web of branches of more than 8 × minWeb in all; or a run with a free end that is even (within a third of its median
 *   width) over more than 4 × minWeb, and does not narrow by 1.3 over its middle half, as tapers do; or a part that is
 *   thin all over and longer than minWeb (a shorter one is a dot, and not reported). For a run that only narrows
 *   towards its free ends, the median width is reported: its least width would be that of the tip.
 *
 * Where three ways meet, the widest is not a neck if it only narrows towards the fork: what parts there are the other
 * two.
 *
 * Widths are those of the given polygon; one within 0.01 mm of minWeb (or 2 %, if that is less) counts as wide enough.
 */

import { fromGrid, gridPerMm } from './necks/clean.ts';
import type { Cut } from './necks/cuts.ts';
import { judgeCuts } from './necks/cuts.ts';
import type { Mesh } from './necks/mesh.ts';
import { triangleOf } from './necks/mesh.ts';
import type { ThinRun } from './necks/runs.ts';
import { findRuns } from './necks/runs.ts';
import { freeEnds } from './necks/paths.ts';
import type { FreeEnd } from './necks/paths.ts';
import { meshOf } from './necks/recent-meshes.ts';
import { sampleBeyond } from './necks/sample-beyond.ts';
import { findThin } from './necks/thin.ts';
import type { Width } from './necks/widths.ts';
import { exactWidth } from './necks/widths.ts';
import { perimeter } from './measure.ts';
import type { Point, Region } from './types.ts';

export interface Neck {
  readonly kind: 'bridge' | 'loop' | 'stroke';
  /** Least width in mm. */
  readonly width: number;
  /** The two boundary points that far apart, the left one first. */
  readonly ends: readonly [Point, Point];
  /** Length along the run that is thinner than minWeb, in mm; near 0 for a single point. */
  readonly length: number;
  /**
   * Areas of the two portions joined, in mm², the larger first. If cutting the neck leaves the piece whole: of the
   * portions between it and the piece's other necks; twice the same if that is one portion.
   */
  readonly areas: readonly [number, number];
  /** A point well inside each portion, not far from the neck; in the order of `areas`. */
  readonly samples: readonly [Point, Point];
}

/** A free end of the material, such as the point of an arrow or the end of a stroke. */
export interface Tip {
  readonly at: Point;
  /**
   * Widths of the material at distances before the end, both in mm, from the end on, as far as it is narrower than the
   * width asked for.
   */
  readonly widths: readonly { readonly before: number; readonly width: number }[];
}

/** The necks and free ends of a region narrower than a given width. */
export interface Narrow {
  /** Narrowest first. */
  readonly necks: readonly Neck[];
  readonly tips: readonly Tip[];
}

/** Number of boundary points per minWeb. */
const pointsPerWidth = 5;
/** Most points added in all: a width far too small for a large piece must not exhaust the memory. */
const maxPoints = 50_000;
/**
 * The portion beyond a bridge must be wider than it by this factor, or it is the blunt end of a taper. (Discs are up to
 * 1 % wider than there is room for, as they may protrude between two boundary points.)
 */
const wider = 1.03;

/**
 * All necks of a region narrower than `minWeb` (mm), the narrowest first. Each part is examined by itself, but two that
 * meet in a point are joined by a neck of width 0.
 */
export const findNecks = (region: Region, minWeb: number): readonly Neck[] => findNarrow(region, minWeb).necks;

/** The necks and, from the same triangulation, the free ends that are not necks. */
export function findNarrow(region: Region, minWeb: number): Narrow {
  if (!(minWeb > 0) || !Number.isFinite(minWeb)) return { necks: [], tips: [] };
  const noise = Math.min(0.01, minWeb / 50);
  const width = (minWeb - noise / 2) * gridPerMm;
  const spacing = Math.max(1, width / pointsPerWidth, (perimeter(region) * gridPerMm) / maxPoints);
  const mesh = meshOf(region, spacing);
  if (!mesh) return { necks: [], tips: [] };
  const thinness = findThin(mesh, width);
  const found = [...measureRuns(mesh, findRuns(mesh, thinness, width), spacing), ...pinchPlaces(mesh)].filter(
    (place) => place.width < (minWeb - noise) * gridPerMm,
  );
  const partings = judgeCuts(mesh, thinness.radius, found);
  const necks: Neck[] = [];
  for (const [i, place] of found.entries()) {
    const { parts, sides } = partings[i]!;
    const isPart = sides.every((side) => side.area >= width * width && 2 * side.radius >= wider * place.width);
    if (place.kind === 'join' && parts && !isPart) continue;
    const swap = sides[1].area > sides[0].area;
    const samples = place.sides.map((side) => fromGrid(sampleBeyond(mesh, thinness.radius, place, side, width)));
    const areas = sides.map((side) => side.area / gridPerMm ** 2);
    necks.push({
      kind: place.kind === 'stroke' ? 'stroke' : parts ? 'bridge' : 'loop',
      width: place.width / gridPerMm,
      ends: inOrder(fromGrid(place.ends[0]), fromGrid(place.ends[1])),
      length: place.length / gridPerMm,
      areas: swap ? [areas[1]!, areas[0]!] : [areas[0]!, areas[1]!],
      samples: swap ? [samples[1]!, samples[0]!] : [samples[0]!, samples[1]!],
    });
  }
  necks.sort((a, b) => a.width - b.width || compare(a.ends[0], b.ends[0]) || compare(a.ends[1], b.ends[1]));
  return { necks, tips: freeEnds(mesh, thinness).map((end) => tipOf(mesh, end)) };
}

function tipOf({ xs, ys }: Mesh, { vertex, path }: FreeEnd): Tip {
  let before = 0;
  const widths = path.steps.toReversed().map(({ width, length }) => {
    const middle = before + length / 2;
    before += length;
    return { before: middle / gridPerMm, width: width / gridPerMm };
  });
  return { at: fromGrid([xs[vertex]!, ys[vertex]!]), widths };
}

interface NeckPlace extends Cut, Width {
  readonly kind: ThinRun['kind'];
  readonly length: number;
}

/** The exact width of each run. Two branches that narrow towards the same place become one. */
function measureRuns(mesh: Mesh, runs: readonly ThinRun[], spacing: number): NeckPlace[] {
  const places = new Map<string, NeckPlace>();
  for (const { kind, chord, length, follow } of runs) {
    const measured = exactWidth(mesh, chord, spacing, follow);
    const twin = mesh.twins[chord]!;
    const key = measured.ends
      .map((end) => end.join())
      .sort()
      .join();
    if (places.has(key)) continue;
    places.set(key, { ...measured, kind, length, chord, sides: [triangleOf(chord), triangleOf(twin)] });
  }
  return [...places.values()];
}

/** Places where outlines meet in a point. Each sector of material round the point is joined to the next. */
function pinchPlaces(mesh: Mesh): NeckPlace[] {
  if (mesh.meetings.length === 0) return [];
  const sectors = new Map<number, number[]>(mesh.meetings.map((vertex) => [vertex, []]));
  for (let e = 0; e < mesh.starts.length; e += 1) {
    // The half-edge along the outline opens a sector.
    if (mesh.inside[triangleOf(e)] && !mesh.isChord[e]) sectors.get(mesh.starts[e]!)?.push(triangleOf(e));
  }
  return [...sectors].flatMap(([vertex, triangles]) => {
    const at = [mesh.xs[vertex]!, mesh.ys[vertex]!] as const;
    return triangles.slice(1).map((triangle, i): NeckPlace => {
      return { kind: 'join', width: 0, ends: [at, at], length: 0, sides: [triangles[i]!, triangle] };
    });
  });
}

const compare = (a: Point, b: Point): number => a.x - b.x || a.y - b.y;
const inOrder = (a: Point, b: Point): [Point, Point] => (compare(a, b) <= 0 ? [a, b] : [b, a]);
