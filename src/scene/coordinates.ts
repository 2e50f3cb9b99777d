/** Points and boxes as the page has them: y runs down, rounded to 0.001 mm, a hundredth of a pixel at the strongest useful zoom. */

import type { Bounds, Point } from '../geometry/types.ts';
import type { SceneBounds, ScenePoint } from '../protocol/scene.ts';

const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;
// `0 -` instead of a minus sign, so that −0 never reaches a message.
export const flipped = ({ x, y }: Point): ScenePoint => [rounded(x), rounded(0 - y)];
export const boundsScene = (b: Bounds): SceneBounds => [b.minX, 0 - b.maxY, b.maxX, 0 - b.minY];

export function joinedBounds(a: SceneBounds, b: SceneBounds): SceneBounds {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}
