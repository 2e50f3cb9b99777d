import assert from 'node:assert/strict';
import type { ComputeOptions } from '../../../src/engine/engine.ts';
import { isError } from '../../../src/core/issue.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { newEngine } from '../support/engine.ts';

const engine = newEngine();
const options: ComputeOptions = { locate: () => undefined };

const head =
  'tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 2 mm}\nshapes:\n';

describe('A hole that the letters of a name have no room for', () => {
  for (const side of ['left', 'top'])
    it(`is told so, and replaced by a ring at the ${side}`, async () => {
      const text = `${head}  name: {text: Tansy, font: Pacifico, x_height: 12 mm, overlap: auto}\npieces:\n  tag: {body: [name], hanger: {hole: {at: ${side}}}}\n`;
      const report = await engine.compute(text, options);
      const issue = report.issues.find(({ code }) => code === 'empty-shape')!;
      assert.equal(
        issue.message,
        'No letter has room for the hole here: hang the tag by a “ring”, which stands beside the letters.',
      );
      const [fix, ...more] = await findFixes(engine, report, issue, options);
      assert.deepEqual(more, []);
      assert.equal(fix!.title, `Hang it by a ring on the edge instead: hanger {ring: ${side}}`);
      const after = await engine.compute(withEdits(text, fix!.edits), options);
      assert.ok(!after.issues.some((each) => each.severity !== 'info'));
      assert.equal(after.tag!.pieces[0]!.hangers[0]!.kind, 'ring');
    });

  it('is told to be too large where the body is a plate', async () => {
    const text = `${head}  plate: {rectangle: [10 mm, 4 mm]}\npieces:\n  tag: {body: [plate], hanger: {hole: {at: left}}}\n`;
    const { issues } = await engine.compute(text, options);
    assert.equal(
      issues.find(isError)!.message,
      'There is no room for the hole here. It takes 10.3 mm: 4 mm for itself and 3.15 mm of material on each side. ' +
        'Make the body larger or the hole smaller.',
    );
  });
});

describe('Words too small to engrave', () => {
  const small = (size: string): string =>
    `${head}  plate: {rectangle: [${size}, 34 mm], radius: 5 mm}\n  words: {text: sown by the gate and watered with rain, font: Nunito, width: 24 mm, place: {on: plate}}\npieces:\n  tag: {body: [plate], engrave: [words]}\n`;
  const larger = async (text: string) => {
    const report = await engine.compute(text, options);
    const issue = report.issues.find(({ code }) => code === 'hard-to-read')!;
    return (await findFixes(engine, report, issue, options)).find(({ title }) =>
      title.startsWith('Make “words” larger'),
    );
  };

  it('are made as large as the plate has room for, even twice as large', async () => {
    const fix = await larger(small('90 mm'));
    const [, mm] = /width (\d+\.\d) mm/.exec(fix!.title)!;
    assert.ok(Number(mm) > 1.6 * 24, mm);
    const after = await engine.compute(withEdits(small('90 mm'), fix!.edits), options);
    assert.ok(!after.issues.some(({ code }) => code === 'hard-to-read'));
  });

  it('are not made wider than the plate', async () => {
    assert.equal(await larger(small('40 mm')), undefined);
  });
});
