/** The bays of an E, which the stem of the next capital closes where two of its arms meet it: “EL” is a “BL” or an “8L” then. */

import type { Profile } from './profile.ts';

/** Letters whose arms end one over the other on the right. */
const armed = /^[EÆŒΕЕЄ]$/u;

/** In x-heights: nearer than the first an arm and a stem are one, further apart than the second there is a bay between two arms. */
const gap = { merged: 0.06, bay: 0.18 } as const;

/** Whether the right letter closes a bay of the left one once it has moved closer by `shift`. */
export function closesBays(left: string, { gaps }: Profile, shift: number, xHeight: number): boolean {
  if (!armed.test(left.normalize('NFD').slice(0, 1))) return false;
  const apart = gaps.map((each) => each - shift);
  return (
    timesMet(apart.map((each) => (each < gap.merged * xHeight ? 'met' : each > gap.bay * xHeight ? 'bay' : 'near'))) > 1
  );
}

/** How many arms, with a bay between each two, meet what stands beside them; what they do row by row, from below. */
export function timesMet(rows: readonly ('met' | 'bay' | 'near')[]): number {
  let [met, isBay] = [0, true];
  for (const row of rows) {
    if (row === 'met' && isBay) [met, isBay] = [met + 1, false];
    else if (row === 'bay') isBay = true;
  }
  return met;
}
