/**
 * The triangles of a mesh where the material is thin, and the cores: what remains of them after pruning everything that
 * leads nowhere (corners, serifs, tapers). A core joins thick bodies to each other or closes a circle.
 *
 * The circumcircles of a Delaunay triangulation of a closely sampled outline are its largest inscribed discs, so the
 * material is thick where a circumradius reaches half of the width asked for.
 */

import type { Mesh } from './mesh.ts';
import { triangleOf } from './mesh.ts';
import { acuteness, triangleArea, edgeLength, heightOn } from './lengths.ts';

export interface Thinness {
  /** Per triangle: 1 where thin (and in material). */
  readonly thin: Uint8Array;
  /** Per half-edge: 1 where the edge is a thin chord. All chords of a thin triangle are. */
  readonly thinChord: Uint8Array;
  /** Per triangle: 1 where it belongs to a core. */
  readonly core: Uint8Array;
  /** Per half-edge: 1 where the chord belongs to a core. */
  readonly coreChord: Uint8Array;
  /** Per triangle: circumradius in units; 0 if the circle's centre is outside the material, or the triangle is flat. */
  readonly radius: Float64Array;
}

/** Bodies on both sides of a neck must be wider than it by this factor, or they are one body with a shallow waist. */
const waist = 1.15;
/** The body at the end of a neck must be wider than the neck by this factor, or it is the end of a taper. */
const knob = 1.03;
/** Safety limit on the rounds; two or three were enough for all lettering tested. */
const maxRounds = 12;

/** The thin parts of a mesh. `width` is in units. */
export function findThin(mesh: Mesh, width: number): Thinness {
  const triangles = mesh.inside.length;
  const radius = radii(mesh);
  const thin = new Uint8Array(triangles);
  for (let t = 0; t < triangles; t += 1) thin[t] = mesh.inside[t] && 2 * radius[t]! < width ? 1 : 0;
  const thinChord = new Uint8Array(mesh.starts.length);
  for (let e = 0; e < mesh.starts.length; e += 1) {
    if (mesh.isChord[e] && (thin[triangleOf(e)] || thin[triangleOf(mesh.twins[e]!)] || isWaist(mesh, e, width)))
      thinChord[e] = 1;
  }
  const thinness = {
    thin,
    thinChord,
    radius,
    core: new Uint8Array(triangles),
    coreChord: new Uint8Array(mesh.starts.length),
  };
  prune(mesh, thinness);
  // Thin runs joined by something too small to be a body are one run.
  for (let round = 0; round < maxRounds && absorbBodies(mesh, thinness, width); round += 1) prune(mesh, thinness);
  return thinness;
}

function radii(mesh: Mesh): Float64Array {
  const { xs, ys, starts, inside, isChord } = mesh;
  const radius = new Float64Array(inside.length);
  for (let t = 0; t < inside.length; t += 1) {
    if (!inside[t]) continue;
    const e = 3 * t;
    const a = starts[e]!;
    const b = starts[e + 1]!;
    const c = starts[e + 2]!;
    const twiceArea = (xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (ys[b]! - ys[a]!) * (xs[c]! - xs[a]!);
    if (twiceArea <= 0) continue;
    // An obtuse angle opposite a boundary edge puts the centre beyond that edge.
    if (!isChord[e] && acuteness(mesh, e) < 0) continue;
    if (!isChord[e + 1] && acuteness(mesh, e + 1) < 0) continue;
    if (!isChord[e + 2] && acuteness(mesh, e + 2) < 0) continue;
    radius[t] = (edgeLength(mesh, e) * edgeLength(mesh, e + 1) * edgeLength(mesh, e + 2)) / (2 * twiceArea);
  }
  return radius;
}

/** Whether the discs on both sides of a short chord narrow towards it, as where two overlapping discs join. */
function isWaist(mesh: Mesh, e: number, width: number): boolean {
  return edgeLength(mesh, e) < width && acuteness(mesh, e) > 0 && acuteness(mesh, mesh.twins[e]!) > 0;
}

/** Marks as core what is left of the thin parts after leaves have been removed until there are none. */
function prune(mesh: Mesh, { thin, thinChord, core, coreChord }: Thinness): void {
  core.set(thin);
  coreChord.set(thinChord);
  const links = new Uint8Array(thin.length);
  const leaves: number[] = [];
  for (let t = 0; t < thin.length; t += 1) {
    if (!thin[t]) continue;
    links[t] = thinChord[3 * t]! + thinChord[3 * t + 1]! + thinChord[3 * t + 2]!;
    if (links[t]! < 2) leaves.push(t);
  }
  for (let t = leaves.pop(); t !== undefined; t = leaves.pop()) {
    core[t] = 0;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!coreChord[e]) continue;
      const twin = mesh.twins[e]!;
      coreChord[e] = 0;
      coreChord[twin] = 0;
      const neighbour = triangleOf(twin);
      links[neighbour]! -= 1;
      if (core[neighbour] && links[neighbour] === 1) leaves.push(neighbour);
    }
  }
}

