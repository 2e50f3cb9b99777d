/** Widths that a spec asks for by themselves: of straps, of bridges, of bars drawn as such. */

import { transform } from '../geometry/affine.ts';
import { offset } from '../geometry/clipper.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Affine, Region, Ring } from '../geometry/types.ts';
import type { Generator } from '../spec/model.ts';

export interface AskedWidth {
  /** What was drawn that wide: of a neck that is meant, both ends lie on its outline. */
  readonly region: Region;
  /** In mm, as asked for. */
  readonly width: number;
}

export function ofStrips(strips: readonly Ring[], width: number): AskedWidth[] {
  return strips.map((strip) => ({ region: [strip], width }));
}

/** A rectangle is as wide as it was drawn. */
export function ofBar({ kind }: Generator, region: Region): AskedWidth[] {
  const box = kind === 'rectangle' ? boundsOf(region) : undefined;
  return box ? [{ region, width: Math.min(box.maxX - box.minX, box.maxY - box.minY) }] : [];
}

/** Moved with their shape; where it is scaled, the widths are still those that were asked for. */
export function mapAsked(asked: readonly AskedWidth[], affine: Affine): AskedWidth[] {
  return asked.map(({ region, width }) => ({ region: transform(region, affine), width }));
}

/** Where the beam takes so much of them, in mm. */
export function thinned(asked: readonly AskedWidth[], by: number): AskedWidth[] {
  return asked.map(({ region, width }) => ({ region: offset(region, -by / 2), width: width - by }));
}
