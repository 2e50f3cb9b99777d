import assert from 'node:assert/strict';
import { checkBatch } from '../../../src/engine/batch.ts';
import type { Report } from '../../../src/engine/engine.ts';
import { withEdits, findFixes, whyNone, workingFixes } from '../../../src/fixes/find-fixes.ts';
import { ringArea } from '../../../src/geometry/measure.ts';
import { isNoWorse } from '../../../src/fixes/no-worse.ts';
import { packagedWoff2 } from '../../fonts/font-files.ts';
import { newEngine } from '../support/engine.ts';

const options = { locate: (relative: string) => `/specs/${relative}` };
const isWeak = ({ issues }: Report): boolean => issues.some(({ code }) => code === 'weak-bridge');

/** Discs of 12 mm with a window as wide as the row says: the wall is 6 mm less half of the window's diagonal. */
const windows = (widths: readonly number[]): string =>
  `tagwright: 1\nstock: {min_web: 2 mm}\nbatch:\n${widths.map((width, row) => `  - {name: N${row}, across: ${width} mm}\n`).join('')}title: "{name}"\nshapes:\n  disc: {circle: 12 mm}\n  window: {rectangle: ["{across}", 5 mm]}\n  all: {difference: [disc, window]}\npieces:\n  tag: {body: all}\n`;

describe('A fix that helps most tags of a batch', () => {
  it('says how many, and leaves the others no worse', async () => {
    const engine = newEngine();
    const text = windows([6.6, 6.7, 9, 6.5]);
    const { report, all } = await checkBatch(engine, await engine.compute(text, options), options);
    assert.ok(all.every(isWeak), 'each is too narrow');
    const issue = report.issues.find(({ code, row }) => code === 'weak-bridge' && row === undefined)!;
    const fixes = await findFixes(engine, report, issue, options);
    const fix = fixes.find(({ title }) => /^Thicken “all”: grow 0.1 mm, for 3 of 4 names \(/.test(title));
    assert.ok(fix, fixes.map(({ title }) => title).join('\n'));
    const after = await checkBatch(engine, await engine.compute(withEdits(text, fix.edits), options), options);
    assert.deepEqual(after.all.map(isWeak), [false, false, true, false]);
    assert.ok(after.all.every((is, row) => isNoWorse(all[row]!, is)));
    assert.match(after.report.issues.map(({ message }) => message).join(), /^“N2”: /, 'the finding names the rest');
  });
});

describe('Letters of a fine script', () => {
  it('become larger and thicker at once where growth alone closes a loop', async () => {
    const engine = newEngine({ 'face.woff2': await packagedWoff2('dancing-script', 'latin', 700) });
    const text = `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.18 mm}\nshapes:\n  name: {text: Nik, font: face.woff2, x_height: 10 mm, overlap: auto}\npieces:\n  tag: {body: name, hanger: {ring: {at: left}}}\n`;
    const report = await engine.compute(text, options);
    const issue = report.issues.find(({ code }) => code === 'weak-bridge')!;
    // Growth comes before it, if it leaves the loop of the k open.
    const asked = /^Make “name” larger and thicker: x_height 1[24] mm, grow 0\.\d+ mm \(bridge 0\.\d+ → 1\.[5-9]/;
    for await (const { title } of workingFixes(engine, report, issue, options)) {
      assert.match(title, asked);
      return;
    }
    assert.fail('There is no fix.');
  });
});

describe('A change that would spoil a name of a batch', () => {
  it('is told with what is in the way', async () => {
    const engine = newEngine({ 'face.woff2': await packagedWoff2('dancing-script', 'latin', 700) });
    const text = `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.18 mm}\nbatch: [Fiete, Jannik]\nshapes:\n  name: {text: "{name}", font: face.woff2, x_height: 10 mm, overlap: auto}\npieces:\n  tag: {body: name}\n`;
    const { report } = await checkBatch(engine, await engine.compute(text, options), options);
    const issue = report.issues.find(({ code }) => code === 'weak-bridge')!;
    const why = await whyNone(engine, report, issue, options);
    // The loop of the k closes.
    const told =
      /^“(grow [\d.]+ mm)” would do for 2 of 2 names, but spoils 1\. The way out: larger letters \((x_height [\d.]+ mm) is enough\) or leaving that name out of the batch\. “Jannik”: letters close up or run together\.$/;
    const [, grow, size] = told.exec(why ?? '') ?? assert.fail(why);
    const grown = text.replace('overlap: auto', `overlap: auto, ${grow!.replace(' ', ': ')}`);
    const { all } = await checkBatch(engine, await engine.compute(grown, options), options);
    assert.ok(!all.some(isWeak), 'by hand it does as it says');
    const enlarged = grown.replace('x_height: 10 mm', size!.replace(' ', ': '));
    const large = await checkBatch(engine, await engine.compute(enlarged, options), options);
    const counters = ({ tag }: Report) => tag!.pieces[0]!.region.filter((ring) => ringArea(ring) < 0).length;
    const small = await checkBatch(engine, report, options);
    assert.ok(!large.all.some(isWeak));
    for (const [row, each] of large.all.entries())
      assert.ok(counters(each) >= counters(small.all[row]!), 'and in that size the loops stay open');
  });

  it('is told with every name, of which the reasons give a few', async () => {
    const engine = newEngine({ 'face.woff2': await packagedWoff2('dancing-script', 'latin', 700) });
    const text = `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.18 mm}\nbatch: [Fiete, Jannik, Rike, Nik, Erik, Mika]\nshapes:\n  name: {text: "{name}", font: face.woff2, x_height: 10 mm, overlap: auto}\npieces:\n  tag: {body: name}\n`;
    const { report } = await checkBatch(engine, await engine.compute(text, options), options);
    const issue = report.issues.find(({ code }) => code === 'weak-bridge')!;
    const why = (await whyNone(engine, report, issue, options)) ?? '';
    assert.match(why, /“Jannik”, “Rike”, “Nik” and 2 more: letters close up/);
    assert.match(why, /but spoils 5\. The way out: .* leaving those 5 out of the batch/, why);
    assert.match(why, / All 5: “Jannik”, “Rike”, “Nik”, “Erik” and “Mika”\.$/, why);
  });
});
