import assert from 'node:assert/strict';
import { isIssueCode, issueCodes, issueKinds } from '../../../src/issue-kinds.ts';
import { designsOf, listed, meets, newCollectionEngine, reportOn, saidIn } from '../../collection/designs.ts';

/** Said of comments and of font files, not of a tag. */
const notOfTags: readonly string[] = ['odd-comment', 'font-restricted'];

describe('Spoiled designs of the collection', () => {
  const engine = newCollectionEngine();
  const designs = designsOf('spoiled');
  const open: string[] = [];

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

  for (const design of designs) {
    const codes = [...new Set(design.expectations.map(({ code }) => code))];
    it(`${design.name} is told ${codes.join(', ')}${design.open ? ` (not yet: ${design.open})` : ''}`, async function () {
      assert.ok(codes.length > 0, 'A spoiled design says what is expected of it.');
      const report = await reportOn(engine, design);
      const said = saidIn(report);
      assert.ok(report.tag, listed(said));
      const missing = design.expectations.filter((expectation) => !meets(expectation, said));
      if (design.open) {
        open.push(`${design.name}: ${design.open}`);
        assert.ok(missing.length > 0, 'It comes out as expected: take its “open” comment out.');
        return;
      }
      const unwritten = missing.filter(({ code }) => !code.split('/').every(isIssueCode));
      if (unwritten.length > 0) {
        open.push(`${design.name}: there is no ${unwritten.map(({ code }) => code).join(', ')}`);
        this.skip();
      }
      const words = missing.map(
        ({ code, severity = '', lines }) => `${severity} ${code} in line ${lines.join(' or ')}`,
      );
      assert.deepEqual(missing, [], `${design.name} is not told ${words.join('; ')}, but\n${listed(said)}`);
    });
  }

  after(() => {
    if (open.length > 0) console.log(`      Spoiled, not told yet:${open.map((each) => `\n        ${each}`).join('')}`);
  });
});
