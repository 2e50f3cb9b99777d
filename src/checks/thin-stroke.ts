/** Whole runs of a piece that are thin. Lettering that is thin all over has one remedy, so it is one finding. */

import type { Finding } from '../core/issue.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece } from '../tag/tag.ts';
import { byCause, locationOf } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { letterAt } from './measures/letter-at.ts';
import { mm, mmWide } from '../core/figures.ts';
import { minimumNote, byMinimum, faultPlaceOf, severityOf, thinPlaces } from './measures/thin-places.ts';
import type { ThinPlace } from './measures/thin-places.ts';

export const thinStrokes: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) => {
    const strokes = thinPlaces(piece, stock, 'elsewhere').filter(({ kind }) => kind === 'stroke');
    return byMinimum(strokes).flatMap((alike) => thinStrokesOf(piece, alike, stock));
  });

/** One finding for each shape to blame, at its narrowest place. */
function thinStrokesOf(piece: Piece, strokes: readonly ThinPlace[], stock: Stock): Finding[] {
  return byCause(piece, strokes, ({ ends }) => ends).map(({ path, found }) => {
    const { minimum } = found[0]!;
    return {
      code: 'thin-stroke',
      severity: severityOf(found),
      piece: piece.id,
      path,
      ...locationOf(found.map(faultPlaceOf)),
      minimum,
      message: messageOf(found, piece, stock),
    };
  });
}

function messageOf(necks: readonly ThinPlace[], piece: Piece, stock: Stock): string {
  const { width, ends, minimum } = necks[0]!;
  const length = mm(
    necks.reduce((sum, neck) => sum + neck.length, 0),
    0,
  );
  const narrowest = `${mmWide(width)} at the narrowest${letterAt(piece, ends)}`;
  return necks.length === 1
    ? `Thin stroke: ${length} long and ${narrowest}; ${minimumNote(minimum, stock)}.`
    : `Thin strokes: ${necks.length} of them, ${length} in all and ${narrowest}; ${minimumNote(minimum, stock)}.`;
}
