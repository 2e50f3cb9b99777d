/** Finds the letter at a place on a piece: a line of the spec only gives the word, which may be long. */

import { boundsOf, contains } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import type { Piece } from '../../tag/tag.ts';
import type { Letter } from '../../tag/lettering/letters.ts';
import { distanceTo } from './blame.ts';

/** Growth and straps reach beyond a letter, but a place farther than this from every letter, in mm, belongs to none. */
const reachMm = 2;

/** A phrase such as ` at “n”`; empty if the place is at no letter, or the text has only one. */
export function letterAt(piece: Piece, ends: readonly Point[]): string {
  const letter = letterNear(piece, ends);
  return letter === undefined ? '' : ` at “${letter}”`;
}

/** The letter at the middle of the ends; `undefined` if the place is at no letter, or the text has only one. */
export function letterNear({ sources }: Piece, ends: readonly Point[]): string | undefined {
  const at = {
    x: ends.reduce((sum, { x }) => sum + x, 0) / ends.length,
    y: ends.reduce((sum, { y }) => sum + y, 0) / ends.length,
  };
  let nearest: Letter | undefined;
  let least = reachMm;
  for (const { lettering = [] } of sources) {
    const letters = lettering.flatMap((each) => each.letters);
    if (letters.length < 2) continue;
    for (const letter of letters) {
      const { minX, minY, maxX, maxY } = boundsOf(letter.region)!;
      if (at.x < minX - least || at.x > maxX + least || at.y < minY - least || at.y > maxY + least) continue;
      const distance = contains(letter.region, at) ? 0 : distanceTo(letter.region, at);
      if (distance >= least) continue;
      least = distance;
      nearest = letter;
    }
  }
  return nearest?.text;
}
