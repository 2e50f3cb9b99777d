/** Where the labels of the pins go, so that none hides another or the spot it speaks of. Pure; screen pixels. */

import type { Box, Size, XY } from './viewport.ts';

export interface Label {
  readonly id: string;
  /** The spot the label speaks of. */
  readonly at: XY;
  readonly size: Size;
}

/** Distances tried from the spot to the middle of the label, and how many directions at each. */
const radiiPx = [38, 62, 92, 128];
const directions = 12;
const clearancePx = 4;

/**
 * The top left corner for each label whose spot is on the stage. Labels go away from `centre`, so that leaders do not run
 * across the drawing. Where there is no free place the least bad is taken.
 */
export function placeLabels(
  labels: readonly Label[],
  stage: Size,
  centre: XY,
  obstacles: readonly Box[],
): Map<string, XY> {
  const placed = new Map<string, XY>();
  const visible = labels.filter(({ at: [x, y] }) => x >= 0 && y >= 0 && x <= stage.width && y <= stage.height);
  const taken: Box[] = [...obstacles, ...visible.map(({ at: [x, y] }): Box => [x - 6, y - 6, x + 6, y + 6])];
  for (const { id, at, size } of visible) {
    const outwards = Math.atan2(at[1] - centre[1], at[0] - centre[0]);
    let best: { box: Box; cost: number } | undefined;
    for (const radius of radiiPx) {
      for (let step = 0; step < directions; step++) {
        // 0, +1, −1, +2, −2 … steps off the outward direction.
        const turn = (step % 2 === 0 ? 1 : -1) * Math.ceil(step / 2) * ((2 * Math.PI) / directions);
        const box = boxAt(at, outwards + turn, radius, size);
        const cost = radius + Math.abs(turn) * 10 + covered(box, taken) + 3 * outside(box, stage);
        if (!best || cost < best.cost) best = { box, cost };
      }
    }
    taken.push(best!.box);
    placed.set(id, [best!.box[0], best!.box[1]]);
  }
  return placed;
}

function boxAt(at: XY, angle: number, radius: number, { width, height }: Size): Box {
  // Along x the radius counts from the label's nearer end, or a wide label would lie on its own spot.
  const x = at[0] + Math.cos(angle) * (radius + width / 2 - height / 2) - width / 2;
  const y = at[1] + Math.sin(angle) * radius - height / 2;
  return [x, y, x + width, y + height];
}

/** Square pixels of the box that others already have. */
function covered(box: Box, taken: readonly Box[]): number {
  let sum = 0;
  for (const other of taken) {
    const width = Math.min(box[2], other[2]) - Math.max(box[0], other[0]) + clearancePx;
    const height = Math.min(box[3], other[3]) - Math.max(box[1], other[1]) + clearancePx;
    if (width > 0 && height > 0) sum += width * height;
  }
  return sum;
}

/** Square pixels of the box beyond the stage, or too near to its edge. */
function outside(box: Box, stage: Size): number {
  const width = Math.min(box[2], stage.width - clearancePx) - Math.max(box[0], clearancePx);
  const height = Math.min(box[3], stage.height - clearancePx) - Math.max(box[1], clearancePx);
  const whole = (box[2] - box[0]) * (box[3] - box[1]);
  return whole - Math.max(width, 0) * Math.max(height, 0);
}
