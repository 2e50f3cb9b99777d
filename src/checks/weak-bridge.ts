/** Short necks between two parts of a piece, and walls between two edges of it, away from the hanger. */

import { listedWithCounts } from '../core/names.ts';
import type { Finding } from '../core/issue.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece } from '../tag/tag.ts';
import { byCause, locationOf } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { letterAt, letterNear } from './measures/letter-at.ts';
import { mm2, mmWide } from '../core/figures.ts';
import { minimumNote, byMinimum, faultPlaceOf, severityOf, thinPlaces, minimumDated } from './measures/thin-places.ts';
import type { ThinPlace } from './measures/thin-places.ts';

export const weakBridges: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) => {
    const necks = thinPlaces(piece, stock, 'elsewhere').filter(({ kind }) => kind !== 'stroke');
    return byMinimum(necks).flatMap((alike) => weakBridgesOf(piece, alike, stock));
  });

/** One finding for each shape to blame, at its narrowest place. */
function weakBridgesOf(piece: Piece, necks: readonly ThinPlace[], stock: Stock): Finding[] {
  return byCause(piece, necks, ({ ends }) => ends).map(({ path, found }) => {
    const { minimum } = found[0]!;
    return {
      code: 'weak-bridge',
      severity: severityOf(found),
      piece: piece.id,
      path,
      ...locationOf(found.map(faultPlaceOf)),
      minimum,
      message: found.length === 1 ? oneNeck(found[0]!, piece, stock) : manyNecks(found, piece, stock),
    };
  });
}

function oneNeck({ kind, width, areas, ends, minimum }: ThinPlace, piece: Piece, stock: Stock): string {
  const at = letterAt(piece, ends);
  const description =
    kind === 'bridge'
      ? `Weak bridge${at}: only ${mmWide(width)} of material joins parts of ${mm2(areas[0])} and ${mm2(areas[1])}`
      : `Weak wall${at}: only ${mmWide(width)} of material between two edges`;
  return `${description}; ${minimumNote(minimum, stock)}.`;
}

function manyNecks(necks: readonly ThinPlace[], piece: Piece, stock: Stock): string {
  const { width, ends, minimum } = necks[0]!;
  const bridges = necks.filter(({ kind }) => kind === 'bridge').length;
  const counts = [counted(bridges, 'bridge'), counted(necks.length - bridges, 'wall')].filter((each) => each !== '');
  const at = letterAt(piece, ends);
  return `${counts.join(' and ')} are narrower than ${minimumDated(minimum, stock)}; the narrowest${at} is ${mmWide(width)}.${lettersInWords(necks, piece)}`;
}

/** Beyond this many places nobody reads the list, and finding the letters takes time. */
const mostLocated = 24;

/** A sentence such as ` At “n” (2), “e” and “a”.`; empty if all places are at one letter, or at none. */
function lettersInWords(necks: readonly ThinPlace[], piece: Piece): string {
  if (necks.length > mostLocated) return '';
  const letters = necks.map(({ ends }) => letterNear(piece, ends)).filter((letter) => letter !== undefined);
  return new Set(letters).size < 2 ? '' : ` At ${listedWithCounts(letters)}.`;
}

function counted(count: number, noun: string): string {
  return count === 0 ? '' : `${count} ${noun}${count === 1 ? '' : 's'}`;
}
