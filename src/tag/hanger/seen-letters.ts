/** Whether letters that were put together with another shape still stand out of it, as on a bar, or lie within it, as on a plate. */

import { EdgeIndex } from '../../geometry/edge-index.ts';
import { walkRing } from '../../geometry/walk-ring.ts';
import type { Region } from '../../geometry/types.ts';
import type { Lettering } from '../lettering/letters.ts';

/** So much of their outlines is looked at, in x-heights from one place to the next, and so far off them; our own judgement, as the next. */
const look = { step: 0.15, beyond: 0.1 } as const;

/** They are seen if so much of their outlines is free: two neighbours that lap over a letter leave it more. */
const leastFree = 0.4;

/** @param region All that they were put together with, and they themselves. */
export function isSeen({ letters, xHeight, grow, as }: Lettering, region: Region): boolean {
  if (as === 'opening') return false;
  const edges = new EdgeIndex(region);
  const off = Math.max(0, grow) + look.beyond * xHeight;
  let [free, all] = [0, 0];
  for (const ring of letters.flatMap((letter) => letter.region)) {
    const steps = walkRing(ring, look.step * xHeight);
    steps.forEach(({ point }, index) => {
      const next = steps[(index + 1) % steps.length]!.point;
      const [dx, dy] = [next.x - point.x, next.y - point.y];
      const length = Math.hypot(dx, dy) || 1;
      all += 1;
      // Ink lies to the left of an outline.
      if (!edges.contains({ x: point.x + (off * dy) / length, y: point.y - (off * dx) / length })) free += 1;
    });
  }
  return free > leastFree * all;
}
