/** The meshes of the regions examined last: one check after another asks about the same pieces, with widths that differ little. */

import { buildMesh } from './build-mesh.ts';
import { toGrid } from './clean.ts';
import type { Mesh } from './mesh.ts';
import type { Region } from '../types.ts';

interface RecentMesh {
  readonly region: Region;
  readonly spacing: number;
  readonly mesh: Mesh | undefined;
}

/** The pieces of a tag; a mesh takes as much memory as a hundred outlines, so older ones are made again. */
const mostKept = 4;

/** A mesh that is finer than asked for, down to this share of the spacing, costs less than another. */
const finest = 0.75;

let kept: readonly RecentMesh[] = [];

/** As `buildMesh`, with boundary points at most `spacing` (grid units) apart. */
export function meshOf(region: Region, spacing: number): Mesh | undefined {
  const fits = (each: RecentMesh): boolean =>
    each.region === region && each.spacing <= spacing && each.spacing >= finest * spacing;
  const made = kept.find(fits) ?? { region, spacing, mesh: buildMesh(toGrid(region), spacing) };
  kept = [made, ...kept.filter((each) => each !== made)].slice(0, mostKept);
  return made.mesh;
}
