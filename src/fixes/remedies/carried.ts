/** Remedies that bring a glued piece onto its backing. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import type { Case, Remedy } from '../candidate.ts';
import { growthOf, shapeTitle, settingLengths, shapeAt } from '../candidate.ts';
import { madeSmaller, movedBy } from './moving.ts';

/**
 * Margins between a piece and the edge of its backing, in mm: enough to look intended, or almost none where there is no
 * room.
 */
const marginsMm = [1, 2, 0.05];

export function onItsBacking(at: Case): Remedy[] {
  const { piece, tag, model, issue } = at;
  const shape = shapeAt(at, issue.path);
  const carrier = tag.pieces.find(({ id }) => id === piece?.glueTo);
  const [box, frame] = [piece && boundsOf(piece.region), carrier && boundsOf(carrier.region)];
  if (!shape || !carrier || !box || !frame) return [];
  const ways = [...marginsMm.map((margin) => wayInto(box, frame, margin)), wayToMiddle(box, frame)];
  const below = model.pieces.find(({ id }) => id === carrier.id)?.body[0]?.shape;
  const before = below ? growthOf(at, below) : 0;
  const missing = issue.width;
  return [
    { words: `Move ${shapeTitle(shape)}`, candidates: movedBy(at, shape, ways) },
    { words: `Make ${shapeTitle(shape)} smaller`, candidates: madeSmaller(at, shape) },
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

/** Shortest move into the box less a margin; along a side that is too short, to its middle. */
function wayInto(box: Bounds, frame: Bounds, margin: number): Point {
  const along = (min: number, max: number, from: number, to: number): number => {
    const [before, after] = [from + margin - min, to - margin - max];
    if (before > after) return (from + to) / 2 - (min + max) / 2;
    if (before > 0) return before;
    return Math.min(after, 0);
  };
  return {
    x: along(box.minX, box.maxX, frame.minX, frame.maxX),
    y: along(box.minY, box.maxY, frame.minY, frame.maxY),
  };
}

function wayToMiddle(box: Bounds, frame: Bounds): Point {
  return {
    x: (frame.minX + frame.maxX - box.minX - box.maxX) / 2,
    y: (frame.minY + frame.maxY - box.minY - box.maxY) / 2,
  };
}
