import assert from 'node:assert/strict';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { findFixes } from '../../../src/fixes/find-fixes.ts';
import { isGentle } from '../../../src/fixes/gentle.ts';
import { isTidy } from '../../../src/fixes/tidy.ts';
import { clearance } from '../../../src/checks/measures/clearance.ts';
import { withEdits } from '../../../src/core/issue.ts';
import type { Piece } from '../../../src/tag/tag.ts';
import { newEngine, report } from '../support/engine.ts';

const engine = newEngine();
const options = { locate: () => undefined };

const spec = (shapes: readonly string[], piece: string): string =>
  `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 2 mm}\nshapes:\n${shapes.map((each) => `  ${each}\n`).join('')}pieces:\n  tag: {${piece}}\n`;

const label = (name: string, hole = 'left', plate = '{rectangle: [60 mm, 26 mm], radius: 3 mm}'): string =>
  spec(
    [`plate: ${plate}`, `name: {text: "Keep dry, sow by May", ${name}}`],
    `body: plate, engrave: name, hanger: {hole: {at: ${hole}}}`,
  );

async function tidy(before: string, after: string): Promise<boolean> {
  return isTidy(await report(before, engine), await report(after, engine));
}

async function fixesOf(text: string, code: string) {
  const found = await report(text, engine);
  const issue = found.issues.find((each) => each.code === code);
  assert.ok(issue, `no ${code}: ${found.issues.map(({ message }) => message).join('\n')}`);
  return findFixes(engine, found, issue, options);
}

describe('A tidy change', () => {
  const centred = label('width: 40 mm, place: plate');

  it('leaves words in the middle, but for the way to or from the hole', async () => {
    const nudged = (by: string, hole = 'left'): Promise<boolean> =>
      tidy(label('width: 40 mm, place: plate', hole), label(`width: 40 mm, place: plate, nudge: {${by}}`, hole));
    assert.deepEqual([await nudged('down: 3 mm'), await nudged('right: 3 mm')], [false, true]);
    assert.deepEqual([await nudged('down: 3 mm', 'top'), await nudged('right: 3 mm', 'top')], [true, false]);
    // Nobody sees so little; and what was beside the middle may stand further aside.
    assert.equal(await nudged('down: 0.8 mm'), true);
    const low = label('width: 40 mm, place: plate, nudge: {down: 3 mm}');
    assert.equal(await tidy(low, low.replace('down: 3', 'down: 5')), true);
  });

  it('brings words no closer than 2 mm to an edge or a hole, or less on a small tag', async () => {
    // 58 mm of 60 leave 1 mm at each side; a twentieth of 26 is 1.3 mm.
    assert.equal(await tidy(centred, label('width: 58 mm, place: plate', 'top')), false);
    assert.equal(await tidy(centred, label('width: 57 mm, place: plate', 'top')), true);
    // As its maker had it, it may stay.
    const tight = label('width: 58 mm, place: plate', 'top');
    assert.equal(await tidy(tight, tight.replace('at: top', 'at: top-left')), true);
  });
});

describe('Of several fixes', () => {
  it('the tidy ones come first, and fix all takes the first of them', async () => {
    const text = label('width: 56 mm, place: plate');
    const fixes = await fixesOf(text, 'hole-blocked');
    const titles = fixes.map(({ title }) => title);
    assert.equal(titles[0], 'Move the hole elsewhere: at top', titles.join('\n'));
    const moved = fixes.find(({ title }) => title.startsWith('Move “name”'));
    assert.equal(moved?.isUntidy, true, titles.join('\n'));
    const gentle = fixes.filter(isGentle);
    const firstUntidy = gentle.findIndex(({ isUntidy }) => isUntidy);
    assert.ok(
      gentle.slice(firstUntidy).every(({ isUntidy }) => isUntidy),
      titles.join('\n'),
    );
    const { made } = await fixAll(engine, text, options);
    assert.equal(made[0], 'Move the hole elsewhere: at top');
  }).timeout(60_000);

  it('a word with room about it comes before one that just stays off the edge of a heart', async () => {
    const text = spec(
      ['plate: {heart: 50 mm}', 'name: {text: Charlotte, font: Nunito, width: 48 mm, place: plate}'],
      'body: plate, engrave: name, hanger: {hole: {at: top}}',
    );
    const fixes = await fixesOf(text, 'mark-off-body');
    const [first] = fixes;
    assert.ok(first && !first.isUntidy, fixes.map(({ title }) => title).join('\n'));
    const { tag } = await report(withEdits(text, first.edits), engine);
    const [{ body, marks }] = tag!.pieces as [Piece];
    assert.ok(clearance(marks[0]!.region, body, 5) >= 2 - 0.01, first.title);
  }).timeout(60_000);
});

