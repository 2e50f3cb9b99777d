/** Boundary of the no-fit polygon of two envelopes: how far one must rise above the other, or sink below it, for each shift to the right. */

import { envelopeStep } from './envelope.ts';
import type { Envelope } from './envelope.ts';

/** Corners of the boundary are left out as long as it is nowhere further out than this, in mm. */
const simpleMm = 0.04;

/** Pairs of knots looked at in the time of one stretch of a boundary. */
const pairsPerStretch = 12;

/**
 * Stretches as x, y, x, y, with the overlap on their left: positions of the moving part's box centre, relative to that of the resting one, at
 * which the envelopes touch. `work` in stretches.
 */
export function envelopeBoundary(resting: Envelope, moving: Envelope): { boundary: Float64Array; work: number } {
  const [a, b] = [resting.upper.length - 1, moving.upper.length - 1];
  const count = a + b + 1;
  const [rises, sinks] = [new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i += 1) {
    const shift = i - b;
    let [rise, sink] = [-Infinity, -Infinity];
    for (let k = Math.max(0, shift), to = Math.min(a, shift + b); k <= to; k += 1) {
      const up = resting.upper[k]! - moving.lower[k - shift]!;
      if (up > rise) rise = up;
      const down = moving.upper[k - shift]! - resting.lower[k]!;
      if (down > sink) sink = down;
    }
    rises[i] = rise;
    sinks[i] = sink;
  }
  const least = -((a + b) / 2) * envelopeStep;
  const top = simplifiedAbove(rises);
  const bottom = simplifiedAbove(sinks);
  const boundary = new Float64Array(4 * (top.length / 2 + bottom.length / 2));
  let at = 0;
  let [lastX, lastY] = [least + envelopeStep * top[0]!, top[1]!];
  const go = (x: number, y: number): void => {
    boundary.set([lastX, lastY, x, y], at);
    at += 4;
    [lastX, lastY] = [x, y];
  };
  for (let i = 0; i < bottom.length; i += 2) go(least + envelopeStep * bottom[i]!, -bottom[i + 1]!);
  for (let i = top.length - 2; i >= 0; i -= 2) go(least + envelopeStep * top[i]!, top[i + 1]!);
  return { boundary, work: (2 * (a + 1) * (b + 1)) / pairsPerStretch };
}

/**
 * Fewer corners, as index and height, of a line that is nowhere below the heights and at most `simpleMm` above them: each stretch goes on as long as
 * some direction keeps to that (O'Rourke 1981, for a start that is given).
 */
function simplifiedAbove(heights: Float64Array): number[] {
  const last = heights.length - 1;
  let [fromX, fromY] = [0, heights[0]! + simpleMm / 2];
  const corners = [fromX, fromY];
  while (fromX < last) {
    let [least, most] = [-Infinity, Infinity];
    let x = fromX;
    while (x < last) {
      const run = x + 1 - fromX;
      const low = (heights[x + 1]! - fromY) / run;
      const high = (heights[x + 1]! + simpleMm - fromY) / run;
      if (Math.max(least, low) > Math.min(most, high)) break;
      least = Math.max(least, low);
      most = Math.min(most, high);
      x += 1;
    }
    fromY += ((least + most) / 2) * (x - fromX);
    fromX = x;
    corners.push(fromX, fromY);
  }
  return corners;
}
