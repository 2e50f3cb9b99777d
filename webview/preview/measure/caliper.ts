import type { XY } from '../../common/camera/viewport.ts';

/** Half a tick. */
const tickPx = 4;

/** Path data of a bar between two points with a tick across each end, like a caliper. */
export function caliper(a: XY, b: XY, tick = tickPx): string {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [nx, ny] = length > 0 ? [-(b[1] - a[1]) / length, (b[0] - a[0]) / length] : [0, 1];
  const across = ([x, y]: XY): string =>
    `M${pair([x - nx * tick, y - ny * tick])}L${pair([x + nx * tick, y + ny * tick])}`;
  return `M${pair(a)}L${pair(b)}${across(a)}${across(b)}`;
}

/** A point in path data. */
export function pair([x, y]: XY): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
