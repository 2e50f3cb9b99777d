import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { acceptanceOf } from '../../../src/fixes/accept.ts';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { isGentle, isPreferred } from '../../../src/fixes/gentle.ts';
import type { Fix, Issue } from '../../../src/core/issue.ts';
import { packagedWoff2 } from '../../fonts/font-files.ts';
import { newEngine } from '../support/engine.ts';

const engine = newEngine();
const options = { locate: () => undefined };
const sample = readFileSync(new URL('../../../samples/7-weak-on-purpose.tag.yaml', import.meta.url), 'utf8');

describe('Fixing a whole file', () => {
  it('leaves of the weak sample what only another look would fix, says why, and keeps its comments where they were', async () => {
    const { text, made, left, report } = await fixAll(engine, sample, options);
    assert.deepEqual(
      report.issues.map(({ code }) => code),
      ['thin-stroke'],
    );
    assert.deepEqual(
      left.map(({ issue }) => issue),
      report.issues,
    );
    assert.match(
      left[0]!.why,
      /^Even the mildest fix changes the look too much to apply automatically: Slide the letters of “name” together: overlap 0.6 mm/,
    );
    assert.equal(report.source.text, text);
    assert.ok(made.length >= 2, made.join('; '));
    assert.ok(text.startsWith(sample.slice(0, sample.indexOf('tagwright:'))));
    assert.equal(text.split('\n').length, sample.split('\n').length);
  });

  it('ties dots to their letters with straps unasked, but letters to each other only when asked', async () => {
    const spec = (text: string) =>
      `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm}\nshapes:\n  name: {text: ${text}, font: Nunito, weight: 800, x_height: 9 mm, grow: 0.2 mm}\npieces:\n  tag: {body: [name]}\n`;
    const fixed = await fixAll(engine, spec('HUSH'), options, 'loose-part');
    assert.doesNotMatch(fixed.text, /straps/);
    const found = await findFixes(
      engine,
      await engine.compute(spec('HUSH'), options),
      (await engine.compute(spec('HUSH'), options)).issues.find(({ code }) => code === 'loose-part')!,
      options,
    );
    const straps = found.find(({ title }) => /straps/.test(title));
    assert.equal(straps?.isChoice, true);
  });

  it('changes the cell of the row that needs it, where a column says the size; never one of a table, nor the column for all', async () => {
    const spec = (batch: string): string =>
      `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm}\ntie: {twine: 2 mm}\nbatch: ${batch}\nshapes:\n  plate: {rectangle: [60 mm, 30 mm]}\npieces:\n  tag: {body: [plate], hanger: {hole: {at: left, diameter: "{hole}"}}}\n`;
    const list = '[{name: Sorrel, hole: 5 mm}, {name: Borage, hole: 1 mm}]';
    const fixed = await fixAll(engine, spec(list), options);
    assert.match(fixed.text, /hole: 5 mm\}, \{name: Borage, hole: [2-4](\.\d+)? mm\}/);
    assert.match(fixed.text, /diameter: "\{hole\}"/);
    assert.ok(!fixed.report.issues.some(({ code }) => code === 'hole-too-small'));
    const withTable = newEngine({ 't.csv': 'name,hole\nSorrel,5 mm\nBorage,1 mm\n' });
    const located = { locate: (name: string) => `/specs/${name}` };
    const kept = await fixAll(withTable, spec('t.csv'), located, 'hole-too-small');
    assert.equal(kept.text, spec('t.csv'));
    assert.ok(kept.report.issues.some(({ code }) => code === 'hole-too-small'));
  });

  it('mends one kind and leaves the others', async () => {
    const { text, report } = await fixAll(engine, sample, options, 'hole-too-small');
    const codes = report.issues.map(({ code }) => code);
    assert.ok(!codes.includes('hole-too-small'));
    assert.ok(codes.includes('loose-part'));
    assert.ok(text.includes('width: 80 mm}'), 'the lettering is as it was');
  });

  it('balances nothing while a part is loose', async () => {
    const spec = (parts: string): string =>
      `tagwright: 1\nshapes:\n  plate: {rectangle: [60 mm, 30 mm], radius: 3 mm}\n  crumb: {circle: 12 mm, nudge: {right: 50 mm}}\npieces:\n  tag: {body: [plate, crumb], hanger: {hole: {at: top, nudge: {right: 4 mm}, diameter: 4 mm}}${parts}}\n`;
    const loose = await fixAll(engine, spec(''), options, 'hangs-askew');
    assert.equal(loose.text, spec(''));
    assert.match(loose.left[0]!.why, /^It cannot be balanced while a part is loose/);
    const meant = await fixAll(engine, spec(', parts: many'), options, 'hangs-askew');
    assert.notEqual(meant.text, spec(', parts: many'));
  });

  it('moves no hanger of a batch for what one tag alone suffers from, and says which tags that would be', async () => {
    const spec = (hanger: string): string =>
      `tagwright: 1\nbatch: [{name: Sorrel, wing: 6 mm}, {name: Borage, wing: 34 mm}, {name: Rue, wing: 6 mm}]\nshapes:\n  plate: {rectangle: [60 mm, 30 mm]}\n  wing: {circle: "{wing}", nudge: {right: 12 mm, down: 15 mm}}\npieces:\n  tag: {body: [plate, wing], hanger: {hole: ${hanger}}}\n`;
    const text = spec('{at: {up: 11 mm}, diameter: 4 mm}');
    const fixed = await fixAll(engine, text, options);
    assert.equal(fixed.text, text);
    assert.deepEqual(fixed.made, []);
    assert.match(
      fixed.left[0]!.why,
      /^Even the mildest fix would make tags without this problem hang differently: .*moves the hole of “Sorrel” and “Rue” too\)\.$/,
    );
    const report = await engine.compute(text, { ...options, row: 1 });
    const [issue] = report.issues;
    assert.equal(issue?.code, 'hangs-askew');
    const [first, second] = await findFixes(engine, report, issue, { ...options, row: 1 });
    assert.deepEqual(first?.rehangs, ['Sorrel', 'Rue']);
    assert.ok(!isGentle(first), 'a single key does not take it either');
    assert.match(second!.title, /^Leave “Borage” out of the batch/);
    const alone = await fixAll(engine, text.replaceAll(' 6 mm', ' 34 mm'), options);
    assert.equal(alone.made.length, 1, 'all hang askew, so the hole is moved');
    assert.deepEqual(alone.left, []);
  });

  const named = (name: string, ring: string): string =>
    `tagwright: 1\nstock: {thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 2 mm}\nshapes:\n  name: {text: ${name}, font: Nunito, weight: 800, x_height: 11 mm, overlap: auto, grow: 0.4 mm}\npieces:\n  tag: {body: [name], hanger: {ring: ${ring}}}\n`;

  it('turns no tag further from how it is meant to hang until it counts as hung by a corner', async () => {
    const fixed = await fixAll(engine, named('Leo', 'auto'), options);
    assert.equal(fixed.text, named('Leo', 'auto'));
    assert.deepEqual(
      fixed.left.map(({ issue }) => issue.code),
      ['hangs-askew'],
    );
  });

  it('moves no ring to where it reads as another letter, or as one still, to hang straighter', async () => {
    const initials = `tagwright: 1\nstock: {thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 1.5 mm}\nshapes:\n  name: {text: A. B., font: Pacifico, cap_height: 18 mm, overlap: auto}\npieces:\n  tag: {body: [name], hanger: {ring: left}}\n`;
    const fixed = await fixAll(engine, initials, options);
    assert.equal(fixed.text, initials);
    const whyAskew = fixed.left.find(({ issue }) => issue.code === 'hangs-askew')!.why;
    assert.match(whyAskew, /^It is for you to decide: Move the ring over the balance point/);
    // Further down, the ring would make another letter of the c.
    const corner = named('corner', 'left').replace('weight: 800, ', '').replace(', grow: 0.4 mm', '');
    const left = (await fixAll(engine, corner, options)).left;
    assert.equal(left.find(({ issue }) => issue.code === 'hangs-askew')!.why, 'No automatic fix found.');
  });

  it('moves no ring that is only read as a letter or a sign: the tag would hang otherwise', async () => {
    const text = named('Old Pear', 'top');
    const fixed = await fixAll(engine, text, options);
    assert.equal(fixed.text, text);
    assert.deepEqual(
      fixed.left.map(({ issue }) => issue.message),
      ['The ring stands over the gap between two words and reads as a sign of its own.'],
    );
    assert.match(
      fixed.left[0]!.why,
      /^It is for you to decide: (Move the ring elsewhere|Place the ring automatically)/,
    );
  });

  it('says for which tags of a batch a fix was, and which change with it', async () => {
    const spec = (bars: readonly string[]): string =>
      `tagwright: 1\nstock: {min_web: 1.5 mm}\nbatch:\n${bars.map((thick, row) => `  - {name: N${row}, bar: "${thick}"}\n`).join('')}shapes:\n  plate: {rectangle: [40 mm, 30 mm]}\n  bar: {path: "M0,0 h60 v{bar} h-60 z"}\npieces:\n  tag: {body: [plate, bar]}\n`;
    const fixed = await fixAll(engine, spec(['1.2', '3', '1.3', '3']), options);
    assert.match(fixed.made[0] ?? '', /, for “N0” and “N2”; “N1” and “N3” change with it$/);
  });

  it('gives back what cannot be mended as it was', async () => {
    for (const text of [
      'tagwright: 1\nnonsense',
      '',
      'tagwright: 1\npieces: {t: {body: [x]}}',
      'stock: {material: pvc}\ntagwright: 1\nshapes: {a: {ellipse: 9}}\npieces: {t: {body: [a]}}\n',
    ]) {
      const fixed = await fixAll(engine, text, options);
      assert.equal(fixed.text, text);
      assert.deepEqual(fixed.made, []);
    }
  });

  it('corrects a name of `without`, after which there are fewer tags', async () => {
    const table = newEngine({ 't.csv': 'plant\nSorrel\nBorage\n' });
    const spec =
      'tagwright: 1\nbatch: {table: t.csv, without: [Borrage]}\nshapes: {p: {rectangle: [60 mm, 30 mm]}, w: {text: "{plant}", font: Nunito, x_height: 5 mm}}\npieces: {t: {body: [p], engrave: [w]}}\n';
    const fixed = await fixAll(table, spec, { locate: (name: string) => `/specs/${name}` }, 'unknown-name');
    assert.deepEqual(fixed.made, ['Change to “Borage”']);
    assert.equal(fixed.report.batch!.rows.length, 1);
  });

  it('stops when it is no longer wanted', async () => {
    const controller = new AbortController();
    controller.abort(new Error('enough'));
    await assert.rejects(fixAll(engine, sample, { ...options, signal: controller.signal }), /enough/);
  });
});

