/** Decides whether a change brings an opening for the tie so near to the end of a line that it reads as one more letter. */

import { openingNeighbours } from '../checks/measures/hole-beside-marks.ts';
import type { Report } from '../engine/engine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds } from '../geometry/types.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';

/**
 * An opening beside a letter reads as another one, an upright slot as an I, if it is nearer than the first and between the others as high, in
 * heights of that letter. Our own judgement.
 */
const likeLetter = { gap: 0.5, least: 0.4, most: 1.4 } as const;

/** Whether no opening reads as a letter that did not before; rings find such places by themselves (`tag/hanger/reading.ts`). */
export function keepsApart(before: Report, after: Report): boolean {
  return (after.tag?.pieces ?? []).every((piece) => {
    const was = before.tag?.pieces.find(({ id }) => id === piece.id);
    return piece.hangers.every((hanger, index) => {
      if (!readsAsLetter(hanger, piece, after.tag!.pieces)) return true;
      const old = was?.hangers[index];
      return old !== undefined && readsAsLetter(old, was!, before.tag!.pieces);
    });
  });
}

function readsAsLetter(hanger: PlacedHanger, piece: Piece, pieces: readonly Piece[]): boolean {
  const box = hanger.kind === 'ring' ? undefined : boundsOf(hanger.opening);
  if (!box) return false;
  return openingNeighbours(piece, pieces, hanger).some(({ lettering }) =>
    lettering.some(({ letters, grow }) =>
      letters.some(({ region }) => {
        const letter = boundsOf(region);
        return letter !== undefined && standsBeside(box, letter, grow);
      }),
    ),
  );
}

function standsBeside(opening: Bounds, letter: Bounds, grow: number): boolean {
  const height = letter.maxY - letter.minY;
  const share = (opening.maxY - opening.minY) / height;
  const middle = (opening.minY + opening.maxY) / 2;
  const gap = Math.max(letter.minX - opening.maxX, opening.minX - letter.maxX) - grow;
  const isLevel = middle > letter.minY && middle < letter.maxY;
  return isLevel && share > likeLetter.least && share < likeLetter.most && gap > 0 && gap < likeLetter.gap * height;
}
