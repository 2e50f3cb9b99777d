/** Decides whether lettering is as legible after a change as before: no counter closes, and no letters run together. */

import { samePath } from '../core/values.ts';
import { letteringOn } from '../checks/measures/lettering-on.ts';
import type { LetteringOn } from '../checks/measures/lettering-on.ts';
import { doubtful, readability } from '../checks/measures/readability.ts';
import type { Report } from '../engine/engine.ts';

/**
 * Further height over which adjacent letters may touch, in x-heights on average: a joint, not a lump (our own
 * judgement).
 */
const jointShare = 0.3;

/**
 * An increase in doubt below this counts as none, if there was some before; see `checks/measures/readability.ts` for the scale.
 */
const sameDoubt = 0.05;

export function readsAsWell(before: Report, after: Report): boolean {
  const is = lettersOf(after);
  return lettersOf(before).every((was) => {
    // Text that is gone from its piece is not a question of legibility, and a clearing around a text is not meant to be
    // read.
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
  // Another font has a different number of counters.
  const closed = (each: typeof before) => each.counters.drawn - each.counters.open;
  if (closed(after) > closed(before) || after.crowded > before.crowded + jointShare) return false;
  return after.doubt <= doubtful || after.doubt <= before.doubt + sameDoubt;
}
