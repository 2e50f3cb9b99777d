/** Widens a weak wall beside a window, or between two windows, by changing the window, not the plate. */

import { distance } from '../../geometry/measure.ts';
import { distanceTo } from '../../checks/measures/blame.ts';
import type { Point } from '../../geometry/types.ts';
import type { Source } from '../../tag/tag.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, settingLengths } from '../candidate.ts';
import { madeSmaller, movedBy } from './moving.ts';

/** Distance within which a point is on the outline of a cut, in mm. */
const onEdgeMm = 0.05;

/** Multiples of what is missing: a wall between curves needs slightly more. */
const shares = [1.01, 1.1, 1.3, 1.6, 2];

export function clearOfCut(at: Case): Remedy[] {
  const wall = wallBesideCut(at);
  if (!wall) return [];
  const { cut, away, missing } = wall;
  const { shape } = cut;
  const { grow = 0 } = shape.modifiers;
  const thinner = shares.map((share) => grow - share * missing);
  return [
    {
      words: `Move ${shapeTitle(shape)}`,
      candidates: movedBy(
        at,
        shape,
        shares.map((share) => ({ x: share * missing * away.x, y: share * missing * away.y })),
      ),
    },
    {
      words: `Make ${shapeTitle(shape)} smaller`,
      candidates: [...madeSmaller(at, shape), ...settingLengths(at, shape.path, 'grow', thinner, grow)],
    },
  ];
}

/** A wall with a cut-out on one side and something else on the other. */
export function wallBesideCut(at: Case) {
  const { issue, piece, tag } = at;
  const [a, b] = issue.points ?? [];
  const { width, minimum = tag.stock.minWeb } = issue;
  if (!a || !b || width === undefined || !piece) return undefined;
  const cuts = piece.sources.filter(({ use }) => use === 'cut');
  const beside = (point: Point) => cuts.find(({ region }) => distanceTo(region, point) < onEdgeMm);
  const [ofA, ofB] = [beside(a), beside(b)];
  const [cut, edge, far] = ofB ? [ofB, b, a] : [ofA, a, b];
  // Material within cut-through lettering, such as the wall around a counter, is not beside it.
  if (!cut || ofA === ofB) return undefined;
  const length = distance(edge, far);
  if (length === 0) return undefined;
  const away = { x: (edge.x - far.x) / length, y: (edge.y - far.y) / length };
  return { cut: cut satisfies Source, away, missing: minimum - width };
}
