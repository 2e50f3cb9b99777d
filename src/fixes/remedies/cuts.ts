/** Remedies that bring a cut-out back onto its piece. */

import { samePath } from '../../core/values.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle } from '../candidate.ts';
import { centredOrSmaller } from './marks.ts';
import { movedInto, withoutEntry } from './moving.ts';

/** Margins between the cut-out and the edge in min_web, the nicest first. */
const margins = [2, 1, 4];

/** A cut-out that misses the piece or runs off its edge: moved onto it, centred, or made smaller. */
export function cutOnBody(at: Case): Remedy[] {
  const { piece, issue, tag } = at;
  const cut = piece?.sources.find(({ entry }) => samePath(entry, issue.path));
  const box = cut && boundsOf(cut.region);
  const room = piece && boundsOf(piece.body);
  if (!cut || !box || !room) return [];
  const name = shapeTitle(cut.shape);
  const inMm = margins.map((margin) => margin * tag.stock.minWeb);
  const taken = withoutEntry(at, issue.path);
  return [
    { words: `Move ${name} onto the piece`, candidates: movedInto(at, cut.shape, box, room, inMm) },
    ...centredOrSmaller(at, box, room),
    {
      words: `Remove ${name} from the list`,
      candidates: taken ? [{ description: 'it cuts nothing', edits: [taken] }] : [],
    },
  ];
}
