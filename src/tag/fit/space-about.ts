/** What is free of a region to the left and to the right of an upright line through it. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import type { SpaceAbout } from '../curve-outline.ts';

/** From one height at which it is known to the next, in mm. */
const stepMm = 0.1;

/** Where an outline crosses one of the heights. */
interface Crossing {
  readonly level: number;
  readonly x: number;
}

interface Width {
  readonly from: number;
  readonly to: number;
}

/** Coordinates of what is asked about are from `middle`, which need not lie in the region itself. */
export function spaceAbout(region: Region, middle: Point): SpaceAbout {
  const box = boundsOf(region);
  const [minY, maxY] = box ? [box.minY - middle.y, box.maxY - middle.y] : [0, 0];
  const levels: number[][] = Array.from({ length: Math.ceil((maxY - minY) / stepMm) }, () => []);
  for (const ring of region) {
    const about = ring.map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y }));
    for (const { level, x } of crossingsOf(about, minY)) levels[level]?.push(x);
  }
  const widths = levels.map(widthAbout);
  return {
    minY,
    maxY,
    holds: (ring) =>
      crossingsOf(ring, minY).every(({ level, x }) => {
        const width = widths[level];
        return width !== undefined && x >= width.from && x <= width.to;
      }),
  };
}

/** The first height is half a step above `lowest`. */
function crossingsOf(ring: Ring, lowest: number): Crossing[] {
  const found: Crossing[] = [];
  let from = ring.at(-1);
  for (const to of ring) {
    const [low, high] = from!.y < to.y ? [from!, to] : [to, from!];
    for (let level = Math.ceil((low.y - lowest) / stepMm - 0.5); ; level++) {
      const y = lowest + (level + 0.5) * stepMm;
      if (y >= high.y) break;
      found.push({ level, x: low.x + ((y - low.y) / (high.y - low.y)) * (high.x - low.x) });
    }
    from = to;
  }
  return found;
}

/** The stretch round 0 between crossings of the edge; `undefined` where that is outside. */
function widthAbout(crossings: number[]): Width | undefined {
  crossings.sort((a, b) => a - b);
  const next = crossings.findIndex((x) => x > 0);
  return next % 2 === 1 ? { from: crossings[next - 1]!, to: crossings[next]! } : undefined;
}
