/** A tag as far as laying it out and cutting it needs: some hundreds are held at once. */

import { keptPacked } from '../geometry/packed-regions.ts';
import type { Region } from '../geometry/types.ts';
import type { Mark, Piece, PlacedHanger, Tag } from './tag.ts';

/** Outlines, marks and hangers; without the shapes and letters that they were made from. */
export function outlinesOnly(tag: Tag): Tag {
  return { ...tag, made: new Map(), ghosts: [], pieces: tag.pieces.map(pieceOf) };
}

const pieceOf = (piece: Piece): Piece => ({
  ...piece,
  body: [],
  sources: [],
  spelt: speltBy(piece),
  marks: piece.marks.map(markOf),
  hangers: piece.hangers.map(hangerOf),
});

/** The letters that its body is made of, or has as openings, without spaces. */
export function speltBy({ spelt, sources }: Piece): string {
  if (spelt !== undefined) return spelt;
  const lettering = sources.filter(({ use }) => use === 'body').flatMap((source) => source.lettering ?? []);
  return lettering.flatMap(({ letters }) => letters.map(({ text }) => text)).join('');
}

function markOf({ lettering: _lettering, codes: _codes, area: _area, ...mark }: Mark): Mark {
  return mark;
}

function hangerOf({ lug: _lug, ...hanger }: PlacedHanger): PlacedHanger {
  return hanger;
}

/** Both: outlines alone, as plain numbers. Those of hundreds of tags would fill the memory as points. */
export function packedOutlinesOf(tag: Tag): Tag {
  return withPackedOutlines(outlinesOnly(tag));
}

/** The same with its outlines as plain numbers, made into points for whoever asks. */
export function withPackedOutlines(tag: Tag): Tag {
  return { ...tag, pieces: tag.pieces.map(withPackedOutline) };
}

function withPackedOutline(piece: Piece): Piece {
  const marks = piece.marks.map((mark) => packedAt(mark, ['region', 'filled', 'lines']));
  const hangers = piece.hangers.map((hanger) => packedAt(hanger, ['opening']));
  return packedAt({ ...piece, marks, hangers }, ['region', 'cutLine']);
}

/** The same object, but for some of its outlines: they are made whenever they are asked for. */
function packedAt<Key extends string, Owner extends { readonly [key in Key]?: Region }>(
  owner: Owner,
  keys: readonly Key[],
): Owner {
  const copy = { ...owner };
  for (const key of keys) {
    const outline = owner[key];
    if (!outline) continue;
    const kept = keptPacked(outline);
    Object.defineProperty(copy, key, { get: () => kept.region, enumerable: true });
  }
  return copy;
}
