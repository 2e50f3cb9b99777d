/**
 * The two dots of a ü that stand on the two stems of it, since there is nothing between those that would hold them: in a script, where a u is two
 * strokes that are joined as letters are, it reads as “ii”.
 */

import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { marksAbove } from '../../tag/lettering/marks-above.ts';
import { slantOf, uprightTo } from '../../tag/overlap/slant.ts';

/** So many times as far apart as the font has them, and they are on the stems. By eye, in 23 faces (our own judgement). */
const leastSpread = 1.6;

const twoDots = /^[uvy]\u0308$/u;

export function spreadDots({ letters }: Lettering): Letter[] {
  const found = letters.filter(({ text, region, asSet }) => {
    if (!asSet || !twoDots.test(text.normalize('NFD'))) return false;
    return apart(region) > leastSpread * apart(asSet);
  });
  return found.length > 0 && Math.abs(slantOf(letters.map(({ region }) => region))) > uprightTo ? found : [];
}

/** From the middle of the one to that of the other, in mm; not a number where there are not two. */
function apart(letter: Region): number {
  const [one, other, third] = marksAbove(letter).map((mark) => boundsOf(mark)!);
  return one && other && !third ? Math.abs(one.minX + one.maxX - other.minX - other.maxX) / 2 : NaN;
}
