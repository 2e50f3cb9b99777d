/** Tests of a share of the spoiled designs and of their fixes; the shares lie in files of their own, which run side by side. */

import assert from 'node:assert/strict';
import { isIssueCode } from '../../../src/core/issue-kinds.ts';
import { designsOf, listed, meets, newCollectionEngine, reportOn, reportedIn } from '../../collection/designs.ts';
import type { Design, Expectation } from '../../collection/designs.ts';
import { allFixed, eachOffered } from '../../collection/fixing.ts';
import type { Tried } from '../../collection/fixing.ts';
import { isWhole } from '../support/sweep.ts';

const shares = 3;

/** What is told of it: designs with the same are of one kind. */
const codesOf = ({ expectations }: Design): string => expectations.map(({ code }) => code).join();

/** Trying every fix of every design takes a minute: of each kind it is one design. */
function isTried(design: Design, all: readonly Design[]): boolean {
  return isWhole || design.openFixes !== undefined || all.find((each) => codesOf(each) === codesOf(design)) === design;
}

export function describeSpoiled(share: number): void {
  describe(`Spoiled designs of the collection, share ${share} of ${shares}`, function () {
    this.timeout(180_000);
    const engine = newCollectionEngine();
    const counts = { designs: 0, all: 0, each: 0 };
    const open: string[] = [];
    const designs = designsOf('spoiled');

    for (const [index, design] of designs.entries()) {
      if (index % shares !== share - 1) continue;
      const { name, openFixes } = design;
      const codes = [...new Set(design.expectations.map(({ code }) => code))];
      it(`${name} is told ${codes.join(', ')}${notYet(design.open)}`, async function () {
        assert.ok(codes.length > 0, 'A spoiled design says what is expected of it.');
        const report = await reportOn(engine, design);
        assert.ok(report.tag, listed(reportedIn(report)));
        const missing = design.expectations.filter((expectation) => !meets(expectation, reportedIn(report)));
        const unwritten = missing.filter(({ code }) => !code.split('/').every(isIssueCode));
        if (unwritten.length > 0) {
          open.push(`${name}: there is no ${unwritten.map(({ code }) => code).join(', ')}`);
          this.skip();
        }
        if (design.open) {
          open.push(`${name}: ${design.open}`);
          assert.ok(missing.length > 0, 'It comes out as expected: take its “open” comment out.');
        } else assert.deepEqual(missing.map(inWords), [], `not told, but\n${listed(reportedIn(report))}`);
      });

      if (!isTried(design, designs)) continue;
      it(`fixes of ${name} bring nothing new${notYet(openFixes)}`, async () => {
        const all = await allFixed(engine, design);
        const each = await eachOffered(engine, design);
        counts.designs += each.length > 0 ? 1 : 0;
        counts.all += all ? 1 : 0;
        counts.each += each.length;
        const harmful = [...(all ? [all] : []), ...each].filter(({ brought }) => brought.length > 0);
        if (openFixes) {
          open.push(`fixes of ${name}: ${openFixes}`);
          assert.ok(harmful.length > 0, 'Its fixes are good now: take its “open fixes” comment out.');
        } else assert.deepEqual(harmful.map(description), []);
      });
    }

    after(() => {
      const { designs: fixed, all, each } = counts;
      console.log(`      Fixes tried: ${each} of ${fixed} designs; ${all} designs changed by fix all.`);
      for (const line of open) console.log(`        open: ${line}`);
    });
  });
}

function notYet(open: string | undefined): string {
  return open === undefined ? '' : ` (not yet: ${open})`;
}

function inWords({ code, severity, lines }: Expectation): string {
  return `${severity === undefined ? '' : `${severity} `}${code} in line ${lines.join(' or ')}`;
}

function description({ title, brought, text }: Tried): string {
  return `${title} brings\n${listed(brought)}\nin\n${text}`;
}
