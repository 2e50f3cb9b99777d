/** The findings of one kind. */

import assert from 'node:assert/strict';
import type { FaultPlace, Issue } from '../../../src/core/issue.ts';
import type { IssueCode } from '../../../src/core/issue-kinds.ts';
import type { Made } from '../support/engine.ts';

export function found({ issues }: Pick<Made, 'issues'>, code: IssueCode): readonly Issue[] {
  return issues.filter((issue) => issue.code === code);
}

/** Every place of a finding, the worst first. */
export function placesIn({ places, points = [], width }: Issue): readonly FaultPlace[] {
  return places ?? [{ points, ...(width === undefined ? {} : { width }) }];
}

/** The one finding of its kind. */
export function only(made: Pick<Made, 'issues'>, code: IssueCode): Issue {
  const [first, ...others] = found(made, code);
  assert.ok(first, `no ${code}`);
  assert.deepEqual(others, [], `more than one ${code}`);
  return first;
}

export function assertSilent(made: Pick<Made, 'issues'>, code: IssueCode, what = ''): void {
  assert.deepEqual(
    found(made, code).map(({ message }) => message),
    [],
    what,
  );
}
