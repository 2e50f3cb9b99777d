import assert from 'node:assert/strict';
import { findFixes } from '../../../src/fixes/find-fixes.ts';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { withEdits } from '../../../src/core/issue.ts';
import { newEngine, report } from '../support/engine.ts';
import { slips, soundSpec } from '../support/slips.ts';

const options = { locate: (name: string) => `/specs/${name}` };

/** Titles of what is offered for each issue, and what is left after the first. */
async function offered(text: string, engine = newEngine()) {
  const before = await report(text, engine);
  return Promise.all(
    before.issues.map(async (issue) => {
      const fixes = await findFixes(engine, before, issue, options);
      const after = fixes[0] && (await report(withEdits(text, fixes[0].edits), engine));
      return { message: issue.message, titles: fixes.map(({ title }) => title), left: after?.issues.length };
    }),
  );
}

describe('Fixes of slips in the text', () => {
  it('are offered where there is no tag yet, and taken by “fix all” where one thing only can be meant', async () => {
    for (const slip of slips.filter((_, index) => index % 8 === 0)) {
      const text = soundSpec.replace(slip.instead, () => slip.slip);
      const [only, ...others] = await offered(text);
      assert.deepEqual(others, []);
      assert.equal(only?.titles[0], slip.fix);
      const fixed = await fixAll(newEngine(), text, options);
      if (only.titles.length > 1) assert.equal(fixed.text, text);
      else assert.ok(fixed.made.includes(slip.fix) && fixed.report.tag !== undefined, slip.slip);
    }
  });

  it('correct a key whose value has slips of its own, and then those', async () => {
    const text = soundSpec
      .replace('shapes:', 'shape:')
      .replace('font: Nunito', 'font: Nunitoo')
      .replace('top', 'upper');
    const { made, report: after } = await fixAll(newEngine(), text, options);
    assert.ok(made.includes('Change to “shapes”') && made.includes('Change to “Nunito”'), made.join(', '));
    assert.ok(after.tag !== undefined);
  });

  it('take out a key that is a slip away from one that is there, only if chosen', async () => {
    const text = soundSpec.replace('font: Nunito', 'font: Nunito\n    grow: 0.2 mm\n    growth: 1 mm');
    const [only, ...others] = await offered(text);
    assert.deepEqual(
      [others, only],
      [[], { message: 'Unknown key “growth”. “grow” is there already.', titles: ['Take out “growth”'], left: 0 }],
    );
    const { text: after, left } = await fixAll(newEngine(), text, options);
    assert.equal(after, text);
    assert.match(left[0]!.why, /decide: Take out “growth”/);
  });

  it('put a style that stands in the name of a font under its keys', async () => {
    const text = soundSpec.replace('font: Nunito', 'font: Nunito Bold');
    assert.deepEqual(
      (await offered(text)).map(({ message, titles }) => [message, ...titles]),
      [['“Nunito Bold” is “Nunito” with “weight: 700”.', 'Change to “Nunito”, weight 700']],
    );
    const near = await offered(soundSpec.replace('font: Nunito', 'font: Pacifica'));
    assert.match(near[0]!.message, /Did you mean “Pacifico”\?$/);
    assert.deepEqual(near[0]!.titles, ['Change to “Pacifico”']);
  });

  it('name the file that is nearest in the folder, and nothing far off', async () => {
    const files = { 'kilns.csv': 'name\nMint\n', 'leaf.svg': '<svg/>', 'notes.txt': '' };
    const engine = newEngine(files);
    const text = soundSpec.replace('tie:', 'batch: klins.csv\ntie:').replace('Sorrel', '"{name}"');
    const [issue] = await offered(text, engine);
    assert.match(issue!.message, /“klins.csv” cannot be found or read\. Did you mean “kilns.csv”\?/);
    assert.deepEqual(issue!.titles, ['Change to “kilns.csv”']);
    const [none] = await offered(text.replace('klins.csv', 'klins.tsv'), engine);
    assert.deepEqual(none!.titles, []);
  });

  it('make a piece that is too large smaller as a whole', async () => {
    const text = soundSpec
      .replace('tie:', 'sheet: {size: [46 mm, 40 mm]}\ntie:')
      .replace('    hanger: {hole: {at: top}}\n', '');
    const [large] = (await offered(text)).filter(({ message }) =>
      message.includes('does not fit the sheet in any rotation'),
    );
    assert.ok(
      large!.titles.some((title) => /^Make “label” smaller as a whole: width 4\d mm/.test(title)),
      large!.titles.join(),
    );
  });

  it('take the most there is of a radius that is too large, rounded down', async () => {
    for (const [size, most] of [
      ['30 mm', '15 mm'],
      ['33.333 mm', '16.66 mm'],
    ] as const) {
      const text = soundSpec.replace('[60 mm, 30 mm], radius: 4 mm', `[60 mm, ${size}], radius: 18 mm`);
      const [long] = await offered(text);
      assert.deepEqual(long!.titles, [`Change to “${most}”`]);
    }
  });
});
