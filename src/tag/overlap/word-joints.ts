/** The bars between the words of a line: all at their heads or all at their feet, as a line above one word and below the next belongs to neither. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import { footBar } from './bars.ts';
import type { FootNeighbours, Joint } from './foot-joint.ts';
import type { Measures } from './measures.ts';

export interface WordGap {
  readonly sides: FootNeighbours;
  /** What joins the two words by themselves. */
  readonly own: Region;
  /** Distance that the right word moves closer, in mm. */
  readonly shift: number;
  readonly fillet: number;
}

/** In x-heights: below the first a bar is at the feet, above the second at the heads. */
const level = { foot: 0.05, head: 0.6 } as const;

/** The longest bar along the baseline that another at its head gives way to, in x-heights. Our own judgement. */
const longest = 1;

export function wordJoints(gaps: readonly WordGap[], measures: Measures): Joint[] {
  const bottomOf = (region: Region): number => boundsOf(region)!.minY / measures.xHeight;
  const isAtFoot = gaps.some(({ own }) => bottomOf(own) < level.foot);
  return gaps.map(({ sides, own, shift, fillet }) => {
    if (!isAtFoot || sides.isScript || bottomOf(own) <= level.head) return { region: own, fillet };
    const foot = footBar(sides.profile, shift, measures);
    const isShort = foot !== undefined && foot.length < longest * measures.xHeight;
    return { region: isShort ? foot.region : own, fillet };
  });
}
