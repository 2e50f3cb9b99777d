/** Slips in texts of the other languages that are written in YAML: jobs and files of offcuts. */

import type { Issue } from '../../core/issue.ts';
import { SpecSource } from '../yaml/source.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import { slipOf } from './find-slip.ts';

/** The issues of a source that is not valid YAML, as one where that can be. `read`: how many problems a text has that is. */
export function yamlSlip(source: SpecPlaces, read: (source: SpecSource) => number): readonly Issue[] {
  if (!(source instanceof SpecSource) || source.issues.some(({ code }) => code !== 'yaml-syntax')) return source.issues;
  const slip = slipOf(source, (text) => {
    const changed = new SpecSource(text);
    const [first] = changed.issues;
    const problems = first ? 0 : read(changed);
    return { faults: changed.issues.length, firstFault: first?.range.start ?? text.length, problems };
  });
  return [slip];
}
