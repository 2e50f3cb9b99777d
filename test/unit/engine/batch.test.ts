import assert from 'node:assert/strict';
import { checkBatch, issuesOfBatch, reportsOf } from '../../../src/engine/batch.ts';
import type { ComputeOptions } from '../../../src/engine/engine.ts';
import { withEdits, findFixes } from '../../../src/fixes/find-fixes.ts';
import { acceptanceOf } from '../../../src/fixes/accept.ts';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import type { Issue } from '../../../src/core/issue.ts';
import { newEngine, placeOf } from '../support/engine.ts';

const engine = newEngine();
const options: ComputeOptions = { locate: () => undefined };

/** Script letters on a ring, which are weak or fall apart by what they are. */
const spec = (batch: string, word = 'width: 60 mm'): string =>
  `tagwright: 1\nbatch: ${batch}\nshapes:\n  word: {text: "{name}", font: Pacifico, ${word}}\npieces:\n  tag:\n    body: [word]\n    hanger: {ring: {on: word, at: auto}}\n`;

async function checked(text: string, row = 0) {
  return checkBatch(engine, await engine.compute(text, { ...options, row }), { ...options, row });
}

const seen = ({ code, piece, path, row }: Issue): string => JSON.stringify([code, piece, path, row]);

describe('The tags of a batch', () => {
  it('are each what the spec would make with the words written in', async () => {
    const names = ['Sorrel', 'Borage', 'Chives'];
    const { all } = await checked(spec(`[${names.join(', ')}]`));
    for (const [row, name] of names.entries()) {
      const alone = await engine.compute(spec('[x]').replace('batch: [x]\n', '').replace('{name}', name), options);
      assert.deepEqual(all[row]!.tag!.pieces[0]!.region, alone.tag!.pieces[0]!.region);
      assert.deepEqual(
        all[row]!.issues.map(({ code, message, width }) => ({ code, message, width })),
        alone.issues.map(({ code, message, width }) => ({ code, message, width })),
      );
    }
  });

  it('tell what is wrong with the one shown in full, and with the others once for each cause', async () => {
    for (const row of [0, 1, 2, 3]) {
      const { report, all } = await checked(spec('[Sorrel, Borage, Lovage, Chives]'), row);
      assert.deepEqual(
        report.issues.filter((issue) => issue.row === undefined),
        all[row]!.issues,
      );
      const others = report.issues.filter((issue) => issue.row !== undefined);
      const causes = all.flatMap(({ issues }, at) => (at === row ? [] : issues.map((issue) => seen(issue))));
      assert.equal(others.length, new Set(causes).size);
      for (const issue of others) {
        const label = all[issue.row!]!.batch!.rows[issue.row!]!.label;
        assert.ok(issue.message.startsWith(`“${label}”: `), issue.message);
        // No other row has it worse.
        const same = all
          .flatMap((each, at) => (at === row ? [] : each.issues))
          .filter((each) => seen({ ...issue, row: undefined } as never) === seen(each));
        assert.ok(same.length > 0);
        for (const each of same)
          assert.ok((each.width ?? Infinity) >= (issue.width ?? Infinity) || each.severity !== issue.severity);
      }
    }
  });

  it('name who else has it', async () => {
    const { report } = await checked(spec('[Lovage, Borage, Chives]'));
    const loose = report.issues.find(({ code, row }) => code === 'loose-part' && row !== undefined);
    assert.match(loose!.message, /^“Borage”: The “orage” of “tag” .* falls out\. .* Likewise “Chives”\.$/);
  });

  it('are named along with the one shown, where that has the problem no less', async () => {
    const cut = (rows: string) =>
      `tagwright: 1\nstock: {min_web: 1.5 mm}\nbatch: [${rows}]\nshapes:\n  bar: {path: "M0,0 h60 v{bar} h-60 z"}\npieces:\n  tag: {body: [bar]}\n`;
    const joined = async (rows: string) => {
      const first = await engine.compute(cut(rows), options);
      return issuesOfBatch(first, await reportsOf(engine, first, options), { joined: true });
    };
    const rows = ['{name: A, bar: "1.0"}', '{name: B, bar: "1.2"}', '{name: C, bar: "3"}'];
    const [one, ...more] = await joined(rows.join(', '));
    assert.match(one!.message, /1\.00 mm at the narrowest; minimum 1\.50 mm\. Likewise “B”\.$/);
    assert.deepEqual([one!.row, ...more], [undefined]);
    const worse = await joined([rows[1], rows[0]].join(', '));
    assert.deepEqual(
      worse.map(({ row, message }) => [row, /likewise/i.test(message)]),
      [
        [undefined, false],
        [1, false],
      ],
    );
  });

  it('are all named in a problem that is the same to the word on some of them, and none in what is wrong with all', async () => {
    const named = async (bars: readonly string[], row = 0) => {
      const rows = bars.map((bar, at) => `{name: ${'ABCDEFGHIJ'[at]!}, bar: "${bar}"}`).join(', ');
      const text = `tagwright: 1\nstock: {min_web: 1.5 mm}\nbatch: [${rows}]\nshapes:\n  bar: {path: "M0,0 h60 v{bar} h-60 z"}\npieces:\n  tag: {body: [bar]}\n`;
      const first = await engine.compute(text, { ...options, row });
      const issues = issuesOfBatch(first, await reportsOf(engine, first, options), { joined: true });
      return issues.map(({ message, names = [] }) => [names.join(''), / Likewise .*/.exec(message)?.[0].trim() ?? '']);
    };
    assert.deepEqual(await named(['1', '1', '3', '1']), [['ABD', 'Likewise “B” and “D”.']]);
    assert.deepEqual(await named(['1', '1', '3', '1'], 2), [['ABD', 'Likewise “B” and “D”.']]);
    assert.deepEqual(await named(['1', '3', '3']), [['A', '']]);
    assert.deepEqual(await named(['1', '1', '1']), [['', '']]);
    const eight = await named(['1', '1', '1', '1', '1', '1', '1', '1', '3']);
    assert.deepEqual(eight, [['ABCDEFGH', 'Likewise “B”, “C”, “D”, “E”, “F” and 2 more.']]);
  });

  it('tell once what is wrong whatever a row says', async () => {
    const { report } = await checked(spec('[Sorrel, Borage]').replace('on: word', 'on: wrod'));
    assert.equal(report.issues.length, 1);
    assert.equal(report.issues[0]!.code, 'unknown-shape');
  });

  it('tell of a row that cannot be made though the one shown can', async () => {
    const { report } = await checked(spec('[Sorrel, {name: ""}]'));
    const issue = report.issues.find(({ code }) => code === 'not-filled');
    assert.equal(issue!.message, '“row 2” leaves {name} empty.');
    assert.equal(placeOf(report, issue!).text, '{name: ""}');
  });

  it('do not call a comment idle that another row needs', async () => {
    const text = spec('[Sorrel, Chives]').replace(
      'width: 60 mm}',
      'width: 60 mm}  # accept loose-part: the dot is glued',
    );
    const { all } = await checked(text);
    for (const { issues } of all)
      assert.ok(!issues.some(({ code }) => code === 'odd-comment' || code === 'loose-part'));
  });

  it('are all looked at before a fix is offered for one', async () => {
    const text = spec('[Sorrel, Borage, Lovage, Chives]');
    const { report, all } = await checked(text);
    let tried = 0;
    for (const issue of report.issues) {
      for (const { edits, title } of await findFixes(engine, report, issue, options)) {
        if (/\b[Ll]eave “.* out of the batch/.test(title)) continue;
        tried++;
        const after = await checked(withEdits(text, edits));
        for (const [row, was] of all.entries()) {
          const count = (issues: readonly Issue[], of: Issue) =>
            issues.filter((each) => seen(each) === seen(of)).length;
          for (const is of after.all[row]!.issues.filter(({ severity }) => severity === 'error'))
            assert.ok(count(after.all[row]!.issues, is) <= count(was.issues, is), `${title}: ${is.message}`);
        }
      }
    }
    assert.ok(tried >= 3, String(tried));
  });

  it('are mended together, those that are not shown too', async () => {
    const { text, report, made } = await fixAll(engine, spec('[Sorrel, Lovage]'), options);
    assert.ok(made.length > 0);
    const codes = (await reportsOf(engine, report, options)).flatMap(({ issues }) => issues.map(({ code }) => code));
    // How straight a name hangs is a matter of its letters; where the ring is moved for one, no other hangs worse.
    assert.deepEqual(
      codes.filter((code) => code !== 'hangs-askew'),
      [],
      text,
    );
  });

  it('may have a finding accepted that only another row has', async () => {
    const { report } = await checked(spec('[Sorrel, Chives]', 'width: 60 mm, grow: 1.4 mm'));
    const issue = report.issues.find(({ row }) => row === 1);
    assert.ok(issue, JSON.stringify(report.issues));
    const acceptance = await acceptanceOf(engine, report, issue, options);
    assert.match(acceptance!.before, new RegExp(`# accept ${issue.code}: `));
  });

  it('stop being computed once nobody wants them', async () => {
    const controller = new AbortController();
    const text = spec('[Sorrel, Borage]');
    const first = await engine.compute(text, options);
    controller.abort(new Error('enough'));
    await assert.rejects(reportsOf(engine, first, { ...options, signal: controller.signal }), /enough/);
  });
});
