/** How a tag is, in a few words. */

import type { Issue } from '../../core/issue.ts';
import type { Tag } from '../../tag/tag.ts';
import { counted, sizeText } from '../../core/units.ts';
import { sizeOfRegion } from './sizes.ts';

export interface TagState {
  readonly kind: 'ok' | 'warning' | 'error' | 'out-of-date' | 'nothing';
  readonly short: string;
  readonly long: string;
}

/** `stale`: the tag is of an earlier text than the issues. */
export function stateOf(issues: readonly Issue[], tag: Tag | undefined, stale: boolean): TagState {
  const count = (wanted: string) => issues.filter(({ severity }) => severity === wanted).length;
  const [errors, warnings] = [count('error'), count('warning')];
  const told = [
    ...(errors > 0 ? [counted(errors, 'error')] : []),
    ...(warnings > 0 ? [counted(warnings, 'warning')] : []),
  ].join(', ');
  if (stale)
    return { kind: 'out-of-date', short: 'Out of date', long: `The drawing shows an earlier version: ${told}` };
  if (told !== '') {
    return { kind: errors > 0 ? 'error' : 'warning', short: counted(errors + warnings, 'problem'), long: told };
  }
  const [first, ...others] = tag?.pieces ?? [];
  const size = first && sizeOfRegion(first.region);
  if (!tag || !size) return { kind: 'nothing', short: 'Nothing yet', long: 'Nothing to draw yet' };
  const shown = others.length > 0 ? counted(others.length + 1, 'piece') : sizeText(size.width, size.height, tag.units);
  return { kind: 'ok', short: shown, long: `${shown}, no problems` };
}
