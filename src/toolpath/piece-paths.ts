/** Paths of the beam on a piece, by operation. */

import { transform } from '../geometry/affine.ts';
import { offset, union, unionOfWhole } from '../geometry/clipper.ts';
import type { Affine, Line, Region } from '../geometry/types.ts';
import { stockOf } from '../tag/by-stock.ts';
import { areasIn } from '../tag/open-lines.ts';
import { kerfOf, offsetByKind } from '../tag/uncompensated.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { removeDuplicates } from './remove-duplicates.ts';

export interface EngravedLayer {
  readonly name: string;
  readonly region: Region;
  readonly lines: readonly Line[];
}

export interface PiecePaths {
  /** Name of the paths. */
  readonly piece: string;
  readonly engrave: Region;
  /** The same by layer, if each entry has its own. */
  readonly engraveLayers?: readonly EngravedLayer[];
  readonly score: Region;
  /** Lines that are engraved or scored and enclose no area. */
  readonly engraveLines: readonly Line[];
  readonly scoreLines: readonly Line[];
  readonly cut: Region;
}

/**
 * Paths in the tag's coordinates. Cut lines run half a kerf outside the finished outline and, being an outward offset
 * of the material, half a kerf inside every opening, so the piece comes out at its finished size.
 */
export function piecePaths(piece: Piece, { stock: usual, output }: Pick<Tag, 'stock' | 'output'>): PiecePaths {
  const { id, region, cutLine, marks } = piece;
  const stock = stockOf(piece, { stock: usual });
  const { outer, inner } = kerfOf(stock);
  const marked = (operation: 'engrave' | 'score') =>
    unionOfWhole(marks.filter((mark) => mark.operation === operation).map(areasIn));
  const linesOf = (operation: 'engrave' | 'score') =>
    marks.filter((mark) => mark.operation === operation).flatMap((mark) => mark.lines ?? []);
  const thinned = (marks: Region) => offset(marks, -(stock.kerfs?.engrave ?? 0) / 2);
  const layers = marks
    .filter(({ operation }) => operation === 'engrave')
    .map((mark, index) => ({
      name: mark.shape.name ?? `engrave ${index + 1}`,
      region: thinned(areasIn(mark)),
      lines: mark.lines ?? [],
    }));
  return {
    piece: id,
    engrave: thinned(marked('engrave')),
    ...(output.engraveEach ? { engraveLayers: layers } : {}),
    score: removeDuplicates(
      marks.filter(({ operation }) => operation === 'score').flatMap((mark) => [...areasIn(mark)]),
    ),
    engraveLines: linesOf('engrave'),
    scoreLines: linesOf('score'),
    cut: cutLine ?? offsetByKind(region, { outer: outer / 2, inner: inner / 2 }),
  };
}

/** All that a piece takes up on a sheet: marks may run beyond its edge, and nothing else may lie under them. */
export function takenUp({ marks }: Piece, { cut, engrave, score }: PiecePaths): Region {
  const burnt = marks.filter(({ lines }) => lines).map(({ region }) => region);
  return union([cut, engrave, score, ...burnt].filter(({ length }) => length > 0));
}

export function movePaths(paths: PiecePaths, by: Affine): PiecePaths {
  const layers = paths.engraveLayers?.map(({ name, region, lines }) => ({
    name,
    region: transform(region, by),
    lines: transform(lines, by),
  }));
  return {
    piece: paths.piece,
    ...(layers ? { engraveLayers: layers } : {}),
    engrave: transform(paths.engrave, by),
    score: transform(paths.score, by),
    engraveLines: transform(paths.engraveLines, by),
    scoreLines: transform(paths.scoreLines, by),
    cut: transform(paths.cut, by),
  };
}

/** All paths that the beam may follow. */
export function allPaths({ engrave, score, engraveLines, scoreLines, cut }: PiecePaths): Region {
  return [...engrave, ...score, ...engraveLines, ...scoreLines, ...cut];
}
