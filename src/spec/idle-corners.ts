/** `corners` says how an offset makes corners, and nothing where nothing is offset. */

import { isGroup } from '../core/values.ts';

/** What is wrong with the `corners` of a shape as it is written; `undefined` where something heeds them. */
export function idleCorners(shape: unknown): string | undefined {
  if (!isGroup(shape) || shape['corners'] === undefined) return undefined;
  if (shape['grow'] !== undefined || shape['around'] !== undefined) return undefined;
  const other = shape['rectangle'] === undefined ? '' : ' The corners of a rectangle are rounded by “radius”.';
  return `“corners” goes with “grow” or “around”, and this shape has neither.${other}`;
}
