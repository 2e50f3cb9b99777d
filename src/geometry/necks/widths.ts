/** The exact width of a neck: the least distance between the two stretches of outline on its sides. */

import { arcOver } from './lengths.ts';
import type { Mesh } from './mesh.ts';
import { nextEdge } from './triangulation.ts';

export interface Width {
  /** Grid units. */
  readonly width: number;
  readonly ends: readonly [Place, Place];
}

type Place = readonly [x: number, y: number];

/** How often the search moves on when the least distance is found at the rim of the stretch searched. */
const maxMoves = 4;
const maxVertices = 400;

/**
 * The least distance between the outlines within `reach` (units) of the ends of a chord. With `follow`, the search goes on
 * towards narrower places until it has found the narrowest one nearby.
 */
export function exactWidth(mesh: Mesh, chord: number, reach: number, follow: boolean): Width {
  let a = mesh.starts[chord]!;
  let b = mesh.starts[nextEdge(chord)]!;
  // Both stretches together stay well short of meeting round the end of a run.
  const limit = Math.min(reach, arcOver(mesh, chord) / 4);
  let best: Found | undefined;
  for (let moves = 0; moves <= (follow ? maxMoves : 0); moves += 1) {
    const found = nearest(mesh, stretch(mesh, a, limit), stretch(mesh, b, limit));
    if (best && !(found.width < best.width)) break;
    best = found;
    if (found.a === a && found.b === b) break;
    ({ a, b } = found);
  }
  return best!;
}

interface Found extends Width {
  /** The vertices nearest to the two ends. */
  readonly a: number;
  readonly b: number;
}

/** The vertices along the outline from `limit` before a vertex to `limit` after it. */
function stretch(mesh: Mesh, vertex: number, limit: number): number[] {
  const before = oneWay(mesh, vertex, limit, mesh.previous);
  return [...before.reverse(), vertex, ...oneWay(mesh, vertex, limit, mesh.next)];
}

/** Ends short of a place where outlines meet: both stretches could reach it, and would be found to touch there. */
function oneWay({ xs, ys }: Mesh, vertex: number, limit: number, towards: Int32Array): number[] {
  const found: number[] = [];
  let at = vertex;
  let way = 0;
  while (found.length < maxVertices) {
    const next = towards[at]!;
    if (next < 0 || next === vertex || towards[next]! < 0) break;
    way += Math.hypot(xs[next]! - xs[at]!, ys[next]! - ys[at]!);
    if (way > limit) break;
    found.push(next);
    at = next;
  }
  return found;
}

/** Two stretches that do not cross are nearest to each other at a vertex of one of them. */
function nearest(mesh: Mesh, first: readonly number[], second: readonly number[]): Found {
  const one = vertexToStretch(mesh, first, second);
  const other = vertexToStretch(mesh, second, first);
  if (one.width <= other.width)
    return { width: one.width, a: one.vertex, b: one.opposite, ends: [one.place, one.foot] };
  return { width: other.width, a: other.opposite, b: other.vertex, ends: [other.foot, other.place] };
}

function vertexToStretch({ xs, ys }: Mesh, vertices: readonly number[], line: readonly number[]) {
  let square = Infinity;
  let vertex = vertices[0]!;
  let opposite = line[0]!;
  let foot: Place = [xs[opposite]!, ys[opposite]!];
  for (const v of vertices) {
    const px = xs[v]!;
    const py = ys[v]!;
    for (let i = 0; i < line.length; i += 1) {
      const a = line[i]!;
      const b = line[i + 1] ?? a;
      const dx = xs[b]! - xs[a]!;
      const dy = ys[b]! - ys[a]!;
      const along =
        a === b ? 0 : Math.min(1, Math.max(0, ((px - xs[a]!) * dx + (py - ys[a]!) * dy) / (dx * dx + dy * dy)));
      const fx = xs[a]! + along * dx;
      const fy = ys[a]! + along * dy;
      const distance = (px - fx) ** 2 + (py - fy) ** 2;
      if (distance >= square) continue;
      square = distance;
      vertex = v;
      opposite = along < 0.5 ? a : b;
      foot = [fx, fy];
    }
  }
  return { width: Math.sqrt(square), vertex, opposite, place: [xs[vertex]!, ys[vertex]!] as Place, foot };
}
