/** Decides whether a change brings an opening for the tie so near to the end of a line that it reads as one more letter. */

import { accentAbove, letterBeside, nearerToLetters, openingNeighbours } from '../checks/measures/hole-beside-marks.ts';
import type { Report } from '../engine/engine.ts';
import { intersection } from '../geometry/clipper.ts';
import { area, boundsOf } from '../geometry/measure.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';

/** An opening that ran across letters is still among them with its middle so many of its diameters from one. Our own judgement. */
const nearLetters = 2;

/** Overlaps smaller than this, in mm², only touch. */
const touchingMm2 = 0.02;

/**
 * Whether no opening reads as a letter that did not before; and whether one that read as an accent, or ran across letters, is now plainly clear of them. Rings find such places by themselves (`tag/hanger/reading.ts`).
 */
export function keepsApart(before: Report, after: Report): boolean {
  return (after.tag?.pieces ?? []).every((piece) => {
    const was = before.tag?.pieces.find(({ id }) => id === piece.id);
    return piece.hangers.every((hanger, index) => {
      const pieces = after.tag!.pieces;
      const old = was?.hangers[index];
      const is = (judged: typeof readsAsLetter) => judged(hanger, piece, pieces);
      const did = (judged: typeof readsAsLetter) => old !== undefined && judged(old, was!, before.tag!.pieces);
      if (did(runsAcrossLetters) && !is(runsAcrossLetters) && is(isAmongLetters)) return false;
      if (did(readsAsAccent) && !is(readsAsAccent) && is(nearlyReadsAsAccent)) return false;
      return !is(readsAsLetter) || did(readsAsLetter);
    });
  });
}

function runsAcrossLetters(hanger: PlacedHanger, piece: Piece, pieces: readonly Piece[]): boolean {
  if (hanger.kind === 'ring') return false;
  return openingNeighbours(piece, pieces, hanger).some(
    ({ region, lettering }) => lettering.length > 0 && area(intersection(hanger.opening, region)) > touchingMm2,
  );
}

/** Between the ends of a line, level with a letter and near to it. */
function isAmongLetters(hanger: PlacedHanger, piece: Piece, pieces: readonly Piece[]): boolean {
  const { x, y } = hanger.centre;
  const near = nearLetters * hanger.openingSize;
  return openingNeighbours(piece, pieces, hanger).some(({ lettering }) =>
    lettering.some(({ lines }) =>
      lines.some((line) => {
        const boxes = line.map(({ region }) => boundsOf(region)!);
        return (
          boxes.some(({ minX }) => minX < x) &&
          boxes.some(({ maxX }) => maxX > x) &&
          boxes.some(({ minX, minY, maxX, maxY }) => x > minX - near && x < maxX + near && y > minY && y < maxY)
        );
      }),
    ),
  );
}

function readsAsAccent(hanger: PlacedHanger, piece: Piece, pieces: readonly Piece[]): boolean {
  if (hanger.kind === 'ring') return false;
  return openingNeighbours(piece, pieces, hanger).some(({ lettering }) => accentAbove(hanger, lettering));
}

function nearlyReadsAsAccent(hanger: PlacedHanger, piece: Piece, pieces: readonly Piece[]): boolean {
  return readsAsAccent({ ...hanger, centre: nearerToLetters(hanger.centre) }, piece, pieces);
}

function readsAsLetter(hanger: PlacedHanger, piece: Piece, pieces: readonly Piece[]): boolean {
  if (hanger.kind === 'ring') return false;
  // What is fitted stands as far off as it always does.
  const besides = openingNeighbours(piece, pieces, hanger).filter(({ isFitted }) => !isFitted);
  return besides.some(({ lettering }) => letterBeside(hanger, lettering));
}
