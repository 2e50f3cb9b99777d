import assert from 'node:assert/strict';
import { withEdits, findFixes } from '../../../src/fixes/find-fixes.ts';
import type { Issue, TextEdit } from '../../../src/core/issue.ts';
import type { IssueCode } from '../../../src/core/issue-kinds.ts';
import { memoizeRecent } from '../../../src/core/recent.ts';
import { newEngine } from '../support/engine.ts';
import { seededRandom } from '../support/shapes.ts';
import { cases } from '../support/sweep.ts';
import { weakFamilies, weakSpec } from '../support/weak-specs.ts';

/** With a value, what was found and mended is printed, of thirteen specs a family. */
const tallied = process.env['TAGWRIGHT_TALLY'] !== undefined;

/** Specs a family: one in each style of every third family, and line ends of either kind in half of them. */
const each = tallied ? 13 : cases(4, 6);

/** What can be mended by an edit; of each the specs below have some. */
const fixable: readonly IssueCode[] = [
  'weak-bridge',
  'thin-stroke',
  'loose-part',
  'hanger-weak',
  'hole-near-edge',
  'hole-too-small',
  'hole-blocked',
  'shoulder-shows',
  'score-shows',
  'mark-off-body',
  'cut-off-body',
  'hangs-askew',
  'off-centre',
  'exceeds-sheet',
  'gap-closes',
  'speck',
  'fine-mark',
  'marks-overlap',
  'off-backing',
  'pieces-overlap',
  'sharp-point',
  'hard-to-read',
];

const options = { locate: () => undefined };

const remarks = (text: string) => [...text.matchAll(/#[^\r\n]*/g)].map(([comment]) => comment);
/** Lengths in mm that a fix writes, that were not there, and that nobody would write: no multiple of 0.05 mm. */
function unround(edits: readonly TextEdit[], text: string): number[] {
  const lengthsIn = (written: string) => [...written.matchAll(/\d+(?:\.\d+)?(?= mm)/g)].map(Number);
  const known = new Set(lengthsIn(text));
  const all = edits.flatMap(({ text: written }) => lengthsIn(written));
  return all.filter((mm) => !known.has(mm) && Math.abs(mm - 0.05 * Math.round(mm / 0.05)) > 1e-6);
}
const errors = (issues: readonly Issue[]) => issues.filter(({ severity }) => severity === 'error').length;
const ofKind = (issues: readonly Issue[], { code, piece }: Issue) =>
  issues.filter((other) => other.code === code && other.piece === piece).length;

describe('Fixes of specs that are weak on purpose', () => {
  const engine = newEngine();
  const tally = new Map<IssueCode, { found: number; mended: number; fixes: number }>();
  let specs = 0;

  for (const family of weakFamilies) {
    it(`of ${family} each solve their finding, keep every comment and leave the rest of the text alone`, async function () {
      this.timeout(180_000);
      const index = weakFamilies.indexOf(family);
      const random = seededRandom(index + 1);
      // Computed anew without anything remembered from before; several problems of a spec may have one fix.
      const computed = memoizeRecent(50, (fixed) => newEngine().compute(fixed, options));
      for (let style = index * each; style < (index + 1) * each; style += 1) {
        const { name, text } = weakSpec(family, random, style);
        const report = await engine.compute(text, options);
        assert.ok(report.tag, `${name}:\n${report.issues.map(({ message }) => message).join('\n')}\n${text}`);
        assert.ok(report.issues.length > 0, `${name} is weak:\n${text}`);
        specs += 1;
        for (const issue of report.issues) {
          const fixes = await findFixes(engine, report, issue, options);
          const count = tally.get(issue.code) ?? { found: 0, mended: 0, fixes: 0 };
          tally.set(issue.code, {
            found: count.found + 1,
            mended: count.mended + Math.min(fixes.length, 1),
            fixes: count.fixes + fixes.length,
          });
          for (const { title, edits } of fixes) {
            const fixed = withEdits(text, edits);
            const description = `${name}, ${issue.code}, ${title}:\n${fixed}`;
            const { issues, tag } = await computed(fixed);
            assert.ok(tag, description);
            assert.ok(ofKind(issues, issue) < ofKind(report.issues, issue), `not solved by ${description}`);
            assert.ok(errors(issues) <= errors(report.issues), `worse after ${description}`);
            assert.deepEqual(remarks(fixed), remarks(text), description);
            assert.deepEqual(unround(edits, text), [], description);
            assert.equal(fixed.includes('\r\n'), text.includes('\r\n'), description);
            assert.ok(!/[^\r]\n/.test(fixed) || !fixed.includes('\r\n'), `mixed line ends in ${description}`);
            const before = new Set(text.split(/\r?\n/));
            const changed = fixed.split(/\r?\n/).filter((line) => !before.has(line));
            assert.ok(changed.length <= Math.max(1, edits.length), `${changed.length} lines changed by ${description}`);
          }
        }
      }
    });
  }

  it('were found for every kind that an edit can mend, on 130 specs and more', () => {
    assert.ok(specs >= 130, `${specs} specs`);
    for (const code of fixable) {
      const { found = 0, mended = 0 } = tally.get(code) ?? {};
      assert.ok(found > 0, `no ${code} among the specs`);
      assert.ok(mended > 0, `none of ${found} ${code} was mended`);
    }
  });

  after(() => {
    if (tallied) console.log(specs, Object.fromEntries(tally));
  });
});
