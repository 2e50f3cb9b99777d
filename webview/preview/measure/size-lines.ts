/** Where the dimension lines of a size may run: beside what they measure, on either side, nearer or further. Pure; screen pixels. */

import type { Line, LinePlace } from './label-places.ts';
import type { Box, Size, XY } from '../../common/camera/viewport.ts';

/** From what is measured to the line, and what a line further out or on the other side costs. */
const offsetsPx = [20, 38, 56] as const;
const otherSideCost = 30;
/** Along the part of the line that is seen; the figure stands in the middle if it can. */
const shares = [0.5, 0.3, 0.7] as const;
const shareCost = 8;
/** The lines from what is measured keep off it, and go a little beyond. */
const gapPx = 5;

export function sizePlaces(axis: 'width' | 'height', box: Box, stage: Size, label: Size): LinePlace[] {
  const isWidth = axis === 'width';
  // Along the size, and across it: for a width x and y, for a height y and x.
  const [start, end] = isWidth ? [box[0], box[2]] : [box[1], box[3]];
  const sides = isWidth ? ([box[3], box[1]] as const) : ([box[2], box[0]] as const);
  const [length, room] = isWidth ? [label.width, stage.width] : [label.height, stage.height];
  const seen = [Math.max(start, 0), Math.min(end, room)] as const;
  const point = (along: number, across: number): XY => (isWidth ? [along, across] : [across, along]);
  return sides.flatMap((edge, side) => {
    const way = side === 0 ? 1 : -1;
    return offsetsPx.flatMap((offset) => {
      const across = edge + way * offset;
      const lines: Line[] = [
        [point(start, across), point(end, across)],
        [point(start, edge + way * gapPx), point(start, across + way * gapPx)],
        [point(end, edge + way * gapPx), point(end, across + way * gapPx)],
      ];
      // Where the line is hardly longer than its figure there is nowhere to move it.
      const used = seen[1] - seen[0] > 2 * length ? shares : shares.slice(0, 1);
      return used.map((share): LinePlace => {
        const along = seen[0] + (seen[1] - seen[0]) * share;
        const cost = offset - offsetsPx[0] + side * otherSideCost + (share === 0.5 ? 0 : shareCost);
        return { key: `${side}/${offset}/${share}`, middle: point(along, across), lines, cost };
      });
    });
  });
}