describe('Accepting a finding', () => {
  const accepting = async (text: string, code: string) => {
    const report = await engine.compute(text, options);
    const issue = report.issues.find((each) => each.code === code);
    assert.ok(issue, `${code} in ${text}`);
    const acceptance = await acceptanceOf(engine, report, issue, options);
    if (!acceptance) return undefined;
    const { at, before, after } = acceptance;
    return withEdits(text, [{ range: { start: at, end: at }, text: `${before}it hangs indoors${after}` }]);
  };

  it('puts its comment at the end of the line, or above one that has a comment', async () => {
    for (const end of ['\n', '\r\n']) {
      const bare = sample.replaceAll('\n', end);
      const after = (await accepting(bare, 'hole-too-small'))!;
      assert.ok(after.includes(`diameter: 2.8 mm}}  # accept hole-too-small: it hangs indoors${end}`));
      const remarked = bare.replace('diameter: 2.8 mm}}', 'diameter: 2.8 mm}} # as ordered');
      const above = (await accepting(remarked, 'hole-too-small'))!;
      assert.ok(above.includes(`${end}    # accept hole-too-small: it hangs indoors${end}    hanger:`), above);
      for (const text of [after, above]) {
        const { issues, accepted } = await engine.compute(text, options);
        assert.ok(!issues.some(({ code }) => code === 'hole-too-small' || code === 'odd-comment'));
        assert.equal(accepted[0]?.reason, 'it hangs indoors');
      }
    }
  });

  it('is not offered for what keeps the tag from being made', async () => {
    assert.equal(await accepting(sample.replace('font:', 'fnot:'), 'unknown-key'), undefined);
  });
});

describe('A problem that fixing a whole file leaves', () => {
  it('gives the mild choice as the reason where another fix would change the look', async () => {
    const spec = `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm}
shapes:
  name: {text: Lavender, font: parisienne.woff2, width: 70 mm}
pieces:
  tag: {body: [name]}
`;
    const withFont = newEngine({ 'parisienne.woff2': await packagedWoff2('parisienne') });
    const { left } = await fixAll(withFont, spec, { locate: (name) => `/specs/${name}` }, 'loose-part');
    assert.match(left[0]!.why, /^It is for you to decide: Join the parts of “name” with straps/);
  });
});

describe('The fix that a single key applies', () => {
  const issue = (severity: 'error' | 'warning') => ({ severity }) as Issue;
  const fix = (more: Partial<Fix> = {}) => ({ look: 0, ...more }) as Fix;

  it('is the first and mild one, of the worst problem at that place', () => {
    assert.ok(isPreferred(fix(), 0, issue('error'), issue('error')));
    assert.ok(!isPreferred(fix(), 1, issue('error'), issue('error')));
    assert.ok(!isPreferred(fix({ isChoice: true }), 0, issue('error'), issue('error')));
    assert.ok(!isPreferred(fix(), 0, issue('warning'), issue('error')));
  });
});
