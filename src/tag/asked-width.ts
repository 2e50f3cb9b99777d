/** Widths that a spec asks for explicitly: of straps, of bridges, of bars drawn as rectangles. */

import { transform } from '../geometry/affine.ts';
import { offset } from '../geometry/clipper.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Affine, Region, Ring } from '../geometry/types.ts';
import type { Generator } from '../spec/model/shape-model.ts';

export interface AskedWidth {
  /** The region drawn that wide; a neck is intended if both its ends lie on its outline. */
  readonly region: Region;
  /** In mm, as asked for. */
  readonly width: number;
}

export function stripWidths(strips: readonly Ring[], width: number): AskedWidth[] {
  return strips.map((strip) => ({ region: [strip], width }));
}

/** A rectangle counts as asked for at the width it was drawn. */
export function barWidth({ kind }: Generator, region: Region): AskedWidth[] {
  const box = kind === 'rectangle' ? boundsOf(region) : undefined;
  return box ? [{ region, width: Math.min(box.maxX - box.minX, box.maxY - box.minY) }] : [];
}

/** The regions mapped with their shape; if it is scaled, the widths stay those that were asked for. */
export function mapAskedWidths(asked: readonly AskedWidth[], affine: Affine): AskedWidth[] {
  return asked.map(({ region, width }) => ({ region: transform(region, affine), width }));
}

/** The regions and widths after the beam has taken `by` mm of their width. */
export function lessKerf(asked: readonly AskedWidth[], by: number): AskedWidth[] {
  return asked.map(({ region, width }) => ({ region: offset(region, -by / 2), width: width - by }));
}
