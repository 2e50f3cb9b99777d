/** Openings for the tie that are too near to an edge, open to it, joined to another opening, or outside the piece. */

import type { Finding } from '../core/issue.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { locationOf } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { stateOf } from './measures/joined-opening.ts';
import type { OpeningState } from './measures/joined-opening.ts';
import { oncePerRow } from './measures/once-per-row.ts';
import { mm2, mmWide } from '../core/figures.ts';
import { minimumNote, byMinimum, faultPlaceOf, thinPlaces } from './measures/thin-places.ts';
import type { ThinPlace } from './measures/thin-places.ts';

export const holeNearEdge: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) =>
    oncePerRow(piece, (hanger) => [
      ...notClosed(piece, hanger),
      // `hanger-weak` reports the wall of a ring.
      ...(hanger.kind === 'ring' ? [] : nearEdges(piece, hanger, stock)),
    ]),
  );

function notClosed(piece: Piece, hanger: PlacedHanger): Finding[] {
  const { kind, path, centre } = hanger;
  const what = kind === 'ring' ? 'hole of the ring' : kind;
  const message = faultOf(stateOf(piece, hanger), what, kind === 'keyhole' ? 'nail' : 'tie');
  if (message === undefined) return [];
  return [{ code: 'hole-near-edge', severity: 'error', piece: piece.id, path, points: [centre], message }];
}

function faultOf(state: OpeningState, hole: string, tie: string): string | undefined {
  switch (state) {
    case 'closed':
    case 'reported':
      return undefined;
    case 'beside':
      return `The ${hole} lies beside the body: there is nothing for the ${tie} to hold on to.`;
    case 'open':
      return `The ${hole} is open to the edge: the ${tie} slips out.`;
    default:
      return state.isWhole
        ? `The ${hole} runs into another opening: it lies entirely inside ${state.what}, so there is no separate hole.`
        : `The ${hole} runs into another opening: it shares ${mm2(state.shared, 2)} with ${state.what}, and the ${tie} slips into that.`;
  }
}

/** One finding for the opening, at its narrowest place. */
function nearEdges(piece: Piece, hanger: PlacedHanger, stock: Stock): Finding[] {
  return byMinimum(thinPlaces(piece, stock, hanger)).map((necks) => {
    const { minimum } = necks[0]!;
    return {
      code: 'hole-near-edge',
      severity: 'warning',
      piece: piece.id,
      path: hanger.path,
      ...locationOf(necks.map(faultPlaceOf)),
      minimum,
      message: `${nearnessText(necks, hanger)}; ${minimumNote(minimum, stock)}.`,
    };
  });
}

function nearnessText(necks: readonly ThinPlace[], { kind }: PlacedHanger): string {
  const least = mmWide(necks[0]!.width);
  return necks.length === 1
    ? `Only ${least} of material is left between the ${kind} and an edge`
    : `The ${kind} is too close to an edge in ${necks.length} places: only ${least} of material is left at the narrowest`;
}
