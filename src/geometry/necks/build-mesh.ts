/** Triangulating the inside of a region. */

import type { GridRing } from './clean.ts';
import { cleanRings } from './clean.ts';
import { vectorLength } from './lengths.ts';
import { triangleOf } from './mesh.ts';
import type { Mesh } from './mesh.ts';
import { hasBuriedVertex, outlinesOf } from './outlines.ts';
import { Triangulation } from './triangulation.ts';

/**
 * Triangulates the rings with boundary points no farther apart than `spacing` (units); `undefined` if there is no area.
 * Outlines that coincide cancel out, and the areas they enclose become one.
 */
export function buildMesh(rings: readonly GridRing[], spacing: number): Mesh | undefined {
  const mesh = triangulate(cleanRings(rings), spacing);
  // The points of cancelled outlines lie in the middle of the material and would be taken for its edge: start again
  // without.
  return mesh && hasBuriedVertex(mesh) ? triangulate(cleanRings(outlinesOf(mesh)), spacing) : mesh;
}

function triangulate(rings: readonly GridRing[], spacing: number): Mesh | undefined {
  const { xs, ys, chains } = sampleOutlines(rings, spacing);
  if (xs.length < 3) return undefined;
  const triangulation = new Triangulation(xs, ys);
  const { starts, twins } = triangulation;
  if (starts.length === 0) return undefined;
  for (const chain of chains) {
    let a = chain[chain.length - 1]!;
    for (const b of chain) {
      if (a !== b) triangulation.addBoundary(a, b);
      a = b;
    }
  }
  const inside = insideOf(triangulation);
  const isChord = new Uint8Array(starts.length);
  for (let t = 0; t < inside.length; t += 1) {
    if (!inside[t]) continue;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      const twin = twins[e]!;
      isChord[e] = twin >= 0 && inside[triangleOf(twin)] ? 1 : 0;
    }
  }
  const meetings = pinchVertices(starts, inside, isChord, xs.length);
  return { xs, ys, starts, twins, inside, isChord, meetings, ...neighbours(xs, ys, chains, meetings) };
}

/** Points along all rings, each position once, and the rings as chains of those points. */
function sampleOutlines(rings: readonly GridRing[], spacing: number) {
  const px: number[] = [];
  const py: number[] = [];
  const chains: number[][] = [];
  for (const { xs, ys } of rings) {
    const chain: number[] = [];
    for (let i = 0; i < xs.length; i += 1) {
      const j = i + 1 === xs.length ? 0 : i + 1;
      const dx = xs[j]! - xs[i]!;
      const dy = ys[j]! - ys[i]!;
      const steps = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy) / spacing));
      for (let k = 0; k < steps; k += 1) {
        chain.push(px.length);
        px.push(xs[i]! + Math.round((dx * k) / steps));
        py.push(ys[i]! + Math.round((dy * k) / steps));
      }
    }
    chains.push(chain);
  }
  const { ids, xs, ys } = mergedVertices(px, py);
  for (const chain of chains) for (let i = 0; i < chain.length; i += 1) chain[i] = ids[chain[i]!]!;
  return { xs, ys, chains };
}

/** Numbers the points, equal ones alike (open addressing: a hash table of point numbers). */
function mergedVertices(px: readonly number[], py: readonly number[]) {
  let size = 16;
  while (size < px.length * 2) size *= 2;
  const table = new Int32Array(size).fill(-1);
  const ids = new Int32Array(px.length);
  const xs = new Float64Array(px.length);
  const ys = new Float64Array(px.length);
  let count = 0;
  for (let i = 0; i < px.length; i += 1) {
    const x = px[i]!;
    const y = py[i]!;
    let slot = (Math.imul(x | 0, 0x9e3779b1) ^ Math.imul(y | 0, 0x85ebca6b)) >>> 0;
    slot = (slot ^ (slot >>> 15)) & (size - 1);
    while (table[slot]! >= 0 && (xs[table[slot]!] !== x || ys[table[slot]!] !== y)) slot = (slot + 1) & (size - 1);
    if (table[slot]! < 0) {
      table[slot] = count;
      xs[count] = x;
      ys[count] = y;
      count += 1;
    }
    ids[i] = table[slot]!;
  }
  return { ids, xs: xs.slice(0, count), ys: ys.slice(0, count) };
}

/** Flood fill by winding number from the hull inwards. */
function insideOf({ starts, twins, steps }: Triangulation): Uint8Array {
  const count = starts.length / 3;
  const winding = new Int32Array(count);
  const seen = new Uint8Array(count);
  const stack: number[] = [];
  for (let e = 0; e < starts.length; e += 1) {
    const triangle = triangleOf(e);
    if (twins[e]! >= 0 || seen[triangle]) continue;
    winding[triangle] = steps[e]!;
    seen[triangle] = 1;
    stack.push(triangle);
    while (stack.length > 0) {
      const t = stack.pop()!;
      for (let f = 3 * t; f < 3 * t + 3; f += 1) {
        if (twins[f]! < 0) continue;
        const neighbour = triangleOf(twins[f]!);
        if (seen[neighbour]) continue;
        winding[neighbour] = winding[t]! - steps[f]!;
        seen[neighbour] = 1;
        stack.push(neighbour);
      }
    }
  }
  const inside = new Uint8Array(count);
  for (let t = 0; t < count; t += 1) inside[t] = winding[t]! > 0 ? 1 : 0;
  return inside;
}

/** Vertices from which the outline of the material leaves more than once. */
function pinchVertices(starts: Uint32Array, inside: Uint8Array, isChord: Uint8Array, vertices: number): number[] {
  const leaving = new Uint8Array(vertices);
  const found: number[] = [];
  for (let t = 0; t < inside.length; t += 1) {
    if (!inside[t]) continue;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (isChord[e]) continue;
      const vertex = starts[e]!;
      leaving[vertex]! += 1;
      if (leaving[vertex] === 2) found.push(vertex);
    }
  }
  return found;
}

function neighbours(
  xs: Float64Array,
  ys: Float64Array,
  chains: readonly (readonly number[])[],
  meetings: readonly number[],
) {
  const next = new Int32Array(xs.length).fill(-1);
  const previous = new Int32Array(xs.length).fill(-1);
  const ring = new Int32Array(xs.length).fill(-1);
  const along = new Float64Array(xs.length);
  const ringLengths: number[] = [];
  for (const [r, chain] of chains.entries()) {
    let length = 0;
    let v = chain[chain.length - 1]!;
    for (const w of chain) {
      if (w === v) continue;
      next[v] = w;
      previous[w] = v;
      length += vectorLength(xs[w]! - xs[v]!, ys[w]! - ys[v]!);
      ring[w] = r;
      along[w] = length;
      v = w;
    }
    ringLengths.push(length);
  }
  for (const v of meetings) {
    next[v] = -1;
    previous[v] = -1;
  }
  return { next, previous, ring, along, ringLengths };
}
