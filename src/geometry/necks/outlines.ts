/** Reads the outlines of the material back from a mesh. */

import type { GridRing } from './clean.ts';
import type { Mesh } from './mesh.ts';
import { triangleOf } from './mesh.ts';
import { nextEdge } from './triangulation.ts';

/** Whether some vertex of the mesh is surrounded by material. */
export function hasBuriedVertex(mesh: Mesh): boolean {
  const { starts, inside, isChord } = mesh;
  const onOutline = new Uint8Array(mesh.xs.length);
  for (let t = 0; t < inside.length; t += 1) {
    if (!inside[t]) continue;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) if (!isChord[e]) onOutline[starts[e]!] = 1;
  }
  for (let t = 0; t < inside.length; t += 1) {
    if (!inside[t]) continue;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) if (!onOutline[starts[e]!]) return true;
  }
  return false;
}

/** The outlines, material on the left. Where outlines meet in a point, each keeps to its own sector of material. */
export function outlinesOf(mesh: Mesh): GridRing[] {
  const rings: GridRing[] = [];
  const seen = new Uint8Array(mesh.starts.length);
  for (let first = 0; first < mesh.starts.length; first += 1) {
    if (seen[first] || !isOutline(mesh, first)) continue;
    const xs: number[] = [];
    const ys: number[] = [];
    for (let e = first; !seen[e];) {
      seen[e] = 1;
      xs.push(mesh.xs[mesh.starts[e]!]!);
      ys.push(mesh.ys[mesh.starts[e]!]!);
      e = nextEdge(e);
      while (mesh.isChord[e]) e = nextEdge(mesh.twins[e]!);
    }
    rings.push({ xs, ys });
  }
  return rings;
}

const isOutline = (mesh: Mesh, e: number): boolean => mesh.inside[triangleOf(e)] === 1 && mesh.isChord[e] === 0;