/**
 * Makes thin the thick bodies that are not parts in their own right: those smaller than width², and those at the end of
 * a core and hardly wider than it; if there are none, those between cores that are hardly wider than the cores. (In
 * that order, because a body with nothing left beyond its cores is not a waist.) Returns whether there were any.
 */
function absorbBodies(mesh: Mesh, thinness: Thinness, width: number): boolean {
  const bodies = thickBodies(mesh, thinness).filter(({ contacts }) => contacts > 0);
  const ends = bodies.filter((body) => body.area < width * width || (body.contacts === 1 && body.ratio < knob));
  const absorbed = ends.length > 0 ? ends : bodies.filter(({ contacts, ratio }) => contacts > 1 && ratio < waist);
  for (const { triangles } of absorbed) {
    for (const t of triangles) {
      thinness.thin[t] = 1;
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e]) continue;
        thinness.thinChord[e] = 1;
        thinness.thinChord[mesh.twins[e]!] = 1;
      }
    }
  }
  return absorbed.length > 0;
}

/** A connected thick region and the pruned tips attached to it. */
interface ThickBody {
  readonly triangles: readonly number[];
  /**
   * Units². For a body at an end it includes the tips, since they would come off with it. For one between cores it does
   * not: where two hairlines cross there is a small body with long arms.
   */
  readonly area: number;
  /** Number of core chords that lead into it. */
  readonly contacts: number;
  /** Its largest width over the least width of the cores it touches. */
  readonly ratio: number;
}

function thickBodies(mesh: Mesh, thinness: Thinness): ThickBody[] {
  const { thin, core, coreChord, radius } = thinness;
  const widths = coreWidths(mesh, thinness);
  const seen = new Uint8Array(thin.length);
  const bodies: ThickBody[] = [];
  for (let first = 0; first < thin.length; first += 1) {
    if (!mesh.inside[first] || thin[first] || seen[first]) continue;
    const triangles = [first];
    seen[first] = 1;
    let thickArea = 0;
    let tipArea = 0;
    let widest = 0;
    let contacts = 0;
    let narrowest = Infinity;
    for (let i = 0; i < triangles.length; i += 1) {
      const t = triangles[i]!;
      if (thin[t]) tipArea += triangleArea(mesh, t);
      else thickArea += triangleArea(mesh, t);
      widest = Math.max(widest, 2 * radius[t]!);
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e]) continue;
        const neighbour = triangleOf(mesh.twins[e]!);
        if (coreChord[e]) {
          contacts += 1;
          narrowest = Math.min(narrowest, widths[e]!);
        } else if (!seen[neighbour] && !core[neighbour]) {
          seen[neighbour] = 1;
          triangles.push(neighbour);
        }
      }
    }
    const area = contacts > 1 ? thickArea : thickArea + tipArea;
    bodies.push({ triangles, area, contacts, ratio: widest / narrowest });
  }
  return bodies;
}

/** Per core chord: the least width, as far as the mesh resolves it, of the whole core it is in. */
function coreWidths(mesh: Mesh, { core, coreChord }: Thinness): Float64Array {
  const widths = new Float64Array(coreChord.length);
  for (let first = 0; first < coreChord.length; first += 1) {
    if (!coreChord[first] || widths[first]! > 0) continue;
    const edges = [first, mesh.twins[first]!];
    widths[first] = Infinity;
    widths[edges[1]!] = Infinity;
    let least = edgeLength(mesh, first);
    for (let i = 0; i < edges.length; i += 1) {
      const t = triangleOf(edges[i]!);
      if (!core[t]) continue;
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e]) least = Math.min(least, heightOn(mesh, e));
        if (!coreChord[e] || widths[e]! > 0) continue;
        least = Math.min(least, edgeLength(mesh, e));
        widths[e] = Infinity;
        widths[mesh.twins[e]!] = Infinity;
        edges.push(e, mesh.twins[e]!);
      }
    }
    for (const e of edges) widths[e] = least;
  }
  return widths;
}
