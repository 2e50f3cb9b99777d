/** The exact width of a neck: the least distance between the stretches of outline on its two sides. */

import { arcOver, vectorLength } from './lengths.ts';
import type { Mesh } from './mesh.ts';
import { triangleOf } from './mesh.ts';
import { nextEdge } from './triangulation.ts';

export interface Width {
  /** Grid units. */
  readonly width: number;
  readonly ends: readonly [GridPoint, GridPoint];
}

type GridPoint = readonly [x: number, y: number];

/** Most times the search moves on after finding the least distance at the end of the stretch searched. */
const maxMoves = 4;
const maxVertices = 400;

/**
 * The least distance between the outlines near the ends of a chord, where boundary points are `spacing` (units) apart.
 * With `follow`, the search moves on towards narrower places until it has found the narrowest nearby.
 */
export function exactWidth(mesh: Mesh, chord: number, spacing: number, follow: boolean): Width {
  let a = mesh.starts[chord]!;
  let b = mesh.starts[nextEdge(chord)]!;
  // Both stretches together stay well short of meeting round the end of a run.
  const limit = Math.min(follow ? 1.5 * spacing : spacing / 2, arcOver(mesh, chord) / 4);
  let best: NearestPair = { ...widthBetween(vertexPoint(mesh, a), vertexPoint(mesh, b)), a, b };
  for (let moves = 0; moves <= (follow ? maxMoves : 0); moves += 1) {
    const found = nearest(outlineStretch(mesh, a, limit), outlineStretch(mesh, b, limit));
    if (!found || found.width >= best.width || !isAcrossMaterial(mesh, chord, found)) break;
    best = found;
    if (found.a === a && found.b === b) break;
    ({ a, b } = found);
  }
  return best;
}

const vertexPoint = ({ xs, ys }: Mesh, vertex: number): GridPoint => [xs[vertex]!, ys[vertex]!];

const widthBetween = (a: GridPoint, b: GridPoint): Width => ({
  width: vectorLength(a[0] - b[0], a[1] - b[1]),
  ends: [a, b],
});

/** Whether no outline passes between the two ends, as it would if a small hole lay between them. */
function isAcrossMaterial(mesh: Mesh, chord: number, { ends: [p, q], width }: Width): boolean {
  const { xs, ys, starts, twins, isChord } = mesh;
  // A little short of the outlines that the ends lie on.
  const a = pointBetween(p, q, 0.01);
  const b = pointBetween(p, q, 0.99);
  const from = triangleOf(chord);
  const seen = new Set([from]);
  // All material nearby that is connected to the chord.
  for (const t of seen) {
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      const u = starts[e]!;
      const v = starts[nextEdge(e)]!;
      const first: GridPoint = [xs[u]!, ys[u]!];
      const second: GridPoint = [xs[v]!, ys[v]!];
      if (!isChord[e]) {
        if (
          orientation(first, second, a) * orientation(first, second, b) < 0 &&
          orientation(a, b, first) * orientation(a, b, second) < 0
        )
          return false;
      } else if (seen.size < maxVertices && (isNear(p, first, 2 * width) || isNear(p, second, 2 * width))) {
        seen.add(triangleOf(twins[e]!));
      }
    }
  }
  return true;
}

const pointBetween = (p: GridPoint, q: GridPoint, t: number): GridPoint => [
  p[0] + t * (q[0] - p[0]),
  p[1] + t * (q[1] - p[1]),
];
const orientation = (a: GridPoint, b: GridPoint, c: GridPoint): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
const isNear = (a: GridPoint, b: GridPoint, within: number): boolean =>
  vectorLength(a[0] - b[0], a[1] - b[1]) <= within;

interface NearestPair extends Width {
  /** The vertices nearest to the two ends. */
  readonly a: number;
  readonly b: number;
}

/** A point on the outline, and the vertex at that point or the next one beyond. */
interface Knot {
  readonly x: number;
  readonly y: number;
  readonly vertex: number;
}

/** The outline from `limit` before a vertex to `limit` after it. */
function outlineStretch(mesh: Mesh, vertex: number, limit: number): Knot[] {
  const centre = { x: mesh.xs[vertex]!, y: mesh.ys[vertex]!, vertex };
  return [
    ...nearestOneWay(mesh, centre, limit, mesh.previous).reverse(),
    centre,
    ...nearestOneWay(mesh, centre, limit, mesh.next),
  ];
}

/** Stops short of a place where outlines meet: both stretches could reach it, and would be found to touch there. */
function nearestOneWay({ xs, ys }: Mesh, from: Knot, limit: number, towards: Int32Array): Knot[] {
  const knots: Knot[] = [];
  let at = from;
  let left = limit;
  while (left > 1 && knots.length < maxVertices) {
    const vertex = towards[at.vertex]!;
    if (vertex < 0 || vertex === from.vertex || towards[vertex]! < 0) break;
    const dx = xs[vertex]! - at.x;
    const dy = ys[vertex]! - at.y;
    const length = vectorLength(dx, dy);
    const part = Math.min(1, left / length);
    at = { x: at.x + part * dx, y: at.y + part * dy, vertex };
    knots.push(at);
    left -= length;
  }
  return knots;
}

/** Two stretches that do not cross are nearest to each other at a knot of one of them. */
function nearest(first: readonly Knot[], second: readonly Knot[]): NearestPair | undefined {
  const one = knotToStretch(first, second);
  const other = knotToStretch(second, first);
  if (one && !(other && other.width < one.width)) return one;
  return other && { width: other.width, a: other.b, b: other.a, ends: [other.ends[1], other.ends[0]] };
}

/** `undefined` if no knot faces the material side of the line: what lies between is a gap, not material. */
function knotToStretch(knots: readonly Knot[], line: readonly Knot[]): NearestPair | undefined {
  let square = Infinity;
  let found: NearestPair | undefined;
  for (const knot of knots) {
    for (let i = 1; i < line.length; i += 1) {
      const a = line[i - 1]!;
      const b = line[i]!;
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const ux = knot.x - a.x;
      const uy = knot.y - a.y;
      if (dx * uy - dy * ux <= 0) continue;
      const along = Math.min(1, Math.max(0, (ux * dx + uy * dy) / (dx * dx + dy * dy)));
      const offset = (ux - along * dx) ** 2 + (uy - along * dy) ** 2;
      if (offset >= square) continue;
      square = offset;
      const foot: GridPoint = [a.x + along * dx, a.y + along * dy];
      found = { ...widthBetween([knot.x, knot.y], foot), a: knot.vertex, b: along < 0.5 ? a.vertex : b.vertex };
    }
  }
  return found;
}
