/** As many different names as are wanted, of three to ten letters, the same each time. */

import { firstNames } from '../names/names.ts';

const beginnings =
  'A Be Ca Da E Fa Gi Ha I Jo Ka Li Ma Ne O Pa Qui Ro Si Te U Vi Wa Xe Yo Ze Bri Cla Fre Gre Klau Phi Ste The Tra'.split(
    ' ',
  );
const middles = 'li ri ma na lo dri ber lin ste mi ra do vi sa the nno bbi lla'.split(' ');
const ends = 'a e na ne th rt d n la ra da us el in y o ssa tte s ka'.split(' ');

export function manyNames(count: number): string[] {
  const names = new Set(firstNames);
  // Steps without a common factor go through all that can be put together.
  const all = beginnings.length * middles.length * ends.length;
  for (let step = 0; names.size < count && step < all; step += 1) {
    const at = (step * 4801) % all;
    const [first, second] = [at % beginnings.length, Math.floor(at / beginnings.length)];
    names.add(`${beginnings[first]!}${middles[second % middles.length]!}${ends[Math.floor(second / middles.length)]!}`);
  }
  return [...names].slice(0, count);
}
