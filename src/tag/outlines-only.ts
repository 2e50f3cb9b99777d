/** A tag as far as laying it out and cutting it needs: some hundreds are held at once. */

import { keptPacked } from '../geometry/packed-regions.ts';
import type { Mark, Piece, Tag } from './tag.ts';

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

/** The same with its outlines as plain numbers, made into points for whoever asks. */
export function withPackedOutlines(tag: Tag): Tag {
  return { ...tag, pieces: tag.pieces.map(withPackedOutline) };
}

function withPackedOutline(piece: Piece): Piece {
  const kept = keptPacked(piece.region);
  return {
    ...piece,
    get region() {
      return kept.region;
    },
  };
}
