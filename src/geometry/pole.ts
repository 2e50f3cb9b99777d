/** The point of a region farthest from its edges. The only file that imports polylabel. */

import polylabel from 'polylabel';
import { partsOf } from './parts.ts';
import type { Point, Region } from './types.ts';

/** The centre of the largest disc in the largest part, to within `precisionMm`; `undefined` if there is no area. */
export function poleOf(region: Region, precisionMm = 0.01): Point | undefined {
  const [part] = partsOf(region);
  if (!part) return undefined;
  const [x, y] = polylabel(
    part.map((ring) => ring.map((point): [number, number] => [point.x, point.y])),
    precisionMm,
  );
  return x === undefined || y === undefined ? undefined : { x, y };
}
