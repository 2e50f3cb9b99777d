/** Two holes in the corners of one side are level, whatever the shape between them. */

import { crossingsAt } from '../../geometry/crossings-at.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Hole } from '../../spec/model.ts';
import { placeInside, roomInside } from './inside.ts';

/** Where the hole goes that would be at `centre`: the outer one of a pair comes to the level of the other. */
export function levelled({ pair, at, opening, inset }: Hole, on: Region, centre: Point): Point {
  const other = pair && placeInside(on, pair.at, pair.opening / 2, pair.inset);
  if (!other || at.kind !== 'anchor') return centre;
  const y = at.anchor.startsWith('top') ? Math.min(centre.y, other.y) : Math.max(centre.y, other.y);
  if (y === centre.y) return centre;
  const room = roomInside(on, at, opening / 2, inset)?.room ?? [];
  const stretches = stretchesAt(room, y);
  if (stretches.some(([from, to]) => from <= centre.x && centre.x <= to)) return { x: centre.x, y };
  const far = (x: number) => Math.abs(x - centre.x);
  const [nearest] = stretches.flat().sort((a, b) => far(a) - far(b));
  return nearest === undefined ? centre : { x: nearest, y };
}

/** Where a level line lies in a region. */
function stretchesAt(region: Region, y: number): (readonly [number, number])[] {
  const crossings = region.flatMap((ring) => crossingsAt(ring, y)).sort((a, b) => a - b);
  return crossings.flatMap((from, index) => (index % 2 === 0 ? [[from, crossings[index + 1]!] as const] : []));
}
