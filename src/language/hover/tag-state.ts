/** State of a tag in a few words. */

import { tally, type Issue } from '../../core/issue.ts';
import type { Tag } from '../../tag/tag.ts';
import { counted, sizeText } from '../../core/units.ts';
import { sizeOfRegion } from './sizes.ts';

export interface TagState {
  readonly kind: 'ok' | 'info' | 'warning' | 'error' | 'out-of-date' | 'checking' | 'nothing';
  readonly short: string;
  readonly long: string;
}

/** `stale`: the tag, if any was ever drawn, is from an earlier text than the issues; `toCheck`: how many other tags of its batch are still being checked. */
export function stateOf(issues: readonly Issue[], tag: Tag | undefined, stale: boolean, toCheck = 0): TagState {
  const counts = tally(issues);
  if (stale && tag && tag.pieces.length > 0)
    return { kind: 'out-of-date', short: 'Out of date', long: `The drawing shows an earlier version: ${counts}` };
  const worst = (['error', 'warning', 'info'] as const).find((kind) =>
    issues.some(({ severity }) => severity === kind),
  );
  if (worst) return { kind: worst, short: counted(issues.length, 'problem'), long: counts };
  const [first, ...others] = tag?.pieces ?? [];
  const size = first && sizeOfRegion(first.region);
  if (!tag || !size) return { kind: 'nothing', short: 'Nothing yet', long: 'Nothing to draw yet' };
  const shown = others.length > 0 ? counted(others.length + 1, 'piece') : sizeText(size.width, size.height, tag.units);
  if (toCheck > 0) {
    const others = counted(toCheck, 'other tag');
    return {
      kind: 'checking',
      short: `Checking ${toCheck} more`,
      long: `${shown}, no problems; ${others} being checked`,
    };
  }
  return { kind: 'ok', short: shown, long: `${shown}, no problems` };
}
