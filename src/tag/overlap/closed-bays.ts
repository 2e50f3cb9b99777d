/** The bays of an E, which the stem of the next capital closes where two of its arms meet it: “EL” is a “BL” or an “8L” then. */

import type { Profile } from './profile.ts';

/** Letters whose arms end one over the other on the right. */
const armed = /^[EÆŒΕЕЄ]$/u;

/** In x-heights: nearer than the first an arm and a stem are one, further apart than the second there is a bay between two arms. */
const gap = { merged: 0.06, bay: 0.18 } as const;

/** Whether the right letter closes a bay of the left one once it has moved closer by `shift`. */
export function closesBays(left: string, { gaps }: Profile, shift: number, xHeight: number): boolean {
  if (!armed.test(left.normalize('NFD').slice(0, 1))) return false;
  let [met, isBay] = [0, true];
  for (const each of gaps) {
    const apart = each - shift;
    if (apart < gap.merged * xHeight && isBay) [met, isBay] = [met + 1, false];
    else if (apart > gap.bay * xHeight) isBay = true;
  }
  return met > 1;
}
