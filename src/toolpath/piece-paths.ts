/** Where the beam runs on a piece, by operation. */

import { transform } from '../geometry/affine.ts';
import { offset, union } from '../geometry/clipper.ts';
import type { Affine, Region } from '../geometry/types.ts';
import { kerfOf, offsetByKind } from '../tag/cut-on-the-line.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { removeDuplicates } from './remove-duplicates.ts';

export interface PiecePaths {
  /** What the paths are called by. */
  readonly piece: string;
  readonly engrave: Region;
  readonly score: Region;
  readonly cut: Region;
}

/**
 * In the coordinates of the tag. Cut lines run half a kerf outside the finished outline and, being a growth, half a kerf inside
 * every opening, so that what the beam leaves has the finished size.
 */
export function piecePaths({ id, region, cutLine, marks }: Piece, { stock }: Tag): PiecePaths {
  const { outer, inner } = kerfOf(stock);
  const marked = (operation: 'engrave' | 'score') =>
    union(marks.filter((mark) => mark.operation === operation).map((mark) => mark.region));
  return {
    piece: id,
    engrave: offset(marked('engrave'), -(stock.kerfs?.engrave ?? 0) / 2),
    score: removeDuplicates(marks.filter(({ operation }) => operation === 'score').flatMap((mark) => [...mark.region])),
    cut: cutLine ?? offsetByKind(region, { outer: outer / 2, inner: inner / 2 }),
  };
}

export function movePaths({ piece, engrave, score, cut }: PiecePaths, by: Affine): PiecePaths {
  return { piece, engrave: transform(engrave, by), score: transform(score, by), cut: transform(cut, by) };
}
