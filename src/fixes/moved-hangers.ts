/** Finds whether a tag hangs from another place after a change. */

import { boundsOf, boxCentre, distance } from '../geometry/measure.ts';
import type { Point } from '../geometry/types.ts';
import type { Report } from '../engine/engine.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';

/** The first hanger that comes or goes, or moves by more than a share of its own size. */
export function movedHanger(before: Report, after: Report, share: number): PlacedHanger | undefined {
  for (const was of before.tag?.pieces ?? []) {
    const is = after.tag?.pieces.find(({ id }) => id === was.id);
    const moved = was.hangers.find((hanger, index) => {
      const now = is?.hangers[index];
      return (
        !is || now?.kind !== hanger.kind || distance(placeOn(was, hanger, is), now.centre) > share * sizeOf(hanger)
      );
    });
    if (moved) return moved;
    const further = is?.hangers[was.hangers.length];
    if (further) return further;
  }
  return undefined;
}

/** Where the hanger would be on a piece whose body is larger, wider or elsewhere. */
function placeOn({ body }: Piece, { centre }: PlacedHanger, { body: other }: Piece): Point {
  const [from, to] = [boundsOf(body), boundsOf(other)];
  if (!from || !to) return centre;
  const [middle, at] = [boxCentre(from), boxCentre(to)];
  return {
    x: at.x + ((centre.x - middle.x) * (to.maxX - to.minX)) / (from.maxX - from.minX),
    y: at.y + ((centre.y - middle.y) * (to.maxY - to.minY)) / (from.maxY - from.minY),
  };
}

/** The smaller side of its box, in mm: the diameter of a ring with its wall, the width of a slot. */
function sizeOf({ lug, opening }: PlacedHanger): number {
  const box = boundsOf(lug ?? opening)!;
  return Math.min(box.maxX - box.minX, box.maxY - box.minY);
}
