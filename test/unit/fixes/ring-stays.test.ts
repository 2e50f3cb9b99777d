import assert from 'node:assert/strict';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { isGentle } from '../../../src/fixes/gentle.ts';
import { ringJumps } from '../../../src/fixes/rings-read.ts';
import { newEngine } from '../support/engine.ts';

const engine = newEngine();
const options = { locate: () => undefined };
const name = (text: string, at: string, stock = '') =>
  `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm${stock}}\ntie: {twine: 1.5 mm}\nshapes:\n` +
  `  name: {text: ${text}, font: Pacifico, x_height: 9 mm, overlap: auto}\npieces:\n  tag: {body: [name], hanger: {ring: {at: ${at}}}}\n`;

describe('A ring that nobody has moved', () => {
  it('is said to move where a change of the letters takes it elsewhere, and such a change is not made unasked', async () => {
    const text = name('Flora', 'right', ', min_web: 2.1 mm');
    const before = await engine.compute(text, options);
    const seen = { jumps: 0, stays: 0 };
    for (const issue of before.issues.filter(({ code }) => code === 'weak-bridge' || code === 'thin-stroke')) {
      for (const fix of await findFixes(engine, before, issue, options)) {
        const isJump = ringJumps(before, await engine.compute(withEdits(text, fix.edits), options));
        seen[isJump ? 'jumps' : 'stays']++;
        assert.equal(fix.title.includes('moves the ring'), isJump, fix.title);
        if (isJump) assert.equal(isGentle(fix), false, fix.title);
      }
    }
    assert.ok(seen.jumps > 0 && seen.stays > 0, JSON.stringify(seen));
  }).timeout(60_000);

  it('is left where it reads best by a fix of the whole file', async () => {
    let leftToDecide = 0;
    for (const word of ['Basil', 'Borage', 'Fennel', 'Gisela', 'Konrad']) {
      const { text, made, left } = await fixAll(engine, name(word, 'auto'), options, 'hangs-askew');
      assert.equal(text, name(word, 'auto'), made.join());
      leftToDecide += left.filter(({ why }) => why.startsWith('It is for you to decide: Move the ring over')).length;
    }
    assert.ok(leftToDecide > 0);
  }).timeout(60_000);
});
