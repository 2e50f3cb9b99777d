/** Time for engraving an area by hatching it, line by line. */

import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';

/**
 * Lines lie `hatch` mm apart. Along each, the head runs at full speed from the start of its engraving to the end;
 * outside that it comes to rest, gains speed again and moves to the start of the next line.
 */
export function engravingSeconds(
  region: Region,
  { speed, acceleration, hatch }: { speed: number; acceleration: number; hatch: number },
): number {
  const bounds = boundsOf(region);
  if (!bounds) return 0;
  let seconds = 0;
  let forwards = true;
  let at: number | undefined;
  for (const { left, right } of engravedLines(region, bounds, hatch)) {
    const [begin, end] = forwards ? [left, right] : [right, left];
    seconds += (right - left + Math.abs(begin - (at ?? begin))) / speed + (2 * speed) / acceleration;
    at = end;
    forwards = !forwards;
  }
  return seconds;
}

interface EngravedLine {
  readonly left: number;
  readonly right: number;
}

/** From the bottom up, each from its first to its last crossing with the outline; lines that cross nothing are left out. */
function engravedLines(region: Region, { minY, maxY }: Bounds, hatch: number): EngravedLine[] {
  const count = Math.max(1, Math.round((maxY - minY) / hatch));
  const step = (maxY - minY) / count;
  const left = new Float64Array(count).fill(Infinity);
  const right = new Float64Array(count).fill(-Infinity);
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      // One line more on either side than the edge should reach: the lines themselves decide.
      const first = Math.max(0, Math.floor((Math.min(from.y, to.y) - minY) / step - 0.5));
      const last = Math.min(count - 1, Math.ceil((Math.max(from.y, to.y) - minY) / step - 0.5));
      for (let i = first; i <= last; i++) {
        const y = minY + (i + 0.5) * step;
        if (from.y < y === to.y < y) continue;
        const x = from.x + ((y - from.y) / (y - from.y - (y - to.y))) * (to.x - from.x);
        left[i] = Math.min(left[i]!, x);
        right[i] = Math.max(right[i]!, x);
      }
      from = to;
    }
  }
  return Array.from(left, (each, i) => ({ left: each, right: right[i]! })).filter(
    ({ right: each }) => each > -Infinity,
  );
}
