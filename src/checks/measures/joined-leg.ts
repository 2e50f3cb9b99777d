/** The Hebrew letters he that have become a het: the gap above the left leg of the one is all that tells it from the other. */

import { offset } from '../../geometry/clipper.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';

const he = /^ה\p{M}*$/u;

/** Those whose leg is held by a post, as letters that slide are, or that growth has joined. `over`: what the beam adds all round, in mm. */
export function joinedLegs({ letters, slid, grow }: Lettering, over: number): Letter[] {
  return letters.filter(({ text, region }) => {
    const drawn = he.test(text) ? partsOf(region).length : 1;
    return drawn > 1 && (slid || partsOf(offset(region, Math.max(0, grow + over))).length < drawn);
  });
}
