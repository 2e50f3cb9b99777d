/** Remedies that bring a glued piece onto its backing. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Case, Remedy } from '../candidate.ts';
import { growthOf, shapeTitle, settingLengths, shapeAt } from '../candidate.ts';
import { madeSmallerFor, marginsMm, movedInto } from './moving.ts';

/** Last of all, almost no margin, where there is no room. */
const marginsOnBacking = [...marginsMm, 0.05];

export function onItsBacking(at: Case): Remedy[] {
  const { piece, tag, model, issue } = at;
  const shape = shapeAt(at, issue.path);
  const carrier = tag.pieces.find(({ id }) => id === piece?.glueTo);
  const [box, frame] = [piece && boundsOf(piece.region), carrier && boundsOf(carrier.region)];
  if (!shape || !carrier || !box || !frame) return [];
  const below = model.pieces.find(({ id }) => id === carrier.id)?.body[0]?.shape;
  const before = below ? growthOf(at, below) : 0;
  const missing = issue.width;
  return [
    { words: `Move ${shapeTitle(shape)}`, candidates: movedInto(at, shape, box, frame, marginsOnBacking) },
    { words: `Make ${shapeTitle(shape)} smaller`, candidates: madeSmallerFor(at, shape, box, frame) },
    {
      words: `Enlarge ${below ? shapeTitle(below) : ''}`,
      candidates:
        below && missing !== undefined
          ? settingLengths(
              at,
              below.path,
              'grow',
              [0.5, 1.5].map((more) => before + missing + more),
              before,
            )
          : [],
    },
  ];
}
