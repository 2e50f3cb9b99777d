/** Lengths and areas in a mesh, in grid units. Edges are given as half-edges. */

import type { Mesh } from './mesh.ts';
import { nextEdge, previousEdge } from './triangulation.ts';

/** Length of the vector (x, y). `Math.hypot` guards against overflow, impossible here, and takes ten times as long. */
export const vectorLength = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** Length of an edge in units. */
export function edgeLength(mesh: Mesh, e: number): number {
  const a = mesh.starts[e]!;
  const b = mesh.starts[nextEdge(e)]!;
  return vectorLength(mesh.xs[a]! - mesh.xs[b]!, mesh.ys[a]! - mesh.ys[b]!);
}

/** The vertex opposite the edge, in the edge's own triangle. */
export const apexOf = (mesh: Mesh, e: number): number => mesh.starts[previousEdge(e)]!;

/** Acuteness of the angle opposite the edge: positive if it is acute, 0 for a right angle (dot product, units²). */
export function acuteness(mesh: Mesh, e: number): number {
  const { xs, ys } = mesh;
  const a = mesh.starts[e]!;
  const b = mesh.starts[nextEdge(e)]!;
  const c = apexOf(mesh, e);
  return (xs[a]! - xs[c]!) * (xs[b]! - xs[c]!) + (ys[a]! - ys[c]!) * (ys[b]! - ys[c]!);
}

/**
 * Distance from the apex of a triangle to its boundary edge: the width of the material there (units). For triangles
 * with exactly one boundary edge.
 */
export function heightOn(mesh: Mesh, boundaryEdge: number): number {
  const { xs, ys, starts } = mesh;
  const a = starts[boundaryEdge]!;
  const b = starts[nextEdge(boundaryEdge)]!;
  const c = starts[previousEdge(boundaryEdge)]!;
  const dx = xs[b]! - xs[a]!;
  const dy = ys[b]! - ys[a]!;
  const t = Math.min(1, Math.max(0, ((xs[c]! - xs[a]!) * dx + (ys[c]! - ys[a]!) * dy) / (dx * dx + dy * dy)));
  return vectorLength(xs[c]! - xs[a]! - t * dx, ys[c]! - ys[a]! - t * dy);
}

export function midpoint({ xs, ys, starts }: Mesh, e: number): readonly [x: number, y: number] {
  const a = starts[e]!;
  const b = starts[nextEdge(e)]!;
  return [(xs[a]! + xs[b]!) / 2, (ys[a]! + ys[b]!) / 2];
}

/** Distance between the midpoints of two edges. */
export function midpointDistance(mesh: Mesh, e: number, f: number): number {
  const [ax, ay] = midpoint(mesh, e);
  const [bx, by] = midpoint(mesh, f);
  return vectorLength(ax - bx, ay - by);
}

/** Distance along the outline between the ends of a chord, the shorter way round; infinite between two outlines. */
export function arcOver({ starts, ring, along, ringLengths }: Mesh, e: number): number {
  const a = starts[e]!;
  const b = starts[nextEdge(e)]!;
  if (ring[a] !== ring[b]) return Infinity;
  const way = Math.abs(along[a]! - along[b]!);
  return Math.min(way, ringLengths[ring[a]!]! - way);
}

/** Area of a triangle, units². */
export function triangleArea({ xs, ys, starts }: Mesh, t: number): number {
  const [a, b, c] = [starts[3 * t]!, starts[3 * t + 1]!, starts[3 * t + 2]!];
  return Math.abs((xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (ys[b]! - ys[a]!) * (xs[c]! - xs[a]!)) / 2;
}
