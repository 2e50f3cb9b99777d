/** The exact width of a neck: the least distance between the two stretches of outline on its sides. */

import { arcOver, distance } from './lengths.ts';
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
 * The least distance between the outlines near the ends of a chord, where boundary points are `spacing` (units) apart. With
 * `follow`, the search goes on towards narrower places until it has found the narrowest one nearby.
 */
export function exactWidth(mesh: Mesh, chord: number, spacing: number, follow: boolean): Width {
  let a = mesh.starts[chord]!;
  let b = mesh.starts[nextEdge(chord)]!;
  // Both stretches together stay well short of meeting round the end of a run.
  const limit = Math.min(follow ? 1.5 * spacing : spacing / 2, arcOver(mesh, chord) / 4);
  let best: Found | undefined;
  for (let moves = 0; moves <= (follow ? maxMoves : 0); moves += 1) {
    const found = nearest(stretch(mesh, a, limit), stretch(mesh, b, limit));
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

/** A place on the outline and the vertex it is at, or the next one beyond. */
interface Knot {
  readonly x: number;
  readonly y: number;
  readonly vertex: number;
}

/** The outline from `limit` before a vertex to `limit` after it. */
function stretch(mesh: Mesh, vertex: number, limit: number): Knot[] {
  const centre = { x: mesh.xs[vertex]!, y: mesh.ys[vertex]!, vertex };
  return [...oneWay(mesh, centre, limit, mesh.previous).reverse(), centre, ...oneWay(mesh, centre, limit, mesh.next)];
}

/** Ends short of a place where outlines meet: both stretches could reach it, and would be found to touch there. */
function oneWay({ xs, ys }: Mesh, from: Knot, limit: number, towards: Int32Array): Knot[] {
  const knots: Knot[] = [];
  let at = from;
  let left = limit;
  while (left > 1 && knots.length < maxVertices) {
    const vertex = towards[at.vertex]!;
    if (vertex < 0 || vertex === from.vertex || towards[vertex]! < 0) break;
    const dx = xs[vertex]! - at.x;
    const dy = ys[vertex]! - at.y;
    const length = distance(dx, dy);
    const part = Math.min(1, left / length);
    at = { x: at.x + part * dx, y: at.y + part * dy, vertex };
    knots.push(at);
    left -= length;
  }
  return knots;
}

/** Two stretches that do not cross are nearest to each other at a knot of one of them. */
function nearest(first: readonly Knot[], second: readonly Knot[]): Found {
  const one = knotToStretch(first, second);
  const other = knotToStretch(second, first);
  if (one.width <= other.width) {
    return { width: one.width, a: one.vertex, b: one.opposite, ends: [one.place, one.foot] };
  }
  return { width: other.width, a: other.opposite, b: other.vertex, ends: [other.foot, other.place] };
}

function knotToStretch(knots: readonly Knot[], line: readonly Knot[]) {
  let square = Infinity;
  let from = knots[0]!;
  let opposite = line[0]!;
  let foot: Place = [opposite.x, opposite.y];
  for (const knot of knots) {
    for (let i = 0; i < line.length; i += 1) {
      const a = line[i]!;
      const b = line[i + 1] ?? a;
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const along = a === b ? 0 : ((knot.x - a.x) * dx + (knot.y - a.y) * dy) / (dx * dx + dy * dy);
      const t = Math.min(1, Math.max(0, along));
      const fx = a.x + t * dx;
      const fy = a.y + t * dy;
      const squareHere = (knot.x - fx) ** 2 + (knot.y - fy) ** 2;
      if (squareHere >= square) continue;
      square = squareHere;
      from = knot;
      opposite = t < 0.5 ? a : b;
      foot = [fx, fy];
    }
  }
  const place: Place = [from.x, from.y];
  return { width: Math.sqrt(square), vertex: from.vertex, opposite: opposite.vertex, place, foot };
}
