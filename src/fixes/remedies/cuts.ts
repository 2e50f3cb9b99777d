/** What brings a cut back onto its piece. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import type { Case, Remedy } from '../candidate.ts';
import { nameOf, samePath } from '../candidate.ts';
import { onBody } from './marks.ts';
import { movedBy, withoutEntry } from './moving.ts';

/** Left between the cut and the edge, in min_web: the least first. */
const margins = [1, 2, 4];

/** A cut that misses the piece, or runs off its edge: pushed onto it, put in its middle, or made smaller. */
export function cutOnBody(at: Case): Remedy[] {
  const { piece, issue, tag } = at;
  const cut = piece?.sources.find(({ entry }) => samePath(entry, issue.path));
  const box = cut && boundsOf(cut.region);
  const room = piece && boundsOf(piece.body);
  if (!cut || !box || !room) return [];
  const name = nameOf(cut.shape);
  const ways = margins.flatMap((margin) => intoRoom(box, room, margin * tag.stock.minWeb) ?? []);
  const taken = withoutEntry(at, issue.path);
  return [
    { words: `Move ${name} onto the piece`, candidates: movedBy(at, cut.shape, ways) },
    ...onBody(at),
    { words: `Take ${name} out of the list`, candidates: taken ? [{ told: 'it cuts nothing', edits: [taken] }] : [] },
  ];
}

/** The least move after which the box lies within the room, the margin left free; `undefined` where it does not go in. */
function intoRoom(box: Bounds, room: Bounds, margin: number): Point | undefined {
  const x = shift(box.minX, box.maxX, room.minX + margin, room.maxX - margin);
  const y = shift(box.minY, box.maxY, room.minY + margin, room.maxY - margin);
  return x === undefined || y === undefined || (x === 0 && y === 0) ? undefined : { x, y };
}

function shift(min: number, max: number, from: number, to: number): number | undefined {
  if (max - min > to - from) return undefined;
  return min < from ? from - min : Math.min(0, to - max);
}
