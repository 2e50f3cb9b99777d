/** Lettering of single strokes that is too small for the lines of which it is drawn. */

import type { Finding } from '../../core/issue.ts';
import { mm } from '../../core/figures.ts';
import { measuredOn } from '../../spec/model/measured-values.ts';
import type { Stock } from '../../spec/model/workshop-model.ts';
import { stockOf } from '../../tag/by-stock.ts';
import type { Mark, Piece, Tag } from '../../tag/tag.ts';
import { beamWidthOf } from './beam.ts';

/**
 * Least height of small letters, in widths of the line: an “e” has three strokes and two gaps in it. Below the first it
 * is worth a note; below the second, where a gap is no wider than a stroke, a warning. Our own judgement.
 */
const leastBeams = [6, 4] as const;

/** Tolerance for heights, in mm. */
const slackMm = 0.01;

export function smallStrokes(tag: Tag, quoted: (path: Mark['path'], text: string) => string): Finding[] {
  return tag.pieces.flatMap((piece) =>
    piece.marks.flatMap((mark) => tooSmall(piece, mark, stockOf(piece, tag), quoted)),
  );
}

function tooSmall(
  piece: Piece,
  { operation, strokeTexts = [] }: Mark,
  stock: Stock,
  quoted: (path: Mark['path'], text: string) => string,
): Finding[] {
  const beam = beamWidthOf(stock);
  const measured = operation === 'engrave' ? stock.minXHeight : undefined;
  const [usual, least] = measured === undefined ? leastBeams.map((beams) => beams * beam) : [measured, measured];
  const basis = measured === undefined ? '' : measuredOn(stock.measuredOn?.min_x_height);
  const small = strokeTexts.filter(({ height, text }) => /[\p{L}\p{N}]/u.test(text) && height < usual! - slackMm);
  // Copies of a text are one finding.
  const byPath = new Map(small.toSorted((a, b) => b.height - a.height).map((each) => [each.path.join('/'), each]));
  return [...byPath.values()].map(({ path, text, height }) => ({
    code: 'hard-to-read' as const,
    severity: height < least! - slackMm ? ('warning' as const) : ('info' as const),
    piece: piece.id,
    path,
    message: `${quoted(path, text)} is too small for lines ${mm(beam)} wide: its letters are ${mm(height)} high; minimum ${mm(usual!)}${basis}.`,
  }));
}
