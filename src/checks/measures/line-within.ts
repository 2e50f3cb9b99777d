/** Length of a line within a field. A score line is only its outline; the area it encloses is not touched. */

import { boundsOf, contains, distance } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';

export interface WithinField {
  /** In mm; 0 if the line stays outside. */
  readonly length: number;
  /** The middle of the first stretch within. */
  readonly at?: Point;
}

export function lineWithin(line: Region, field: Region): WithinField {
  const box = boundsOf(field);
  let length = 0;
  let at: Point | undefined;
  if (!box) return { length };
  for (const ring of line) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const isBeside =
        Math.max(from.x, to.x) < box.minX ||
        Math.min(from.x, to.x) > box.maxX ||
        Math.max(from.y, to.y) < box.minY ||
        Math.min(from.y, to.y) > box.maxY;
      const cuts = isBeside ? [] : [0, ...crossings(from, to, field), 1];
      for (let i = 1; i < cuts.length; i++) {
        const [start, end] = [cuts[i - 1]!, cuts[i]!];
        const middle = pointBetween(from, to, (start + end) / 2);
        if (start === end || !contains(field, middle)) continue;
        length += (end - start) * distance(to, from);
        at ??= middle;
      }
      from = to;
    }
  }
  return at ? { length, at } : { length };
}

/** Crossings of a segment with the outline, as shares of its length in ascending order. */
function crossings(from: Point, to: Point, field: Region): number[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const shares: number[] = [];
  for (const ring of field) {
    let a = ring[ring.length - 1]!;
    for (const b of ring) {
      const [ex, ey] = [b.x - a.x, b.y - a.y];
      const across = dx * ey - dy * ex;
      const share = ((a.x - from.x) * ey - (a.y - from.y) * ex) / across;
      const along = ((a.x - from.x) * dy - (a.y - from.y) * dx) / across;
      if (across !== 0 && share > 0 && share < 1 && along >= 0 && along < 1) shares.push(share);
      a = b;
    }
  }
  return shares.sort((a, b) => a - b);
}

function pointBetween(from: Point, to: Point, share: number): Point {
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}
