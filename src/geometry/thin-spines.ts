/** The middle lines of all that is thin in a region. */

import { distance, lineLength } from './measure.ts';
import { buildMesh } from './necks/build-mesh.ts';
import { fromGrid, gridPerMm, toGrid } from './necks/clean.ts';
import { edgeLength, midpointDistance } from './necks/lengths.ts';
import { triangleOf } from './necks/mesh.ts';
import type { Mesh } from './necks/mesh.ts';
import { findThin } from './necks/thin.ts';
import type { Line, Point, Region } from './types.ts';

/** Number of boundary points per width. */
const pointsPerWidth = 6;

/**
 * A branch with a free end that is shorter than so many times its width at its root is the corner of a stroke (where it
 * leaves a thin one), or a corner or serif of the material (where it leaves a thick one).
 */
const corner = { ofThin: 1.2, ofThick: 2 } as const;

/** A line ends so many widths before the last disc in a stroke's free end, so that strokes along it end where that one does. */
const freeEnd = 1 / 4;

/** Shorter lines, in widths, are slight waists, which are no hairlines. */
const shortest = 0.2;

/**
 * Middle lines of the material where the largest disc that fits is smaller than `width` (mm), from where it begins to be thin: the
 * midpoints of the chords of a Delaunay triangulation. Lines meet at forks. Corners and serifs have none; a part that is thin all over
 * has one if it is longer than the width.
 */
export function thinSpines(region: Region, width: number): Line[] {
  if (!(width > 0)) return [];
  const units = width * gridPerMm;
  const mesh = buildMesh(toGrid(region), Math.max(1, units / pointsPerWidth));
  if (!mesh) return [];
  const { thin, thinChord, radius } = findThin(mesh, units);
  const web: Web = { mesh, thin, radius, chords: thinChord.slice() };
  for (const chord of cornerChords(web, units)) web.chords[chord] = web.chords[mesh.twins[chord]!] = 0;
  return linesOf(web, width);
}

/** Thin triangles and the chords between them, and those that lead into thick material. */
interface Web {
  readonly mesh: Mesh;
  readonly thin: Uint8Array;
  /** See `Thinness`. */
  readonly radius: Float64Array;
  /** Per half-edge: 1 if lines run across it. */
  readonly chords: Uint8Array;
}

function chordsOf({ chords }: Web, t: number): number[] {
  return [3 * t, 3 * t + 1, 3 * t + 2].filter((e) => chords[e]);
}

/** All chords of the branches that are mere corners. */
function cornerChords(web: Web, width: number): number[] {
  const { mesh, thin } = web;
  const found: number[] = [];
  for (let t = 0; t < thin.length; t += 1) {
    if (!thin[t]) continue;
    const [first, ...others] = chordsOf(web, t);
    if (first === undefined || others.length > 0) continue;
    const way = wayFrom(web, first);
    const root = way.passed.at(-1)!;
    const least =
      way.end === 'end' ? width : edgeLength(mesh, root) * (way.end === 'thick' ? corner.ofThick : corner.ofThin);
    if (way.length < least) found.push(...way.passed);
  }
  return found;
}

interface Way {
  /** Half-edges passed, each in the triangle that is left. */
  readonly passed: readonly number[];
  readonly length: number;
  /** What is behind the last of them: a fork, thick material, or a triangle without another chord. */
  readonly end: 'fork' | 'thick' | 'end' | 'round';
}

/** The way that leaves a triangle by a chord, as far as it does not fork. */
function wayFrom(web: Web, start: number): Way {
  const { mesh, thin } = web;
  const passed = [start];
  let length = 0;
  for (let e = start; ;) {
    const entry = mesh.twins[e]!;
    const t = triangleOf(entry);
    if (!thin[t]) return { passed, length, end: 'thick' };
    const onward = chordsOf(web, t).filter((other) => other !== entry);
    if (onward.length !== 1) return { passed, length, end: onward.length > 1 ? 'fork' : 'end' };
    length += midpointDistance(mesh, entry, onward[0]!);
    e = onward[0]!;
    if (e === start) return { passed, length, end: 'round' };
    passed.push(e);
  }
}

