/** Holes and slots for the tie that are too near to an edge of the piece, open to it, or not in the piece at all. */

import { intersection } from '../geometry/clipper.ts';
import { area, contains, ringArea } from '../geometry/measure.ts';
import type { Finding } from '../issue.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { seenAt } from './by-cause.ts';
import type { Check } from './check.ts';
import { mm } from '../spec/figures.ts';
import { atLeast, placeOf, thinPlaces } from './thin-places.ts';

/** An opening that takes away less merely touches the body, in mm². */
const touchingMm2 = 0.02;

export const holeNearEdge: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) =>
    piece.hangers
      .filter(({ kind }) => kind !== 'ring')
      .flatMap((hanger) => [...notClosed(piece, hanger), ...nearEdges(piece, hanger, stock.minWeb)]),
  );

/** An opening is closed when the void it is part of is a hole of the piece. */
function notClosed({ id, region, body }: Piece, { kind, centre, opening, path }: PlacedHanger): Finding[] {
  if (region.some((ring) => ringArea(ring) < 0 && contains([ring], centre))) return [];
  const message =
    area(intersection(opening, body)) < touchingMm2
      ? `The ${kind} lies beside the body: there is nothing for the tie to hold.`
      : `The ${kind} is open to the edge: the tie slips out.`;
  return [{ code: 'hole-near-edge', severity: 'error', piece: id, path, points: [centre], message }];
}

/** One finding for the opening, at its narrowest place. */
function nearEdges(piece: Piece, hanger: PlacedHanger, minimum: number): Finding[] {
  const { kind, path } = hanger;
  const necks = thinPlaces(piece, minimum, hanger);
  if (necks.length === 0) return [];
  const least = mm(necks[0]!.width);
  const told =
    necks.length === 1
      ? `Only ${least} of material is left between the ${kind} and an edge`
      : `The ${kind} is too near to edges at ${necks.length} places: only ${least} of material is left at the narrowest`;
  return [
    {
      code: 'hole-near-edge',
      severity: 'warning',
      piece: piece.id,
      path,
      ...seenAt(necks.map(placeOf)),
      minimum,
      message: `${told}; ${atLeast(minimum)}.`,
    },
  ];
}
