/** Lower and upper profiles of outlines, column by column. */

import type { Region } from './types.ts';

/** Values by column; Infinity and −Infinity in an empty column. */
export interface Profiles {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** The lowest and the highest point in each column between two x coordinates. */
export function profilesOf(rings: Region, minX: number, maxX: number, columns: number): Profiles {
  const low = new Float64Array(columns).fill(Infinity);
  const high = new Float64Array(columns).fill(-Infinity);
  const width = (maxX - minX) / columns;
  for (const ring of rings) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const [a, b] = from.x < to.x ? [from, to] : [to, from];
      const last = Math.min(columns - 1, Math.floor((b.x - minX) / width));
      for (let i = Math.max(0, Math.floor((a.x - minX) / width)); i <= last; i++) {
        // In each column, an edge is lowest and highest where it enters and leaves.
        for (const side of [minX + i * width, minX + (i + 1) * width]) {
          const at = Math.min(b.x, Math.max(a.x, side));
          const y = b.x === a.x ? a.y : a.y + ((at - a.x) / (b.x - a.x)) * (b.y - a.y);
          low[i] = Math.min(low[i]!, y);
          high[i] = Math.max(high[i]!, y);
        }
      }
      from = to;
    }
  }
  return { low, high };
}
