import assert from 'node:assert/strict';
import { withEdits } from '../../../src/core/issue.ts';
import type { Issue, TextChange } from '../../../src/core/issue.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { slips, soundSpec } from '../support/slips.ts';
import type { Slip } from '../support/slips.ts';

/** The spec with one slip in it. */
const written = ({ instead, slip }: Slip): string => soundSpec.replace(instead, () => slip);

const changesOf = ({ suggestions = [], repairs = [], range }: Issue): TextChange[] => [
  ...suggestions.map((text) => ({ title: `Change to “${text}”`, edits: [{ range, text }] })),
  ...repairs,
];

/** Words of parsers, and the project's own that nobody at a bench would say. */
const jargon = /\b(flow|scalar|implicit|mapping|collection|token|node|parse|anchor|alias)\b/i;

describe('One slip, one message', () => {
  it('in a spec that is sound otherwise', () => {
    assert.deepEqual(parseSpec(soundSpec).issues, []);
    assert.ok(slips.length >= 120, String(slips.length));
    for (const slip of slips) assert.ok(soundSpec.includes(slip.instead), slip.instead);
  });

  for (const slip of slips) {
    it(`${JSON.stringify(slip.slip)} for ${JSON.stringify(slip.instead)}`, () => {
      const text = written(slip);
      const { issues, source, model } = parseSpec(text);
      // Shapes that no piece uses yet are drawn all the same.
      assert.equal(model !== undefined, slip.fix === 'Add a piece');
      assert.deepEqual(
        issues.map(({ message, range }) => [source.position(range.start).line, message]),
        [[slip.line, slip.says]],
      );
      const [issue] = issues as [Issue];
      assert.doesNotMatch(issue.message, jargon);
      const marked = text.slice(issue.range.start, issue.range.end);
      assert.ok(marked.length > 0 && !marked.includes('\n'), `one short place is marked: ${marked}`);
      const [fix] = changesOf(issue) as [TextChange];
      assert.equal(fix.title, slip.fix);
      assert.deepEqual(
        parseSpec(withEdits(text, fix.edits)).issues.map(({ message }) => message),
        [],
      );
    });
  }

  it('and every fix of every slip leaves fewer problems than there were', () => {
    let tried = 0;
    for (const slip of slips) {
      const text = written(slip);
      const { issues } = parseSpec(text);
      for (const fix of issues.flatMap(changesOf)) {
        const after = parseSpec(withEdits(text, fix.edits)).issues;
        assert.ok(
          after.length < issues.length,
          `${slip.slip} → ${fix.title}: ${after.map((each) => each.message).join()}`,
        );
        tried++;
      }
    }
    assert.ok(tried >= slips.length);
  });

  it('two slips on two lines are found one after the other, and both are cured', () => {
    const pairs = slips.flatMap((one, at) => {
      if (at % 3 > 0) return [];
      const other = slips[(at + 37) % slips.length]!;
      const text = written(one).replace(other.instead, () => other.slip);
      return one.line !== other.line && written(one).includes(other.instead) ? [text] : [];
    });
    assert.ok(pairs.length > 25, String(pairs.length));
    const cured = pairs.filter((text) => {
      let now = text;
      for (let round = 0; round < 4; round++) {
        const fix = parseSpec(now).issues.flatMap(changesOf)[0];
        if (!fix) break;
        now = withEdits(now, fix.edits);
      }
      return parseSpec(now).issues.length === 0;
    });
    assert.ok(cured.length >= 0.85 * pairs.length, `${cured.length} of ${pairs.length}`);
  });

  it('a key that is moved takes no comma of the lettering along', () => {
    const spec = soundSpec
      .replace('text: Sorrel', 'text: Dear Ann,\n    on: plate')
      .replace('place: {on: plate}', 'place: {at: center}');
    const changes = parseSpec(spec).issues.flatMap(changesOf);
    assert.ok(changes.length > 0);
    for (const { edits } of changes) assert.match(withEdits(spec, edits), /text: Dear Ann,$/m);
  });

  it('stocks with names under “stock” belong under “stocks”', () => {
    const text = soundSpec.replace(/^stock:.*$/m, 'stock: {oak2: {material: oak, thickness: 2 mm}}');
    assert.notEqual(text, soundSpec);
    const { issues } = parseSpec(text);
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['Stocks with names go under “stocks”, and a piece names its own: “stock: oak2”.'],
    );
    assert.deepEqual(parseSpec(withEdits(text, changesOf(issues[0]!)[0]!.edits)).issues, []);
  });

  it('width and height of a plate are its size, told once', () => {
    for (const plate of [
      'house: {width: 60 mm, height: 70 mm}',
      'label: {height: 70 mm, width: 60 mm, clip: 5 mm}',
      'ticket:\n      width: 60 mm\n      height: 70 mm',
    ]) {
      const text = `tagwright: 1\nshapes:\n  a:\n    ${plate}\npieces:\n  tag: {body: a}\n`;
      const { issues } = parseSpec(text);
      assert.deepEqual(
        issues.map(({ message }) => message),
        ['Width and height are a list of two here: “size: [60 mm, 70 mm]”.'],
        plate,
      );
      const fixed = parseSpec(withEdits(text, changesOf(issues[0]!)[0]!.edits));
      assert.deepEqual(fixed.issues, [], plate);
    }
  });

  it('a key that no shape has is moved to no place among the shapes', () => {
    for (const key of ['single_line', 'stroke', 'engrave']) {
      const spec = soundSpec.replace('rectangle: [60 mm, 30 mm]', `rectangle: [60 mm, 30 mm], ${key}: true`);
      const { issues } = parseSpec(spec);
      assert.ok(
        issues.some(({ code }) => code === 'unknown-key'),
        key,
      );
      for (const { message } of issues) assert.doesNotMatch(message, /belongs in “shapes”/);
    }
  });

  it('a value that goes on for very many lines ends in time', () => {
    const long = soundSpec.replace('rectangle: [60 mm, 30 mm]', `rectangle: 1${'\n'.repeat(100_000)}      a`);
    assert.ok(parseSpec(long).issues.length > 0);
  });

  it('lines that end as on Windows are repaired as such', () => {
    for (const slip of slips.filter((_, at) => at % 4 === 0)) {
      const text = written(slip).replaceAll('\n', '\r\n');
      const { issues } = parseSpec(text);
      assert.equal(issues.length, 1, `${slip.slip}: ${issues.map(({ message }) => message).join(' | ')}`);
      const fixed = withEdits(text, changesOf(issues[0]!)[0]!.edits);
      assert.deepEqual(
        parseSpec(fixed).issues.map(({ message }) => message),
        [],
        slip.slip,
      );
    }
  });
});

describe('What is no slip', () => {
  it('is a number, or a word such as true, where a text goes: it is read as it is written', () => {
    for (const [number, text] of [
      ['2024', '2024'],
      ['007', '007'],
      ['1.50', '1.50'],
      ['true', 'true'],
    ] as const) {
      const { model, issues } = parseSpec(soundSpec.replace('Sorrel', number).replace('Seed jar', number));
      assert.deepEqual(issues, []);
      const word = model?.shapes.get('word')?.generator;
      assert.equal(word?.kind === 'text' && word.text, text);
      assert.equal(model?.title, text);
    }
  });

  it('is a number in a batch: it stays as it is written', () => {
    const { batch } = parseSpec(soundSpec.replace('title: Seed jar', 'batch: [007, 1.50, {name: 010}]'));
    assert.deepEqual(
      batch?.rows.map(({ cells }) => cells.get('name')),
      ['007', '1.50', '010'],
    );
  });
});
