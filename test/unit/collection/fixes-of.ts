/** Tests of the fixes of a share of the spoiled designs; the shares lie in files of their own, which run side by side. */

import assert from 'node:assert/strict';
import { designsOf, listed, newCollectionEngine } from '../../collection/designs.ts';
import { allFixed, eachOffered } from '../../collection/fixing.ts';
import type { Tried } from '../../collection/fixing.ts';

const shares = 3;

export function describeFixesOf(share: number): void {
  describe(`Fixes of spoiled designs, share ${share} of ${shares}`, function () {
    this.timeout(60_000);
    const engine = newCollectionEngine();
    const counts = { designs: 0, all: 0, each: 0 };

    for (const design of designsOf('spoiled').filter((_, i) => i % shares === share - 1)) {
      const open = design.openFixes;
      it(`of ${design.name} bring nothing new${open ? ` (not yet: ${open})` : ''}`, async () => {
        const all = await allFixed(engine, design);
        const each = await eachOffered(engine, design);
        counts.designs += each.length > 0 ? 1 : 0;
        counts.all += all ? 1 : 0;
        counts.each += each.length;
        const harmful = [...(all ? [all] : []), ...each].filter(({ brought }) => brought.length > 0);
        if (open) assert.ok(harmful.length > 0, 'Its fixes are good now: take its “open fixes” comment out.');
        else assert.deepEqual(harmful.map(told), []);
      });
    }

    after(() => {
      console.log(
        `      Fixes tried: ${counts.each} of ${counts.designs} designs; ${counts.all} designs changed by all of them.`,
      );
    });
  });
}

function told({ title, brought, text }: Tried): string {
  return `${title} brings\n${listed(brought)}\nin\n${text}`;
}
