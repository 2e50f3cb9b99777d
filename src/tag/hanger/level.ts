/** Two hangers in the corners of one side are level, whatever the shape between them. */

import { crossingsAt } from '../../geometry/crossings-at.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Hanger, HangerPlace } from '../../spec/model/model.ts';
import { placeInside, roomFor, roomInside } from './inside.ts';
import { endsOf, reachOf } from './space.ts';
import type { Opening } from './space.ts';

/** The level of two: the outer one of a pair comes to that of the other. */
export function levelOf(at: HangerPlace, own: Point, other: Point): number {
  const isAtTop = at.kind === 'anchor' && at.anchor.startsWith('top');
  return isAtTop ? Math.min(own.y, other.y) : Math.max(own.y, other.y);
}

/** Where the hole, slot or keyhole goes that would be at `centre`. */
export function levelled(hanger: Opening & Pick<Hanger, 'pair'>, on: Region, centre: Point): Point {
  const { pair, at, inset } = hanger;
  if (!pair || pair.kind === 'ring' || at.kind !== 'anchor') return centre;
  const other =
    placeInside(on, pair.at, reachOf(pair), pair.inset, endsOf(pair)) ??
    placeInside(on, pair.at, reachOf(pair), pair.inset);
  if (!other) return centre;
  const y = levelOf(at, centre, other);
  if (y === centre.y) return centre;
  const found = roomInside(on, at, reachOf(hanger), inset)?.room ?? [];
  const stretches = stretchesAt(roomFor(found, endsOf(hanger)), y);
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
