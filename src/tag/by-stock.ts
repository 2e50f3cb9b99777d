/** Which stock each piece of a tag is cut from. */

import type { CutFrom, Stock } from '../spec/model.ts';
import type { Piece, Tag } from './tag.ts';

export function stockOf({ cutFrom }: Pick<Piece, 'cutFrom'>, { stock }: Pick<Tag, 'stock'>): Stock {
  return cutFrom?.stock ?? stock;
}

/**
 * The tag once for each stock it is cut from, with the pieces from that, the stock and how the machine works it. In the order in
 * which pieces first ask for them; the tag itself where all of it is from its own stock.
 */
export function byStock(tag: Tag): readonly Tag[] {
  const stocks = [...new Set(tag.pieces.map((piece) => stockOf(piece, tag)))];
  if (stocks.every((stock) => stock === tag.stock)) return [tag];
  return stocks.map((stock) => {
    const pieces = tag.pieces.filter((piece) => stockOf(piece, tag) === stock);
    return fromStock(tag, pieces[0]?.cutFrom ?? tag, pieces);
  });
}

/** A tag of these pieces alone, cut from that. */
export function fromStock(tag: Tag, { stock, machine }: CutFrom, pieces: readonly Piece[]): Tag {
  const { machine: own, ...rest } = tag;
  const worked = machine ?? (stock === tag.stock ? own : undefined);
  return { ...rest, stock, ...(worked ? { machine: worked } : {}), pieces };
}
