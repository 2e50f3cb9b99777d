/** Holes and slots for the tie that are too near to an edge of the piece, or open to it. */

import { contains, ringArea } from '../geometry/measure.ts';
import type { Finding } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { mm } from './check.ts';
import { thinPlaces, wanted } from './thin-places.ts';

export const holeNearEdge: Check = ({ pieces, stock }) => pieces.flatMap((piece) => nearEdges(piece, stock.minWeb));

function nearEdges(piece: Piece, minWeb: number): Finding[] {
  const { hanger } = piece;
  if (!hanger || hanger.kind === 'ring') return [];
  const common = { code: 'hole-near-edge', piece: piece.id, path: hanger.path } as const;
  const closed = piece.region.some((ring) => ringArea(ring) < 0 && contains([ring], hanger.centre));
  if (!closed) {
    const message = `The ${hanger.kind} is open to the edge: the tie slips out.`;
    return [{ ...common, severity: 'error', points: [hanger.centre], message }];
  }
  return thinPlaces(piece, minWeb, 'at hanger').map(({ ends, width }) => ({
    ...common,
    severity: 'warning',
    points: ends,
    width,
    message: `Only ${mm(width)} of material is left between the ${hanger.kind} and an edge; ${wanted(minWeb)}.`,
  }));
}
