/** Where the beam runs on a piece, by operation. */

import { transform } from '../geometry/affine.ts';
import { offset, union } from '../geometry/clipper.ts';
import type { Affine, Region } from '../geometry/types.ts';
import { stockOf } from '../tag/by-stock.ts';
import { kerfOf, offsetByKind } from '../tag/uncompensated.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { removeDuplicates } from './remove-duplicates.ts';

/** What is engraved on one layer. */
export interface EngravedLayer {
  readonly name: string;
  readonly region: Region;
}

export interface PiecePaths {
  /** What the paths are called by. */
  readonly piece: string;
  readonly engrave: Region;
  /** The same by layers, where each entry has its own. */
  readonly engraveLayers?: readonly EngravedLayer[];
  readonly score: Region;
  readonly cut: Region;
}

/**
 * In the coordinates of the tag. Cut lines run half a kerf outside the finished outline and, being a growth, half a kerf inside
 * every opening, so that what the beam leaves has the finished size.
 */
export function piecePaths(piece: Piece, { stock: usual, output }: Pick<Tag, 'stock' | 'output'>): PiecePaths {
  const { id, region, cutLine, marks } = piece;
  const stock = stockOf(piece, { stock: usual });
  const { outer, inner } = kerfOf(stock);
  const marked = (operation: 'engrave' | 'score') =>
    union(marks.filter((mark) => mark.operation === operation).map((mark) => mark.region));
  const thinned = (marks: Region) => offset(marks, -(stock.kerfs?.engrave ?? 0) / 2);
  const layers = marks
    .filter(({ operation }) => operation === 'engrave')
    .map((mark, index) => ({ name: mark.shape.name ?? `engrave ${index + 1}`, region: thinned(mark.region) }));
  return {
    piece: id,
    engrave: thinned(marked('engrave')),
    ...(output.engraveEach ? { engraveLayers: layers } : {}),
    score: removeDuplicates(marks.filter(({ operation }) => operation === 'score').flatMap((mark) => [...mark.region])),
    cut: cutLine ?? offsetByKind(region, { outer: outer / 2, inner: inner / 2 }),
  };
}

export function movePaths({ piece, engrave, engraveLayers, score, cut }: PiecePaths, by: Affine): PiecePaths {
  const layers = engraveLayers?.map(({ name, region }) => ({ name, region: transform(region, by) }));
  return {
    piece,
    ...(layers ? { engraveLayers: layers } : {}),
    engrave: transform(engrave, by),
    score: transform(score, by),
    cut: transform(cut, by),
  };
}
