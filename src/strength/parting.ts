/**
 * Finds where a single cut would part the hanger from most of the tag.
 *
 * The region is triangulated, and the triangles treated as a graph: a chord parts the piece exactly if it is a bridge
 * of that graph (R. E. Tarjan, "A note on finding the bridges of a graph", 1974), whatever its width. `findNecks` is
 * not suitable here: it looks for places narrower than a limit, and with a limit wide enough for every neck under load
 * it takes lettering for one thin stroke and drops necks with little beyond them, such as those next to a ring.
 *
 * A chord is a neck only if the disc on it as diameter contains no other outline (a Gabriel edge of the triangulation).
 * Any other runs aslant: from the root of a bar out to the shoulder it widens into, say, where the bar itself is what
 * breaks.
 */

import { perimeter } from '../geometry/measure.ts';
import { fromGrid, gridPerMm, toGrid } from '../geometry/necks/clean.ts';
import { acuteness, triangleArea } from '../geometry/necks/lengths.ts';
import type { Mesh } from '../geometry/necks/mesh.ts';
import { buildMesh } from '../geometry/necks/build-mesh.ts';
import { triangleOf } from '../geometry/necks/mesh.ts';
import { nextEdge } from '../geometry/necks/triangulation.ts';
import { exactWidth } from '../geometry/necks/widths.ts';
import type { Point, Region } from '../geometry/types.ts';

/** A line from edge to edge through material. */
export type Chord = readonly [Point, Point];

/** Outlines are sampled at this spacing; the width of a neck is then measured exactly. */
const spacingMm = 0.5;
const maxSamples = 6000;
/** Number of the apparently weakest chords that are measured exactly. */
const refined = 8;

/**
 * Of all necks of a part that separate the opening from more than half of its area, the one for which `strengthOf` is
 * least; `undefined` if there is none.
 * @param opening The centre of the opening.
 */
export function weakestParting(
  island: Region,
  opening: Point,
  strengthOf: (chord: Chord) => number,
): Chord | undefined {
  const spacing = Math.max(spacingMm, perimeter(island) / maxSamples) * gridPerMm;
  const mesh = buildMesh(toGrid(island), spacing);
  const root = mesh && triangleAt(mesh, opening);
  if (!mesh || root === undefined) return undefined;
  const isNeck = (edge: number) => acuteness(mesh, edge) > 0 && acuteness(mesh, mesh.twins[edge]!) > 0;
  const necks = partingChords(mesh, root).filter(isNeck);
  const rated = necks.map((edge) => {
    const ends = [mesh.starts[edge]!, mesh.starts[nextEdge(edge)]!].map((v) => fromGrid([mesh.xs[v]!, mesh.ys[v]!]));
    return { edge, strength: strengthOf([ends[0]!, ends[1]!]) };
  });
  rated.sort((a, b) => a.strength - b.strength);
  let weakest: { readonly chord: Chord; readonly strength: number } | undefined;
  for (const { edge } of rated.slice(0, refined)) {
    const { ends } = exactWidth(mesh, edge, spacing, false);
    const chord: Chord = [fromGrid(ends[0]), fromGrid(ends[1])];
    const strength = strengthOf(chord);
    if (!weakest || strength < weakest.strength) weakest = { chord, strength };
  }
  return weakest?.chord;
}

/** The triangle of material at the outline point nearest to a given point. */
function triangleAt(mesh: Mesh, point: Point): number | undefined {
  const [at] = toGrid([[point]]);
  let least = Infinity;
  let found: number | undefined;
  for (let e = 0; e < mesh.starts.length; e += 1) {
    if (mesh.isChord[e] || !mesh.inside[triangleOf(e)]) continue;
    const vertex = mesh.starts[e]!;
    const away = (mesh.xs[vertex]! - at!.xs[0]!) ** 2 + (mesh.ys[vertex]! - at!.ys[0]!) ** 2;
    if (away >= least) continue;
    least = away;
    found = triangleOf(e);
  }
  return found;
}

/** Half-edges whose cutting separates more than half of the area from the given triangle. Linear in triangles. */
function partingChords(mesh: Mesh, root: number): number[] {
  const { twins, isChord } = mesh;
  const rank = new Int32Array(mesh.inside.length).fill(-1);
  const visited: number[] = [];
  /** The half-edge by which each was reached, in its own triangle. */
  const entries: number[] = [];
  const stack = [{ triangle: root, entry: -1 }];
  for (let visit = stack.pop(); visit; visit = stack.pop()) {
    const { triangle, entry } = visit;
    if (rank[triangle]! >= 0) continue;
    rank[triangle] = visited.length;
    visited.push(triangle);
    entries.push(entry);
    for (let e = 3 * triangle; e < 3 * triangle + 3; e += 1) {
      if (!isChord[e]) continue;
      const twin = twins[e]!;
      if (rank[triangleOf(twin)]! < 0) stack.push({ triangle: triangleOf(twin), entry: twin });
    }
  }
  const areas = visited.map((triangle) => triangleArea(mesh, triangle));
  const lowest = visited.map((_, i) => i);
  const bridges: number[] = [];
  const beyond = [...areas];
  const total = areas.reduce((sum, area) => sum + area, 0);
  for (let i = visited.length - 1; i > 0; i -= 1) {
    const triangle = visited[i]!;
    for (let e = 3 * triangle; e < 3 * triangle + 3; e += 1) {
      if (isChord[e] && e !== entries[i]) lowest[i] = Math.min(lowest[i]!, rank[triangleOf(twins[e]!)]!);
    }
    const parent = rank[triangleOf(twins[entries[i]!]!)]!;
    // Nothing visited later leads back past it, so the way in is the only way.
    if (lowest[i] === i && beyond[i]! > total / 2) bridges.push(entries[i]!);
    lowest[parent] = Math.min(lowest[parent]!, lowest[i]!);
    beyond[parent]! += beyond[i]!;
  }
  return bridges;
}