describe('A fix is found', () => {
  it('for words that run into a window', async () => {
    const text = spec(
      [
        'plate: {rectangle: [90 mm, 40 mm], radius: 20 mm}',
        'window: {circle: 26 mm, place: {on: plate, at: left, margin: 4 mm}}',
        'name: {text: Mint tea, font: Pacifico, width: 60 mm, place: plate}',
      ],
      'body: plate, cut: window, engrave: name, hanger: {hole: {at: right}}',
    );
    const titles = (await fixesOf(text, 'mark-off-body')).map(({ title }) => title);
    assert.ok(
      titles.some((title) => title.startsWith('Make “name” as large as fits')),
      titles.join('\n'),
    );
  }).timeout(60_000);

  it('for a hole in one end of a long tag, which hangs from that end', async () => {
    const text = spec(
      [
        'a: {circle: 20 mm}',
        'b: {rectangle: [70 mm, 24 mm], radius: 10 mm}',
        'plate: {stack: {shapes: [a, b], towards: right, lap: 2 mm}}',
      ],
      'body: plate, hanger: {hole: {on: a}}',
    );
    const titles = (await fixesOf(text, 'hangs-askew')).map(({ title }) => title);
    assert.ok(titles.includes('Hang it from its side: at left'), titles.join('\n'));
  }).timeout(60_000);

  it('for a name in a hoop that ends before the rim', async () => {
    const text = spec(
      [
        'outer: {circle: 60 mm}',
        'hoop: {difference: [outer, {from: outer, grow: -2.5 mm}]}',
        'name: {text: Fern, font: Pacifico, fit: {in: outer, margin: 6 mm}}',
      ],
      'body: [hoop, name], hanger: {ring: {on: hoop, at: top}}',
    );
    const fixes = await fixesOf(text, 'loose-part');
    const reaching = fixes.find(({ title }) => title.startsWith('Let “name” reach its frame: margin'));
    assert.ok(reaching, fixes.map(({ title }) => title).join('\n'));
  }).timeout(60_000);

  it('for words on an arc that run off their disc: on a smaller one', async () => {
    const text = spec(
      [
        'plate: {circle: 70 mm}',
        'name: {text: Midsummer fair, cap_height: 7 mm, arc: {radius: 30 mm, at: top}, place: plate}',
      ],
      'body: plate, engrave: name, hanger: {ring: {at: top}}',
    );
    const titles = (await fixesOf(text, 'mark-off-body')).map(({ title }) => title);
    assert.match(titles[0]!, /^Run “name” further in: radius 2\d(\.\d)? mm/);
  }).timeout(60_000);
});

describe('A pair of hangers', () => {
  it('stays a pair: neither is moved to another side alone', async () => {
    const text = spec(
      ['plate: {rectangle: [110 mm, 35 mm]}', 'name: {text: Nasturtium, font: Pacifico, width: 104 mm, place: plate}'],
      'body: plate, engrave: name, hanger: [{hole: {at: left}}, {hole: {at: right}}]',
    );
    const titles = (await fixesOf(text, 'hole-blocked')).map(({ title }) => title);
    assert.ok(!titles.some((title) => title.includes('elsewhere')), titles.join('\n'));
  }).timeout(60_000);
});