function linesOf(web: Web, width: number): Line[] {
  const { mesh, thin } = web;
  const seen = new Uint8Array(web.chords.length);
  const lines: Line[] = [];
  /** The line with its last end where it begins to be thin, or where a stroke has its end; `entry` leads into the last triangle. */
  const withEnd = (line: Line, entry: number): Line => {
    const t = triangleOf(entry);
    if (!thin[t])
      return fromThin(line, fromGrid([mesh.xs[mesh.starts[entry]!]!, mesh.ys[mesh.starts[entry]!]!]), width);
    return chordsOf(web, t).length > 1 ? line : shortened(line, freeEnd * width);
  };
  const follow = (start: number): void => {
    if (seen[start]) return;
    const { passed, end } = wayFrom(web, start);
    for (const e of passed) seen[e] = seen[mesh.twins[e]!] = 1;
    const last = mesh.twins[passed.at(-1)!]!;
    const triangles = [triangleOf(start), ...passed.map((e) => triangleOf(mesh.twins[e]!))];
    let line: Line = triangles.flatMap((t) => centreOf(web, t) ?? []);
    if (end !== 'round') line = withEnd(withEnd(line, last).toReversed(), start);
    if (lineLength(line) > shortest * width) lines.push(line);
  };
  // From forks and ends first; what is left are ways from thick to thick, and rings.
  for (let t = 0; t < thin.length; t += 1) {
    const out = thin[t] ? chordsOf(web, t) : [];
    if (out.length !== 2) out.forEach(follow);
  }
  for (const fromThick of [true, false])
    for (let e = 0; e < seen.length; e += 1)
      if (web.chords[e] && thin[triangleOf(mesh.twins[e]!)] && Boolean(thin[triangleOf(e)]) !== fromThick) follow(e);
  return lines;
}

/** The centre of the disc through the corners of a triangle; `undefined` if it is outside the material. */
function centreOf({ mesh: { xs, ys, starts }, radius }: Web, t: number): Point | undefined {
  if (!radius[t]) return undefined;
  const [a, b, c] = [starts[3 * t]!, starts[3 * t + 1]!, starts[3 * t + 2]!];
  const [bx, by] = [xs[b]! - xs[a]!, ys[b]! - ys[a]!];
  const [cx, cy] = [xs[c]! - xs[a]!, ys[c]! - ys[a]!];
  const [bb, cc, twice] = [bx * bx + by * by, cx * cx + cy * cy, 2 * (bx * cy - by * cx)];
  return fromGrid([xs[a]! + (cy * bb - by * cc) / twice, ys[a]! + (bx * cc - cx * bb) / twice]);
}

/** The line as far as discs round its points that touch `edge` are no wider than `width`: along its last step they only widen. */
function fromThin(line: Line, edge: Point, width: number): Line {
  const [from, to] = [line.at(-2), line.at(-1)];
  if (!from || !to) return line;
  const [dx, dy, ex, ey] = [to.x - from.x, to.y - from.y, from.x - edge.x, from.y - edge.y];
  const [square, half, rest] = [dx * dx + dy * dy, dx * ex + dy * ey, ex * ex + ey * ey - (width / 2) ** 2];
  const t = (Math.sqrt(Math.max(0, half * half - square * rest)) - half) / square;
  return t > 0 && t < 1 ? [...line.slice(0, -1), { x: from.x + t * dx, y: from.y + t * dy }] : line;
}

/** The line without its last `by` mm. */
function shortened(line: Line, by: number): Line {
  let left = by;
  for (let i = line.length - 1; i > 0; i -= 1) {
    const [from, to] = [line[i - 1]!, line[i]!];
    const step = distance(from, to);
    if (step > left) {
      const t = 1 - left / step;
      return [...line.slice(0, i), { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) }];
    }
    left -= step;
  }
  return [];
}
