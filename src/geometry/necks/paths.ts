/** Runs with a free end: the longest way through the thin triangles that pruning removed. */

import type { Mesh } from './mesh.ts';
import { triangleOf } from './mesh.ts';
import { apexOf, arcOver, vectorLength, edgeLength, heightOn, midpoint, midpointDistance } from './lengths.ts';
import type { Thinness } from './thin.ts';

/** One triangle on the way. */
export interface PathStep {
  /** The chord by which the way leaves the triangle. */
  readonly chord: number;
  /** Width of the material there, and length of the step, in units. */
  readonly width: number;
  readonly length: number;
}

export interface MeshPath {
  readonly steps: readonly PathStep[];
  readonly length: number;
  /** Whether it starts at thicker material or at a core; otherwise it crosses a part that is thin all over. */
  readonly attached: boolean;
}

/**
 * A chord is at the end of a run if its ends are nearer to each other along the outline than this many chord lengths.
 */
const endArc = 3;
/** A place is a neck if the path is wider than that place by this factor on both sides. */
const neck = 1.02;
/** Widths that differ by less than this fraction count as equal. */
export const alike = 0.002;
/** A run that narrows by more than this factor over its middle half is a taper. */
const taper = 1.3;

/** The longest path through the pruned triangles of one connected thin component; `undefined` if it has no chords. */
export function longestFreePath(mesh: Mesh, thinness: Thinness, triangles: readonly number[]): MeshPath | undefined {
  const { thin, core, thinChord } = thinness;
  const isPruned = (t: number) => thin[t] === 1 && core[t] === 0;
  let best: MeshWalk | undefined;
  let some = -1;
  for (const t of triangles) {
    if (!isPruned(t)) continue;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!thinChord[e]) continue;
      some = e;
      if (isPruned(triangleOf(mesh.twins[e]!))) continue;
      const walk = walkFrom(mesh, thinness, e);
      if (!best || walk.length > best.length) best = walk;
    }
  }
  if (best) return { steps: stepsOf(mesh, best), length: best.length, attached: true };
  if (some < 0) return undefined;
  // The farthest point from anywhere in a tree is an end of a longest path.
  const ahead = walkFrom(mesh, thinness, some);
  const behind = walkFrom(mesh, thinness, mesh.twins[some]!);
  const end = (ahead.length > behind.length ? ahead : behind).last;
  const whole = walkFrom(mesh, thinness, mesh.twins[end]!);
  return { steps: stepsOf(mesh, whole), length: whole.length, attached: false };
}

/** A free end of the material: the end of a pruned run whose other end is attached to something thicker. */
export interface FreeEnd {
  /** The vertex farthest along. */
  readonly vertex: number;
  /** From the thicker material to the end; the last step ends at the vertex. */
  readonly path: MeshPath;
}

/** Every free end of the thin parts attached to something thicker, one for each run that pruning removed. */
export function freeEnds(mesh: Mesh, thinness: Thinness): FreeEnd[] {
  const { thin, core, thinChord } = thinness;
  const ends: FreeEnd[] = [];
  for (let e = 0; e < thinChord.length; e += 1) {
    const t = triangleOf(e);
    if (!thinChord[e] || !thin[t] || core[t]) continue;
    const before = triangleOf(mesh.twins[e]!);
    if (thin[before] && !core[before]) continue;
    const walk = walkFrom(mesh, thinness, e);
    const vertex = apexOf(mesh, walk.last);
    const [x, y] = midpoint(mesh, walk.last);
    const length = vectorLength(mesh.xs[vertex]! - x, mesh.ys[vertex]! - y);
    const last: PathStep = { chord: walk.last, width: edgeLength(mesh, walk.last) / 2, length };
    const steps = [...stepsOf(mesh, walk), last];
    ends.push({ vertex, path: { steps, length: walk.length + length, attached: true } });
  }
  return ends;
}

interface MeshWalk {
  /** Half-edges entered, in order of discovery, and for each the index of the one it was reached from. */
  readonly entered: readonly number[];
  readonly before: readonly number[];
  /** The last half-edge of the longest way, its index, and the length of the way. */
  readonly last: number;
  readonly index: number;
  readonly length: number;
}

/**
 * All ways into the pruned tree from a half-edge inwards. Pruned triangles form trees, so no triangle is reached twice.
 */
