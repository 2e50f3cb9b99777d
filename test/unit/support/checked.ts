/** What one check alone says of a spec, each finding with its place in the text. */

import type { Check } from '../../../src/checks/check.ts';
import type { Issue } from '../../../src/core/issue.ts';
import { inUnits } from '../../../src/core/figures.ts';
import { make, placeOf } from './engine.ts';
import type { Made } from './engine.ts';

export interface Checked {
  readonly made: Made;
  readonly issues: readonly Issue[];
  /** 1-based line of each issue. */
  readonly lines: readonly number[];
}

export async function checked(text: string, check: Check): Promise<Checked> {
  const made = await make(text);
  const { tag, source } = made.report;
  const issues = check(tag!).map((finding): Issue => ({
    ...finding,
    message: inUnits(finding.message, tag!.units),
    range: source.range(finding.path),
  }));
  return { made, issues, lines: issues.map((issue) => placeOf(made.report, issue).line) };
}
