/**
 * Possible places of the dimension lines of a size: on either side of what they measure, nearer or further away. Pure;
 * screen pixels.
 */

import type { LineSegment, LinePlace } from './label-places.ts';
import type { Box, Size, XY } from '../../common/camera/viewport.ts';

/** Distances from what is measured to the line, and the extra cost of the other side. */
const offsetsPx = [20, 38, 56] as const;
const otherSideCost = 30;
/** Positions of the number along the visible part of the line; the middle is preferred. */
const shares = [0.5, 0.3, 0.7] as const;
const shareCost = 8;
/** Gap between what is measured and the extension lines, and their overshoot. */
const gapPx = 5;

export function sizePlaces(axis: 'width' | 'height', box: Box, stage: Size, label: Size): LinePlace[] {
  const isWidth = axis === 'width';
  // Coordinates along the size and across it: x and y for a width, y and x for a height.
  const [start, end] = isWidth ? [box[0], box[2]] : [box[1], box[3]];
  const sides = isWidth ? ([box[3], box[1]] as const) : ([box[2], box[0]] as const);
  const [length, room] = isWidth ? [label.width, stage.width] : [label.height, stage.height];
  const seen = [Math.max(start, 0), Math.min(end, room)] as const;
  const point = (along: number, across: number): XY => (isWidth ? [along, across] : [across, along]);
  return sides.flatMap((edge, side) => {
    const way = side === 0 ? 1 : -1;
    return offsetsPx.flatMap((offset) => {
      const across = edge + way * offset;
      const lines: LineSegment[] = [
        [point(start, across), point(end, across)],
        [point(start, edge + way * gapPx), point(start, across + way * gapPx)],
        [point(end, edge + way * gapPx), point(end, across + way * gapPx)],
      ];
      // A line hardly longer than its number leaves no room to move it.
      const used = seen[1] - seen[0] > 2 * length ? shares : shares.slice(0, 1);
      return used.map((share): LinePlace => {
        const along = seen[0] + (seen[1] - seen[0]) * share;
        const cost = offset - offsetsPx[0] + side * otherSideCost + (share === 0.5 ? 0 : shareCost);
        return { key: `${side}/${offset}/${share}`, middle: point(along, across), lines, cost };
      });
    });
  });
}
