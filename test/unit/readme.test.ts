import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { issueCodes, issueKinds } from '../../src/core/issue-kinds.ts';

describe('The README', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

  it('lists every kind of problem as the table of codes has it, with its page', () => {
    const rows = [...readme.matchAll(/^\| \[`([a-z-]+)`\]\((\S+)\) \| (\w+) \| (.*) \|$/gm)];
    assert.deepEqual(rows.map(([, code]) => code).sort(), [...issueCodes].sort());
    for (const [, code = '', page, severity, summary] of rows) {
      const kind = issueKinds[code as keyof typeof issueKinds];
      assert.deepEqual([page, severity, summary], [`src/guide/problems/${code}.md`, kind.severity, kind.summary]);
    }
  });
});
