/** What joins two letters, or two words, that do not meet: near their feet, and as the face would have it. */

import type { Region } from '../../geometry/types.ts';
import { heldByArm, letterBar, wordBar } from './bars.ts';
import type { BarSides, FootBar } from './bars.ts';
import { linkBetween } from './link.ts';
import type { Measures } from './measures.ts';
import type { Profile } from './profile.ts';

/** Something that holds letters together, as grown. */
export interface Joint {
  readonly region: Region;
  /** Radius of the fillets where it runs into the letters, in mm; 0 for none. */
  readonly fillet: number;
}

export interface FootNeighbours {
  readonly profile: Profile;
  readonly beside: BarSides;
  /** Whether they are letters of a script, joined by strokes and not by bars. */
  readonly isScript: boolean;
  /** The top of the lower letters, where two words meet. */
  readonly wordTop?: number;
}

export function footJoint(
  { profile, beside, isScript, wordTop }: FootNeighbours,
  shift: number,
  measures: Measures,
): FootBar | undefined {
  const between = wordTop === undefined ? 'letters' : 'words';
  const isLinked = isScript && heldByArm(beside, measures.xHeight) === undefined;
  const link = isLinked ? linkBetween(profile, shift, measures, between) : undefined;
  if (link) return link;
  return wordTop === undefined
    ? letterBar(profile, shift, measures, beside)
    : wordBar(profile, shift, measures, { ...beside, top: wordTop });
}
