/** Thin places from thin triangles: where to measure a neck, and whether it is a point or a whole run. */

import { acuteness, vectorLength, edgeLength, heightOn, midpoint, midpointDistance } from './lengths.ts';
import type { Mesh } from './mesh.ts';
import { triangleOf } from './mesh.ts';
import { alike, evenLength, gaugeOf, isTaper, longestFreePath } from './paths.ts';
import type { MeshPath } from './paths.ts';
import type { Thinness } from './thin.ts';
import { nextEdge, previousEdge } from './triangulation.ts';

export interface ThinRun {
  /** `join`: a neck between two bodies; `stroke`: a whole run. */
  readonly kind: 'join' | 'stroke';
  /** The chord nearest to the least width: a half-edge of the mesh. */
  readonly chord: number;
  /** Length along the run, in units. */
  readonly length: number;
  /** Whether it is narrowest near the chord; otherwise it is measured at the chord, as it narrows to its very end. */
  readonly follow: boolean;
}

/** A run of nearly constant width longer than this many times the width asked for is a stroke … */
const strokeLength = 3;
/** … where nearly constant means no wider than this many times its least width. */
const nearlyConstant = 1.5;
/** A run that branches, or joins more than two bodies, is one stroke if all its branches together exceed this many widths. */
const webLength = 8;
/**
 * A run with a free end is a stroke if its width is nearly constant over more than this many times the width asked for.
 */
const freeLength = 4;
/** A part that is thin all over is a stroke if longer than this many times the width asked for; otherwise it is a dot. */
const partLength = 1;

/** The thin places of a mesh. `width` is in units. */
export function findRuns(mesh: Mesh, thinness: Thinness, width: number): ThinRun[] {
  const { thin, thinChord, coreChord } = thinness;
  const runs: ThinRun[] = [];
  const seen = new Uint8Array(thin.length);
  for (let first = 0; first < thin.length; first += 1) {
    if (!thin[first] || seen[first]) continue;
    seen[first] = 1;
    const triangles = [first];
    for (let i = 0; i < triangles.length; i += 1) {
      const t = triangles[i]!;
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!thinChord[e]) continue;
        const neighbour = triangleOf(mesh.twins[e]!);
        if (!thin[neighbour] || seen[neighbour]) continue;
        seen[neighbour] = 1;
        triangles.push(neighbour);
      }
    }
    runs.push(...thinRunsOf(mesh, thinness, triangles, width));
  }
  // Where two discs overlap there may be no thin triangle, only a thin chord.
  for (let e = 0; e < coreChord.length; e += 1) {
    const twin = mesh.twins[e]!;
    if (coreChord[e] && e < twin && !thin[triangleOf(e)] && !thin[triangleOf(twin)]) {
      runs.push({ kind: 'join', chord: e, length: 0, follow: true });
    }
  }
  return runs;
}

/** The runs of one connected set of thin triangles. */
function thinRunsOf(mesh: Mesh, thinness: Thinness, triangles: readonly number[], width: number): ThinRun[] {
  const core = triangles.filter((t) => thinness.core[t]);
  const free = longestFreePath(mesh, thinness, triangles);
  const freeStroke = free && freeStrokeIn(mesh, free, width);
  if (core.length > 0) {
    const whole = measureCore(mesh, thinness, core);
    const isStroke =
      freeStroke !== undefined ||
      whole.contacts === 0 ||
      whole.evenLength > strokeLength * width ||
      (whole.isWeb && whole.length > webLength * width);
    if (!isStroke) return branchesOf(mesh, thinness, core);
    return [{ kind: 'stroke', chord: whole.chord, length: whole.length + (freeStroke?.length ?? 0), follow: true }];
  }
  if (free?.attached !== false) return freeStroke ? [freeStroke] : [];
  const whole = free.length > partLength * width && strokeAlong(mesh, free);
  return whole ? [whole] : [];
}

function freeStrokeIn(mesh: Mesh, path: MeshPath, width: number): ThinRun | undefined {
  const isEven = evenLength(path) > freeLength * width && !isTaper(path);
  return isEven ? strokeAlong(mesh, path) : undefined;
}

function strokeAlong(mesh: Mesh, path: MeshPath): ThinRun | undefined {
  const gauge = gaugeOf(mesh, path);
  return gauge && { kind: 'stroke', chord: gauge.chord, length: path.length, follow: gauge.isNeck };
}

/** A triangle of a core, as a piece of the run. */
interface CoreTriangle {
  readonly chords: readonly number[];
  readonly length: number;
  readonly width: number;
  /** The chord nearest to the width. */
  readonly chord: number;
}

