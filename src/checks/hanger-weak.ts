/** Rings that would tear: what joins the lug to the body, and the wall round its hole. */

import type { Neck } from '../geometry/necks.ts';
import type { Finding } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { distanceTo } from './blame.ts';
import { mm } from './check.ts';
import { thinPlaces, wanted } from './thin-places.ts';

/** An end of a neck is on the hole when it lies this near to it, in mm. */
const onHoleMm = 0.05;

export const hangerWeak: Check = ({ pieces, stock }) => pieces.flatMap((piece) => weakRing(piece, stock.minWeb));

/** The weakest joint and the weakest wall: a ring too thin has the same fault all round. */
function weakRing(piece: Piece, minWeb: number): Finding[] {
  const { hanger } = piece;
  if (hanger?.kind !== 'ring') return [];
  const places = thinPlaces(piece, minWeb, 'at hanger');
  const onHole = ({ ends }: Neck) => ends.some((end) => distanceTo(hanger.opening, end) < onHoleMm);
  const walls = places.filter(onHole);
  const joints = places.filter((neck) => !onHole(neck));
  const told: [Neck | undefined, string][] = [
    [joints[0], 'Weak ring: it is joined to the body by only'],
    [walls[0], 'Weak ring: the wall round its hole is only'],
  ];
  return told.flatMap(([neck, words]): Finding[] =>
    neck
      ? [
          {
            code: 'hanger-weak',
            severity: 'warning',
            piece: piece.id,
            path: hanger.path,
            points: neck.ends,
            width: neck.width,
            message: `${words} ${mm(neck.width)}; ${wanted(minWeb)}.`,
          },
        ]
      : [],
  );
}
