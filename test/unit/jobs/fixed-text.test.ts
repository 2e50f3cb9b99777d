/** What the hand fixes, as text: read again it is the same piece at the same place, and taken out nothing is left of it. */

import assert from 'node:assert/strict';
import { withEdits } from '../../../src/core/issue.ts';
import { fixEdits, releaseEdits } from '../../../src/jobs/layout/fixed-text.ts';
import type { PlaceToFix } from '../../../src/jobs/layout/fixed-text.ts';
import type { CheckedJob } from '../../../src/jobs/job.ts';
import { checkedJob, files, jobOf } from '../support/jobs.ts';

const sheets = ['ply3: [{size: [400 mm, 300 mm]}]', 'cherry2: [{size: [400 mm, 300 mm]}]'];
const beside = { ...files, 'orders.csv': 'order,name,quantity\n007,Rue,2\n8,Sea Kale,1\n8,"a: b",1\n' };
const tags = [
  '{spec: plate.tag.yaml}',
  '{spec: layered.tag.yaml, quantity: 2}',
  '{spec: named.tag.yaml, orders: orders.csv}',
];

const piecesOf = ({ pieces }: CheckedJob) => pieces!.stocks.flatMap((stock) => stock.pieces);
const fixedOf = ({ pieces }: CheckedJob) => pieces!.stocks.flatMap((stock) => stock.fixed);

function textOf(job: CheckedJob, places: readonly PlaceToFix[]): string {
  const edits = fixEdits(places, { source: job.source, units: job.model!.units, all: piecesOf(job) });
  return withEdits(job.source.text, edits!);
}

const on = { kind: 'sheet', number: 1 } as const;

describe('Fixing a piece by hand', () => {
  const text = jobOf(tags, sheets);

  it('names each piece so that it is found again, and says no more than it takes', async () => {
    const job = await checkedJob(text, beside);
    assert.deepEqual(job.issues, []);
    const written: string[] = [];
    for (const of of piecesOf(job)) {
      const at = { x: 12.345, y: 6 };
      const changed = textOf(job, [{ of, on, at, turned: 0 }]);
      const again = await checkedJob(changed, beside);
      assert.deepEqual(again.issues, [], changed);
      const [fixed] = fixedOf(again);
      assert.deepEqual(
        [fixed!.of.of.spec, fixed!.of.of.order, fixed!.of.of.label, fixed!.of.piece.id, fixed!.of.copy],
        [of.of.spec, of.of.order, of.of.label, of.piece.id, of.copy],
      );
      // Lengths are written to 0.01 mm.
      assert.ok(Math.abs(fixed!.entry.at.x - at.x) <= 0.005 + 1e-9);
      written.push(changed.split('\n').at(-2)!);
    }
    assert.ok(written.includes('  - {spec: plate.tag.yaml, sheet: 1, at: [12.35 mm, 6 mm]}'), written.join('\n'));
    assert.ok(written.some((line) => line.includes('piece: front, copy: 2')));
    assert.ok(written.some((line) => line.includes('order: "007"')));
    assert.ok(written.some((line) => line.includes('order: 8, tag: Sea Kale')));
  });

  it('moves what is fixed already, in its own line and units, comments untouched', async () => {
    const before = `${text}fixed:\n  # Beside the knot.\n  - {spec: plate.tag.yaml, at: [1 cm, 20], sheet: 2} # here\n`;
    const job = await checkedJob(before, beside);
    const [{ of, entry }] = fixedOf(job) as [ReturnType<typeof fixedOf>[0]];
    const moved = textOf(job, [{ of, entry, on: { kind: 'sheet', number: 3 }, at: { x: 42.5, y: 8 }, turned: 90 }]);
    assert.equal(moved, before.replace('[1 cm, 20], sheet: 2}', '[4.25 cm, 8], sheet: 3, turned: 90}'));
    const onOffcut = textOf(job, [{ of, entry, on: { kind: 'offcut', number: 5 }, at: entry.at, turned: 0 }]);
    assert.equal(onOffcut, before.replace('sheet: 2', 'offcut: 5'));
  });

  const endings: Readonly<Record<string, string>> = {
    'no list': text,
    'no last line end': text.trimEnd(),
    'an empty list': `${text}fixed: []\n`,
    'nothing behind the key': `${text}fixed:\n`,
    'a list on one line': `${text}fixed: [{spec: plate.tag.yaml, sheet: 1, at: [9 mm, 9 mm]}]\n`,
    'a list in lines': `${text}fixed:\n- {spec: plate.tag.yaml, sheet: 1, at: [9 mm, 9 mm]} # first\n`,
    'lines that end as on Windows': `${text}fixed:\n    - {spec: plate.tag.yaml, sheet: 1, at: [9 mm, 9 mm]}\n`.replace(
      /\n/g,
      '\r\n',
    ),
    'more keys behind': `${text}fixed:\n  - spec: plate.tag.yaml\n    sheet: 1\n    at: [9 mm, 9 mm]\n\nkeep_together: true\n`,
  };
  for (const [name, before] of Object.entries(endings)) {
    it(`goes into a text with ${name}, and out again without a trace`, async () => {
      const job = await checkedJob(before, beside);
      const others = fixedOf(job).length;
      const all = piecesOf(job).filter(({ of }) => of.spec !== 'plate.tag.yaml');
      const places = [all[0]!, all.at(-1)!].map((of, i): PlaceToFix => ({
        of,
        on,
        at: { x: 100, y: 60 + 90 * i },
        turned: 0,
      }));
      const changed = textOf(job, places);
      const again = await checkedJob(changed, beside);
      assert.deepEqual(again.issues, [], changed);
      const fixed = fixedOf(again);
      assert.equal(fixed.length, others + 2);
      const own = fixed.filter(({ of }) => of.of.spec !== 'plate.tag.yaml').map(({ entry }) => entry);
      const released = withEdits(changed, releaseEdits(own, again.source));
      const asBefore = others > 0 ? before : text.trimEnd();
      assert.equal(others > 0 ? released : released.trimEnd(), asBefore);
      const none = withEdits(
        changed,
        releaseEdits(
          fixed.map(({ entry }) => entry),
          again.source,
        ),
      );
      assert.doesNotMatch(none, /fixed/);
      assert.deepEqual((await checkedJob(none, beside)).issues, []);
    });
  }
});