function coreTriangleOf(mesh: Mesh, { coreChord }: Thinness, t: number): CoreTriangle {
  const chords: number[] = [];
  let width = Infinity;
  let chord = -1;
  for (let e = 3 * t; e < 3 * t + 3; e += 1) {
    if (!coreChord[e]) continue;
    chords.push(e);
    if (edgeLength(mesh, e) < width) {
      width = edgeLength(mesh, e);
      chord = e;
    }
  }
  for (let e = 3 * t; e < 3 * t + 3; e += 1) if (!mesh.isChord[e]) width = Math.min(width, heightOn(mesh, e));
  const [a, b, c] = chords;
  let length = midpointDistance(mesh, a!, b!);
  // Where three ways meet, half the perimeter of the triangle of midpoints is about the length of the star between
  // them.
  if (c !== undefined) length = (length + midpointDistance(mesh, b!, c) + midpointDistance(mesh, c, a!)) / 2;
  return { chords, length, width, chord };
}

function measureCore(mesh: Mesh, thinness: Thinness, core: readonly number[]) {
  const links = core.map((t) => coreTriangleOf(mesh, thinness, t));
  const least = links.reduce((best, link) => (link.width < best.width ? link : best));
  let length = 0;
  let evenLength = 0;
  let contacts = 0;
  let junctions = 0;
  for (const link of links) {
    length += link.length;
    if (link.width <= nearlyConstant * least.width) evenLength += link.length;
    if (link.chords.length > 2) junctions += 1;
    for (const e of link.chords) if (!thinness.core[triangleOf(mesh.twins[e]!)]) contacts += 1;
  }
  return {
    chord: mostCentral(mesh, links, least.width),
    length,
    evenLength,
    contacts,
    isWeb: junctions > 0 || contacts > 2,
  };
}

/** Of all chords of about that width, the one nearest to their middle, so that a mark on an even stroke stays put. */
function mostCentral(mesh: Mesh, links: readonly CoreTriangle[], width: number): number {
  const chords = links.filter((link) => link.width <= (1 + alike) * width).map(({ chord }) => chord);
  const middles = chords.map((chord) => midpoint(mesh, chord));
  const x = middles.reduce((sum, middle) => sum + middle[0], 0) / middles.length;
  const y = middles.reduce((sum, middle) => sum + middle[1], 0) / middles.length;
  let best = -1;
  let least = Infinity;
  for (const [i, middle] of middles.entries()) {
    const away = vectorLength(middle[0] - x, middle[1] - y);
    if (away >= least) continue;
    least = away;
    best = chords[i]!;
  }
  return best;
}

/** The triangle at the end of a branch, where others begin. */
interface Fork {
  /** The wider of the ways that continue, and the widest place before them. */
  readonly onward: number;
  readonly room: number;
}

/** A branch only narrows towards its fork unless the fork, or a way that continues, is wider by this factor. */
const clearing = 1.02;

function forkAt(mesh: Mesh, { radius }: Thinness, entry: number): Fork {
  const onward = Math.max(edgeLength(mesh, nextEdge(entry)), edgeLength(mesh, previousEdge(entry)));
  // A branch only narrows towards its fork if no way that continues is wider and the fork is not wider by this factor.
  return { onward, room: acuteness(mesh, entry) > 0 ? 2 * radius[triangleOf(entry)]! : edgeLength(mesh, entry) };
}

/** One join for each unbranched stretch of a core that is narrower somewhere than at its forks. */
function branchesOf(mesh: Mesh, thinness: Thinness, core: readonly number[]): ThinRun[] {
  const seen = new Set<number>();
  const runs: ThinRun[] = [];
  for (const t of core) {
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!thinness.coreChord[e] || seen.has(e)) continue;
      let chord = e;
      let width = edgeLength(mesh, e);
      let length = 0;
      const forks: Fork[] = [];
      for (const direction of [e, mesh.twins[e]!]) {
        let entry = direction;
        for (;;) {
          seen.add(entry);
          seen.add(mesh.twins[entry]!);
          const triangle = triangleOf(entry);
          if (!thinness.core[triangle]) break;
          const link = coreTriangleOf(mesh, thinness, triangle);
          if (link.chords.length !== 2) {
            forks.push(forkAt(mesh, thinness, entry));
            break;
          }
          if (link.width < width) ({ width, chord } = link);
          length += link.length;
          const exit = link.chords[0] === entry ? link.chords[1]! : link.chords[0]!;
          if (seen.has(exit)) break;
          entry = mesh.twins[exit]!;
        }
      }
      const onlyNarrows = forks.some(({ onward, room }) => onward <= width && room < clearing * width);
      if (!onlyNarrows) runs.push({ kind: 'join', chord, length, follow: true });
    }
  }
  return runs;
}
