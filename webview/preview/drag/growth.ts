/** How the sides of a shape go while its size is changed: seen in the last trial, and carried on to where the hand is. Pure. */

import type { Box } from '../../common/camera/viewport.ts';

export type Axis = 'width' | 'height';

/** Growth, in mm, that shows how a shape grows; until then it is taken to grow about its middle, as most do. */
const telling = 0.5;

export function sidesOf(axis: Axis): readonly [low: 0 | 1, high: 2 | 3] {
  return axis === 'width' ? [0, 2] : [1, 3];
}

/** By how much each side moves for each mm along the axis; `before`: the bounds when the change began. */
export function growthOf(axis: Axis, before: Box, now: Box): Box {
  const [low, high] = sidesOf(axis);
  const moved = now.map((side, index) => side - before[index]!);
  const grown = moved[high]! - moved[low]!;
  const rates =
    Math.abs(grown) < telling
      ? moved.map((_, side) => (side === low ? -0.5 : side === high ? 0.5 : 0))
      : moved.map((by) => by / grown);
  return rates as unknown as Box;
}

/** The bounds once it has grown by so much more. */
export function ahead(axis: Axis, before: Box, now: Box, by: number): Box {
  const rates = growthOf(axis, before, now);
  const [left, top, right, bottom] = now.map((side, index) => side + rates[index]! * by) as unknown as Box;
  // What is made smaller than nothing is not turned inside out.
  return [Math.min(left, right), Math.min(top, bottom), Math.max(left, right), Math.max(top, bottom)];
}

/** Transform of what has one box onto another, as in SVG. */
export function ontoBox(from: Box, to: Box): string {
  const along = (low: 0 | 1, high: 2 | 3): readonly [number, number] => {
    const scale = (to[high] - to[low]) / (from[high] - from[low] || 1);
    return [scale, to[low] - scale * from[low]];
  };
  const [[a, e], [d, f]] = [along(0, 2), along(1, 3)];
  return `matrix(${[a, 0, 0, d, e, f].map((value) => Number(value.toFixed(5))).join(' ')})`;
}
