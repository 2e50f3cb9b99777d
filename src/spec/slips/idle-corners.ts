/** Finds a `corners` key without effect: it says how an offset makes corners, and nothing is offset. */

import { isGroup } from '../../core/values.ts';

/** The fault of a shape whose `corners` has no effect; `undefined` if something uses it. */
export function idleCorners(shape: unknown): string | undefined {
  if (!isGroup(shape) || shape['corners'] === undefined) return undefined;
  if (shape['grow'] !== undefined || shape['around'] !== undefined) return undefined;
  const other = shape['rectangle'] === undefined ? '' : ' The corners of a rectangle are rounded by “radius”.';
  return `“corners” goes with “grow” or “around”, and this shape has neither.${other}`;
}
