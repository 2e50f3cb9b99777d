/** What a hanger opens in its piece, in words that say which is meant. */

import { placeInWords } from '../../core/place-in-words.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { PlacedHanger } from '../tag.ts';

/** “the hole at the top”, “the slot on the left”. Those of a row have one place, so they have the same words. */
export function openingInWords({ kind, at, centre }: PlacedHanger, body: Region): string {
  const what = kind === 'ring' ? 'the hole of the ring' : `the ${kind}`;
  if (at.kind !== 'anchor') return `${what} ${placeInWords(centre, boundsOf(body)!)}`;
  const isAcross = at.anchor === 'left' || at.anchor === 'right';
  return `${what} ${isAcross ? 'on' : 'at'} the ${at.anchor.replace('-', ' ')}`;
}
