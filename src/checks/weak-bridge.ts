/** Short necks between two parts of a piece, and walls between two edges of it, away from the hanger. */

import type { Finding } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import { blame } from './blame.ts';
import type { Check } from './check.ts';
import { mm, mm2 } from '../spec/figures.ts';
import { thinPlaces, wanted } from './thin-places.ts';

export const weakBridges: Check = ({ pieces, stock }) => pieces.flatMap((piece) => weakBridgesOf(piece, stock.minWeb));

function weakBridgesOf(piece: Piece, minWeb: number): Finding[] {
  const necks = thinPlaces(piece, minWeb, 'elsewhere').filter(({ kind }) => kind !== 'stroke');
  return necks.map(({ kind, width, ends, areas }) => {
    const told =
      kind === 'bridge'
        ? `Weak bridge: only ${mm(width)} of material joins parts of ${mm2(areas[0])} and ${mm2(areas[1])}`
        : `Weak wall: only ${mm(width)} of material between two edges`;
    return {
      code: 'weak-bridge',
      severity: 'warning',
      piece: piece.id,
      path: blame(piece, ...ends),
      points: ends,
      width,
      message: `${told}; ${wanted(minWeb)}.`,
    };
  });
}
