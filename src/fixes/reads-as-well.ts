/** Whether lettering can be read after a change as well as before it: no counter closes, and no letters run together. */

import { letteringOn } from '../checks/lettering-on.ts';
import type { LetteringOn } from '../checks/lettering-on.ts';
import { doubtful, readability } from '../checks/readability.ts';
import type { Report } from '../engine/engine.ts';
import { samePath } from './candidate.ts';

/** Letters may come to touch over so much more of their height, in x-heights on average: a joint, no lump (our own judgement). */
const jointShare = 0.3;

/** More doubt by less than this is the same, where there was any before; see `checks/readability.ts` for its scale. */
const sameDoubt = 0.05;

export function readsAsWell(before: Report, after: Report): boolean {
  const is = lettersOf(after);
  return lettersOf(before).every((was) => {
    // What is no longer on its piece is another matter than how it reads; and a room cleared round a text is not to be read.
    const same = is.filter(
      ({ piece, on }) => piece === was.piece && samePath(on.lettering.path, was.on.lettering.path),
    );
    return same.length === 0 || same.some(({ on }) => keepsLetters(was.on, on));
  });
}

function lettersOf({ tag }: Report): { piece: string; on: LetteringOn }[] {
  return (tag?.pieces ?? []).flatMap((piece) => letteringOn(piece, tag!).map((on) => ({ piece: piece.id, on })));
}

function keepsLetters(was: LetteringOn, is: LetteringOn): boolean {
  const before = readability(was.lettering, was.making);
  const after = readability(is.lettering, is.making);
  if (!before || !after) return true;
  // In another font there are other counters.
  const closed = (each: typeof before) => each.counters.drawn - each.counters.open;
  if (closed(after) > closed(before) || after.crowded > before.crowded + jointShare) return false;
  return after.doubt <= doubtful || after.doubt <= before.doubt + sameDoubt;
}
