/** What gives a weak wall beside a window, or between two of them, the width that it lacks: the window makes way, not the plate. */

import { distance } from '../../geometry/measure.ts';
import { distanceTo } from '../../checks/blame.ts';
import type { Point } from '../../geometry/types.ts';
import type { Source } from '../../tag/tag.ts';
import type { Case, Remedy } from '../candidate.ts';
import { nameOf, settingLengths } from '../candidate.ts';
import { madeSmaller, movedBy } from './moving.ts';

/** A point is on the outline of a cut that is as near as this, in mm. */
const onEdgeMm = 0.05;

/** Shares of what is missing: a wall between curves needs a little more. */
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
      words: `Move ${nameOf(shape)}`,
      candidates: movedBy(
        at,
        shape,
        shares.map((share) => ({ x: share * missing * away.x, y: share * missing * away.y })),
      ),
    },
    {
      words: `Make ${nameOf(shape)} smaller`,
      candidates: [...madeSmaller(at, shape), ...settingLengths(at, shape.path, 'grow', thinner)],
    },
  ];
}

/** A wall that has a cut on one side of it, and something else on the other. */
export function wallBesideCut(at: Case) {
  const { issue, piece, tag } = at;
  const [a, b] = issue.points ?? [];
  const { width, minimum = tag.stock.minWeb } = issue;
  if (!a || !b || width === undefined || !piece) return undefined;
  const cuts = piece.sources.filter(({ use }) => use === 'cut');
  const beside = (point: Point) => cuts.find(({ region }) => distanceTo(region, point) < onEdgeMm);
  const [ofA, ofB] = [beside(a), beside(b)];
  const [cut, edge, far] = ofB ? [ofB, b, a] : [ofA, a, b];
  // Material within lettering that is cut through, such as the wall round a counter, is no wall beside it.
  if (!cut || ofA === ofB) return undefined;
  const length = distance(edge, far);
  if (length === 0) return undefined;
  const away = { x: (edge.x - far.x) / length, y: (edge.y - far.y) / length };
  return { cut: cut satisfies Source, away, missing: minimum - width };
}
