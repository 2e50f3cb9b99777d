/** Engraved and scored detail that is finer than the beam. */

import { closeOnBothSides } from '../geometry/close-edges.ts';
import type { ClosePlace } from '../geometry/close-edges.ts';
import type { Finding } from '../core/issue.ts';
import type { Mark, Piece } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { areasIn } from '../tag/open-lines.ts';
import { mm, mmWide } from '../core/figures.ts';
import { finestMm } from './measures/beam.ts';
import { perRegion } from './measures/per-region.ts';

/** Detail that is too fine over less than this in all, in mm, is not worth reporting. */
const noticeableMm = 3;

export const fineMarks: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) =>
    piece.marks
      // The modules of a code meet at their corners, and have a limit of their own; lines are as wide as the beam.
      .filter(({ codes }) => !codes)
      .flatMap((mark) => fineMark(piece, { ...mark, region: areasIn(mark) }, Math.max(stock.kerf, finestMm))),
  );

const closeIn = perRegion(closeOnBothSides);

function fineMark(piece: Piece, { operation, region, path }: Mark, finest: number): Finding[] {
  const { material: strokes, gap: gaps } = closeIn(region, finest);
  const groups = operation === 'engrave' ? [strokes, gaps] : [[...strokes, ...gaps]];
  const noticeable = groups.filter((places) => totalLength(places) > noticeableMm);
  if (noticeable.length === 0) return [];
  const { width, ends } = narrowest(noticeable.flat());
  const descriptions = noticeable.map((places) => {
    const figures = `${mmWide(narrowest(places).width)} at the narrowest, ${mm(totalLength(places), 0)} long in total`;
    if (operation === 'score') return `score lines too close together, ${figures}, burn together`;
    return places === strokes ? `strokes ${figures}` : `gaps ${figures}, which fill in`;
  });
  return [
    {
      code: 'fine-mark',
      severity: 'info',
      piece: piece.id,
      path,
      points: ends,
      width,
      message: `Finer than the beam can draw (${mm(finest)}): ${descriptions.join('; ')}.`,
    },
  ];
}

function totalLength(places: readonly ClosePlace[]): number {
  return places.reduce((sum, { length }) => sum + length, 0);
}

function narrowest(places: readonly ClosePlace[]): ClosePlace {
  return places.reduce((least, place) => (place.width < least.width ? place : least));
}
