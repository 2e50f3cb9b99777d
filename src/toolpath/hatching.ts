/** Time for engraving an area by hatching it, line by line. */

import { boundsOf } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import { crossings } from '../strength/line-stretches.ts';

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
  const count = Math.max(1, Math.round((bounds.maxY - bounds.minY) / hatch));
  const step = (bounds.maxY - bounds.minY) / count;
  let seconds = 0;
  let forwards = true;
  let at: number | undefined;
  for (let i = 0; i < count; i++) {
    const found = crossings(region, { x: 0, y: bounds.minY + (i + 0.5) * step }, { x: 1, y: 0 });
    if (found.length < 2) continue;
    const [left, right] = [found[0]!, found.at(-1)!];
    const [begin, end] = forwards ? [left, right] : [right, left];
    seconds += (right - left + Math.abs(begin - (at ?? begin))) / speed + (2 * speed) / acceleration;
    at = end;
    forwards = !forwards;
  }
  return seconds;
}
