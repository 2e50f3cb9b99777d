/** The stock that each piece of a tag is cut from. */

import type { CutFrom } from '../spec/model/model.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece, Tag } from './tag.ts';

export function stockOf({ cutFrom }: Pick<Piece, 'cutFrom'>, { stock }: Pick<Tag, 'stock'>): Stock {
  return cutFrom?.stock ?? stock;
}

/**
 * The tag once for each stock it is cut from, with the pieces, the stock and how the machine works it, in the order in
 * which pieces first ask for them. If everything is cut from the tag's own stock, the tag itself.
 */
export function byStock(tag: Tag): readonly Tag[] {
  const stocks = [...new Set(tag.pieces.map((piece) => stockOf(piece, tag)))];
  if (stocks.every((stock) => stock === tag.stock)) return [tag];
  return stocks.map((stock) => {
    const pieces = tag.pieces.filter((piece) => stockOf(piece, tag) === stock);
    return fromStock(tag, pieces[0]?.cutFrom ?? tag, pieces);
  });
}

/** A tag of the given pieces alone, cut from the given stock. */
export function fromStock(tag: Tag, { stock, machine }: CutFrom, pieces: readonly Piece[]): Tag {
  const { machine: own, ...rest } = tag;
  const worked = machine ?? (stock === tag.stock ? own : undefined);
  return { ...rest, stock, ...(worked ? { machine: worked } : {}), pieces };
}
