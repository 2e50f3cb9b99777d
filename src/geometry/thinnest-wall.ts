/** The place where a piece has the least material between two edges. */

import { boundsOf } from './measure.ts';
import { findNecks } from './necks.ts';
import type { Point, Region } from './types.ts';

export interface Wall {
  /** Width, in mm. */
  readonly width: number;
  /** The two points of the outline on either side. */
  readonly ends: readonly [Point, Point];
}

/**
 * The narrowest neck, wall or stroke of all; `undefined` if there is none, as in a plate without a hole. Searches for
 * increasing widths, as looking for wide ones costs more.
 * @param from Width to begin with, in mm.
 */
export function thinnestWall(region: Region, from: number): Wall | undefined {
  const box = boundsOf(region);
  if (!box) return undefined;
  const widest = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  for (let reach = from; ; reach = Math.min(2 * reach, widest)) {
    const necks = findNecks(region, reach);
    if (necks.length > 0) {
      const { width, ends } = necks.reduce((a, b) => (b.width < a.width ? b : a));
      return { width, ends };
    }
    if (reach >= widest) return undefined;
  }
}
