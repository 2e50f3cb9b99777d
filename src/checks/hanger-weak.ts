/** Rings that would tear: what joins the lug to the body, and the wall round its hole. */

import { intersection } from '../geometry/clipper.ts';
import { area } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { Finding } from '../issue.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { distanceTo } from './blame.ts';
import type { Check } from './check.ts';
import { mm } from '../spec/figures.ts';
import { remembered } from './remembered.ts';
import { thinPlaces, wanted } from './thin-places.ts';

/** An end of a neck is on the hole when it lies this near to it, in mm. */
const onHoleMm = 0.05;

/** A lug that shares less with the body merely touches it, in mm². */
const touchingMm2 = 0.02;

export const hangerWeak: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) =>
    piece.hangers.flatMap((hanger) =>
      hanger.lug ? [...looseRing(piece, hanger, hanger.lug), ...weakPlaces(piece, hanger, stock.minWeb)] : [],
    ),
  );

function weakPlaces(piece: Piece, hanger: PlacedHanger, minWeb: number): Finding[] {
  return thinPlaces(piece, minWeb, hanger).map(({ ends, width }) => {
    const isWall = ends.some((end) => distanceTo(hanger.opening, end) < onHoleMm);
    const told = isWall
      ? `Weak ring: the wall round its hole is only ${mm(width)}`
      : `Weak ring: only ${mm(width)} of material joins it to the body here`;
    return {
      code: 'hanger-weak',
      severity: 'warning',
      piece: piece.id,
      path: hanger.path,
      points: ends,
      width,
      message: `${told}; ${wanted(minWeb)}.`,
    };
  });
}

/** Where all is to be one part, `loose-part` tells it. */
function looseRing({ id, parts, body }: Piece, { path, centre }: PlacedHanger, lug: Region): Finding[] {
  if (parts === 'one' || shared(lug, body) > touchingMm2) return [];
  const message = 'The ring is joined to nothing and falls out.';
  return [{ code: 'hanger-weak', severity: 'error', piece: id, path, points: [centre], message }];
}

const shared = remembered((lug, body) => area(intersection(lug, body)));