function walkFrom(mesh: Mesh, { thin, core, thinChord }: Thinness, start: number): MeshWalk {
  const entered = [start];
  const before = [-1];
  const lengths = [0];
  let index = 0;
  for (let i = 0; i < entered.length; i += 1) {
    const e = entered[i]!;
    const t = triangleOf(e);
    for (let f = 3 * t; f < 3 * t + 3; f += 1) {
      if (f === e || !thinChord[f]) continue;
      const twin = mesh.twins[f]!;
      const neighbour = triangleOf(twin);
      if (!thin[neighbour] || core[neighbour]) continue;
      const length = lengths[i]! + midpointDistance(mesh, e, f);
      if (length > lengths[index]!) index = entered.length;
      entered.push(twin);
      before.push(i);
      lengths.push(length);
    }
  }
  return { entered, before, last: entered[index]!, index, length: lengths[index]! };
}

function stepsOf(mesh: Mesh, { entered, before, index }: MeshWalk): PathStep[] {
  const steps: PathStep[] = [];
  for (let i = index; before[i]! >= 0; i = before[i]!) {
    const chord = mesh.twins[entered[i]!]!;
    const entry = entered[before[i]!]!;
    const third = 9 * triangleOf(entry) + 3 - entry - chord; // the three half-edges 3t, 3t + 1, 3t + 2 add up to 9t + 3
    const width = mesh.isChord[third]
      ? Math.min(edgeLength(mesh, entry), edgeLength(mesh, chord))
      : heightOn(mesh, third);
    steps.push({ chord, width, length: midpointDistance(mesh, entry, chord) });
  }
  return steps.reverse();
}

/** Length of a path over which its width is within a third of its median. */
export function evenLength({ steps }: MeshPath): number {
  const median = medianWidth(steps);
  return steps.reduce((sum, { width, length }) => {
    return width > (4 / 3) * median || width < (3 / 4) * median ? sum : sum + length;
  }, 0);
}

/** The place at which to measure the width of a path. */
export interface Gauge {
  readonly chord: number;
  /** Whether the path is wider on both sides. */
  readonly isNeck: boolean;
}

/**
 * The narrowest place of a path between two wider ones; for a path without one, which only narrows towards its ends,
 * the place with its median width, since its least width is that of its tip. `undefined` for a path that is all end.
 */
export function gaugeOf(mesh: Mesh, { steps: all }: MeshPath): Gauge | undefined {
  const from = all.findIndex(({ chord }) => !isAtEnd(mesh, chord));
  if (from < 0) return undefined;
  const steps = all.slice(from, all.findLastIndex(({ chord }) => !isAtEnd(mesh, chord)) + 1);
  const widestAfter = steps.map(({ width }) => width);
  for (let i = steps.length - 2; i >= 0; i -= 1) widestAfter[i] = Math.max(widestAfter[i]!, widestAfter[i + 1]!);
  let widestBefore = 0;
  let least = Infinity;
  for (const [i, { width }] of steps.entries()) {
    if (width < least && neck * width < Math.min(widestBefore, widestAfter[i]!)) least = width;
    widestBefore = Math.max(widestBefore, width);
  }
  const isNeck = least < Infinity;
  return { chord: mostCentral(steps, isNeck ? least : medianWidth(steps)).chord, isNeck };
}

/** Of all steps of about that width, the one nearest to the path's middle, so that marks on even strokes stay put. */
function mostCentral(steps: readonly PathStep[], width: number): PathStep {
  const middle = steps.reduce((sum, { length }) => sum + length, 0) / 2;
  let best = steps[0]!;
  let nearest = Infinity;
  let passed = 0;
  for (const step of steps) {
    const off = Math.abs(passed + step.length / 2 - middle);
    passed += step.length;
    if (Math.abs(step.width - width) > alike * width || off >= nearest) continue;
    nearest = off;
    best = step;
  }
  return best;
}

/** Whether the path narrows steadily to its end. An ellipse narrows by 1.46 or more from a quarter to three quarters of the way. */
export function isTaper({ steps, length }: MeshPath): boolean {
  return widthAt(steps, length / 4) > taper * widthAt(steps, (3 * length) / 4);
}

function widthAt(steps: readonly PathStep[], way: number): number {
  let passed = 0;
  return steps.find((step) => (passed += step.length) >= way)?.width ?? 0;
}

/** The width that half of the path's length exceeds. */
function medianWidth(steps: readonly PathStep[]): number {
  const sorted = steps.toSorted((a, b) => a.width - b.width);
  const half = steps.reduce((sum, { length }) => sum + length, 0) / 2;
  let length = 0;
  return sorted.find((step) => (length += step.length) >= half)?.width ?? 0;
}

/** Whether the chord is so near the end of a run that its ends are close along the outline. */
const isAtEnd = (mesh: Mesh, chord: number): boolean => arcOver(mesh, chord) < endArc * edgeLength(mesh, chord);
