/** Remedies for lettering that ends just beyond a frame. */

import { area, boundsOf, perimeter } from '../../geometry/measure.ts';
import { samePath } from '../../core/values.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeAt, shapeTitle } from '../candidate.ts';
import { madeSmaller, movedBy } from './moving.ts';

/** Where in the frame it may end, from its outer edge, in widths of the frame: the nicest first (our own judgement). */
const endsAt = [0.5, 0.3, 0.7, 0.1];

/** The lettering ends within the frame: made smaller, or moved where it is beyond on one side alone. */
export function withinFrame(at: Case): Remedy[] {
  const { piece, issue } = at;
  const shape = shapeAt(at, issue.path);
  const name = piece?.sources.find(({ path }) => samePath(path, issue.path));
  const [box, whole] = [name && boundsOf(name.region), piece && boundsOf(piece.body)];
  const [farthest] = issue.points ?? [];
  if (shape?.modifiers.place?.margin)
    return [{ words: `Make ${shapeTitle(shape)} smaller`, candidates: madeSmaller(at, shape) }];
  if (!shape || !piece || !name || !box || !whole || !farthest || issue.width === undefined) return [];
  const frames = piece.sources.filter(({ use, lettering }) => use === 'body' && !lettering?.length);
  // As wide as a straight strip of the same area and outline.
  const wide = Math.min(...frames.map(({ region }) => (2 * area(region)) / perimeter(region)));
  const reaches = endsAt.map((share) => issue.width! + share * wide);
  const aside = farthest.x < (box.minX + box.maxX) / 2 ? 1 : -1;
  return [
    {
      words: `Make ${shapeTitle(shape)} smaller`,
      candidates: madeSmaller(
        at,
        shape,
        reaches.map((reach) => 1 - (2 * reach) / (box.maxX - box.minX)),
      ),
    },
    {
      words: `Move ${shapeTitle(shape)}`,
      candidates: movedBy(
        at,
        shape,
        reaches.map((reach) => ({ x: aside * reach, y: 0 })),
      ),
    },
  ];
}
