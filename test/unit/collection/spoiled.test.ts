import assert from 'node:assert/strict';
import { issueCodes, issueKinds } from '../../../src/core/issue-kinds.ts';
import { designsOf } from '../../collection/designs.ts';

/** Said of comments, of the names of keys and of font files, not of a tag. */
const notOfTags: readonly string[] = ['odd-comment', 'renamed-key', 'font-restricted'];

describe('Spoiled designs of the collection', () => {
  const designs = designsOf('spoiled');

  it('are at least sixty', () => {
    assert.ok(designs.length >= 60, String(designs.length));
  });

  it('have every kind of finding that a tag can give', () => {
    const expected = new Set(
      designs.flatMap(({ expectations }) => expectations.flatMap(({ code }) => code.split('/'))),
    );
    const making = issueCodes.filter((code) => issueKinds[code].about === 'making' && !notOfTags.includes(code));
    assert.deepEqual(
      making.filter((code) => !expected.has(code)),
      [],
    );
  });
});
