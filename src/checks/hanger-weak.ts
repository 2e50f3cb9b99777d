/** Rings that would tear: the joint of the lug with the body, and the wall round its hole. */

import { intersection } from '../geometry/clipper.ts';
import { area } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { distanceTo } from './measures/blame.ts';
import { locationOf } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { mm } from '../core/figures.ts';
import { oncePerRow } from './measures/once-per-row.ts';
import { perRegionPair } from './measures/per-region-pair.ts';
import { minimumNote, byMinimum, faultPlaceOf, minimumDated, thinPlaces } from './measures/thin-places.ts';
import type { ThinPlace } from './measures/thin-places.ts';

/** An end of a neck is on the hole if it lies this near to it, in mm. */
const onHoleMm = 0.05;

/** A lug that shares less than this with the body, in mm², only touches it. */
const touchingMm2 = 0.02;

export const hangerWeak: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) =>
    oncePerRow(piece, (hanger) =>
      hanger.lug ? [...looseRing(piece, hanger, hanger.lug), ...weakPlaces(piece, hanger, stock)] : [],
    ),
  );

/** One finding for the ring, at its narrowest place. */
function weakPlaces(piece: Piece, hanger: PlacedHanger, stock: Stock): Finding[] {
  return byMinimum(thinPlaces(piece, stock, hanger)).map((necks) => {
    const { minimum } = necks[0]!;
    return {
      code: 'hanger-weak',
      severity: 'warning',
      piece: piece.id,
      path: hanger.path,
      ...locationOf(necks.map(faultPlaceOf)),
      minimum,
      message: messageOf(necks, hanger, stock),
    };
  });
}

function messageOf(necks: readonly ThinPlace[], { opening }: PlacedHanger, stock: Stock): string {
  const { ends, width, minimum } = necks[0]!;
  const isWall = ends.some((end) => distanceTo(opening, end) < onHoleMm);
  if (necks.length > 1) {
    const which = isWall ? 'the wall around its hole' : 'where it joins the body';
    return `Weak ring: ${necks.length} places are narrower than ${minimumDated(minimum, stock)}; the narrowest, ${which}, is ${mm(width)}.`;
  }
  const description = isWall
    ? `the wall around its hole is only ${mm(width)}`
    : `only ${mm(width)} of material joins it to the body here`;
  return `Weak ring: ${description}; ${minimumNote(minimum, stock)}.`;
}

/** If all is to be one part, `loose-part` reports it. */
function looseRing({ id, parts, body }: Piece, { path, centre }: PlacedHanger, lug: Region): Finding[] {
  if (parts === 'one' || shared(lug, body) > touchingMm2) return [];
  const message = 'The ring is joined to nothing and falls out.';
  return [{ code: 'hanger-weak', severity: 'error', piece: id, path, points: [centre], message }];
}

const shared = perRegionPair((lug, body) => area(intersection(lug, body)));
