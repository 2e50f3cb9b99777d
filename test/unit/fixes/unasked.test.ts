import assert from 'node:assert/strict';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { findFixes } from '../../../src/fixes/find-fixes.ts';
import { newEngine } from '../support/engine.ts';

const engine = newEngine();
const options = { locate: () => undefined };

async function fixesOf(text: string, code: string) {
  const report = await engine.compute(text, options);
  const issue = report.issues.find((each) => each.code === code);
  assert.ok(issue, `no ${code}: ${report.issues.map(({ message }) => message).join('\n')}`);
  return findFixes(engine, report, issue, options);
}

const plate = (shapes: string, engrave: string, hanger = 'hole: {at: top}') =>
  `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 2 mm}\nshapes:\n${shapes}pieces:\n  tag: {body: plate, engrave: [${engrave}], hanger: {${hanger}}}\n`;

describe('What is never done to a tag unasked, or at all', () => {
  it('takes no modules out of a code round a name that lies over it', async () => {
    const over = (mark: string) =>
      plate(
        `  plate: {rectangle: [70 mm, 34 mm]}\n  below: {${mark}, place: {on: plate, at: right, margin: 1 mm}}\n` +
          '  name: {text: Yarrow, font: Pacifico, width: 52 mm, place: {on: plate, at: left, margin: 2 mm}}\n',
        'below, name',
        'ring: {at: top}',
      );
    const isCleared = (fixes: readonly { title: string }[]) =>
      fixes.some(({ title }) => title.startsWith('Clear “below”'));
    const codes = await fixesOf(over('code: "https://example.org/x", size: 20 mm'), 'marks-overlap');
    assert.equal(isCleared(codes), false, codes.map(({ title }) => title).join('\n'));
    // The same of an ornament is what it is for.
    assert.equal(isCleared(await fixesOf(over('circle: 20 mm'), 'marks-overlap')), true);
  }).timeout(60_000);

  it('breaks a border only when asked, and says nothing of letters, which stay as they are', async () => {
    const text = plate(
      '  plate: {circle: 40 mm}\n  edge: {border: {of: plate, inset: 2 mm, width: 0.8 mm}}\n  name: {text: Rosa, font: Pacifico, width: 36 mm, place: plate}\n',
      'edge, name',
      'ring: {at: top}',
    );
    const cleared = (await fixesOf(text, 'marks-overlap')).find(({ title }) => title.startsWith('Clear “edge”'));
    assert.ok(cleared);
    assert.doesNotMatch(cleared.title, /heavier|lighter|letters/);
    assert.equal(cleared.isChoice, true);
  }).timeout(60_000);

  it('moves no words off the middle of the disc that they run round', async () => {
    const text = plate(
      '  plate: {circle: 50 mm}\n  word: {text: CHAMOMILE, cap_height: 5 mm, weight: 800, arc: {radius: 17 mm, at: top}, place: plate}\n',
      'word',
    );
    const fixes = await fixesOf(text, 'hole-blocked');
    assert.ok(fixes.length > 0);
    for (const { title } of fixes) assert.doesNotMatch(title, /Move “word”/);
    const fixed = await fixAll(engine, text, options);
    assert.doesNotMatch(fixed.text, /word: .*nudge/);
    // A straight line is moved.
    const straight = await fixesOf(
      text.replace('arc: {radius: 17 mm, at: top}, place: plate', 'place: plate, nudge: {up: 16 mm}'),
      'hole-blocked',
    );
    assert.ok(
      straight.some(({ title }) => title.startsWith('Move “word”')),
      straight.map(({ title }) => title).join('\n'),
    );
  }).timeout(60_000);

  it('says where a tag that hung level would hang by a corner', async () => {
    const text = `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}
tie: {twine: 1.5 mm}
shapes:
  name: {text: "J & K", font: Alfa Slab One, cap_height: 25 mm, overlap: auto}
pieces:
  tag: {body: [name], hanger: {ring: {at: top}}}
`;
    const titles = (await fixesOf(text, 'hole-blocked')).map(({ title }) => title);
    const [corner] = titles.filter((title) => title.includes('at top-right'));
    assert.match(corner ?? titles.join(), /\(.*hangs by a corner\)$/);
  }).timeout(60_000);
});
