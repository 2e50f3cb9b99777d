import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { merged } from '../../../src/language/refactor/merge.ts';
import {
  fromWorkshop,
  kindNames,
  letteringOf,
  namesToAsk,
  sampleIn,
  tagOf,
  usualUnits,
  wordsToAsk,
} from '../../../src/language/new-tag.ts';
import { namesIn, withPastedLines } from '../../../src/language/names-of-batch.ts';
import { isSound, mostTimesFor, widthThatHolds } from '../../../src/language/width-that-holds.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { assertNear, report } from '../support/engine.ts';
import { oneIn } from '../support/sweep.ts';
import { samples } from './marked.ts';

const sample = (start: string): string => samples.find(({ title }) => title.startsWith(start))!.text;

describe('A new tag from a sample', () => {
  it('is of a kind that has a name of its own, without the words of the sample', () => {
    const files = readdirSync(new URL('../../../samples/', import.meta.url)).filter((name) =>
      name.endsWith('.tag.yaml'),
    );
    const noKinds = ['7-weak-on-purpose.tag.yaml', 'kerf-test.tag.yaml'];
    assert.deepEqual([...Object.keys(kindNames), ...noKinds].sort(), files.sort());
    for (const [file, name] of Object.entries(kindNames)) {
      const text = readFileSync(new URL(`../../../samples/${file}`, import.meta.url), 'utf8');
      const words = letteringOf(new SpecSource(text)).flatMap((each) => each.text.split(' '));
      for (const word of words.filter(({ length }) => length > 3))
        assert.ok(!name.includes(word), `${word} in ${name}`);
    }
  });

  it('has the stock and the tie of the workshop’s file, which it then uses', () => {
    const sample = '# Why.\ntagwright: 1\ntitle: Mint\nstock: {material: walnut}\ntie: {twine: 2 mm}\npieces: {}\n';
    const cut = fromWorkshop(sample, 'stock', 'my.workshop.yaml', 'ply3');
    assert.equal(
      cut,
      '# Why.\ntagwright: 1\nuse: my.workshop.yaml\ntitle: Mint\nstock: ply3\ntie: {twine: 2 mm}\npieces: {}\n',
    );
    assert.equal(fromWorkshop(cut, 'tie', 'my.workshop.yaml', 'jute'), cut.replace('{twine: 2 mm}', 'jute'));
    const used = fromWorkshop('tagwright: 1\nuse: one.yaml\npieces: {}\n', 'tie', '../a: b.yaml', 'jute');
    assert.equal(used, 'tagwright: 1\nuse: [one.yaml, "../a: b.yaml"]\npieces: {}\ntie: jute\n');
  });

  it('is in inches where the workshop’s files are, or where there is none all specs', () => {
    const [inches, millimetres] = [{ units: 'in' }, { tagwright: 1 }];
    assert.equal(usualUnits([inches], [millimetres]), 'in');
    assert.equal(usualUnits([millimetres], [inches]), 'mm');
    assert.equal(usualUnits([], [inches, inches]), 'in');
    assert.equal(usualUnits([], [inches, millimetres]), 'mm');
    assert.equal(usualUnits([], []), 'mm');
  });

  it('in inches has round sizes, and holds as the sample does', async () => {
    for (const { text, title } of samples.filter(({ title }) => !/kerf|weak/i.test(title))) {
      const spec = sampleIn('in', text);
      assert.match(spec, /^units: in$/m, title);
      assert.doesNotMatch(spec.replace(/^ *#.*$/gm, ''), /\d mm\b/, title);
      // Sixteenths, but for what is thinner than a tenth of an inch.
      for (const [, figure] of spec.matchAll(/(?<![\w.])(\d+(?:\.\d+)?) in\b/g)) {
        const inches = Number(figure);
        const isRound =
          inches < 0.1 ? figure!.length <= 6 : inches * 16 === Math.round(inches * 16) || figure!.length <= 4;
        assert.ok(isRound, `${title}: ${figure!}`);
      }
      const kinds = async (each: string) => new Set((await report(each)).issues.map(({ code }) => code));
      const before = await kinds(text);
      assert.deepEqual(
        [...(await kinds(spec))].filter((code) => !before.has(code)),
        [],
        title,
      );
    }
  });

  it('gives the plate the width that is asked for, and no second one to the piece', async () => {
    const label = tagOf(sampleIn('in', sample('9')), { texts: [], width: '3 1/2 in' });
    assert.match(label, /label: \{size: \[3 1\/2 in, 1\.5 in\]/);
    assert.doesNotMatch(label, /^ {4}width:/m);
    for (const [nth, width] of [
      ['9', '75 mm'],
      ['10', '70 mm'],
      ['6', '90 mm'],
      ['8', '65 mm'],
    ] as const) {
      const text = tagOf(sample(nth), { texts: [], width });
      const { tag, issues } = await report(text);
      const { minX, maxX } = boundsOf(tag!.pieces[0]!.region)!;
      assertNear(maxX - minX, Number.parseFloat(width), 0.1, nth);
      assert.deepEqual(
        issues.filter(({ severity }) => severity !== 'info').map(({ message }) => message),
        [],
        nth,
      );
      assert.equal(text.match(new RegExp(width, 'g'))?.length, 1, nth);
    }
  });

  it('has the words, the font and the size that are chosen, and a title that says so', async () => {
    const text = tagOf(sample('2'), { texts: ['Lemon Balm'], font: 'Great Vibes', width: '75 mm' });
    assert.match(text, /title: "?Lemon Balm, script name"?/);
    assert.match(tagOf(sample('1'), { texts: ['Thyme & Dill'] }), /title: "?Thyme & Dill, jar initial"?/);
    assert.match(tagOf(sample('1'), { texts: ['S'] }), /title: Jar initial/);
    assert.match(text, /name: \{text: Lemon Balm, font: Great Vibes, width: 92 mm, overlap: auto\}/);
    const made = await report(text);
    const { minX, maxX } = boundsOf(made.tag!.pieces[0]!.region)!;
    // The width of the whole, ring included.
    assertNear(maxX - minX, 75, 0.1, 'width');
  });

  it('has no growth that was right for the words of the sample: long ones were filled in by it, short ones fell apart', async () => {
    const script = sample('2');
    for (const words of ['Wim', 'Quentin', 'Little Pip', 'Ann-Britt & Wim']) {
      const text = tagOf(script, { texts: [words] });
      assert.doesNotMatch(text, /grow:/);
      const made = await report(text);
      const parts = made.issues.filter(({ code }) =>
        ['loose-part', 'speck', 'gap-closes', 'hard-to-read'].includes(code),
      );
      assert.deepEqual(parts, [], words);
    }
    assert.match(tagOf(script, { texts: ['Angelica'] }), /grow: 0\.5 mm/);
    assert.match(
      tagOf(sample('4'), { texts: ['Dill'] }),
      /grow: -0\.5 mm/,
      'a line along the letters stays inside them',
    );
  });

  it('is wide enough for long words, where it asks how wide', async () => {
    const widthOf = async (words: string) => {
      const made = (width?: string) => report(tagOf(sample('2'), { texts: [words], ...(width ? { width } : {}) }));
      const asItIs = await made();
      return isSound(asItIs) ? 'as it is' : widthThatHolds(asItIs, made, 'mm');
    };
    assert.equal(await widthOf('Wim'), 'as it is');
    const width = await widthOf('Ann-Britt & Wim');
    assert.match(width!, /^\d+ mm$/);
    assert.ok(Number.parseFloat(width!) > 92 && Number.parseFloat(width!) % 5 === 0);
    assert.ok(isSound(await report(tagOf(sample('2'), { texts: ['Ann-Britt & Wim'], width: width! }))));
    const glued = await report(sample('4'));
    assert.equal(await widthThatHolds(glued, () => assert.fail('several pieces have no width'), 'mm'), undefined);
  });

  it('is not made twice as wide for words that are as long as those of the sample, whose strokes are thin', async () => {
    assert.equal(mostTimesFor('Jean-Luc'.length / 'Angelica'.length), 1.4);
    assert.equal(mostTimesFor(2), 2);
    const tried: number[] = [];
    const weak = await report(tagOf(sample('2'), { texts: ['Ann-Britt & Wim'] }));
    const now = boundsOf(weak.tag!.pieces[0]!.region)!;
    const compute = (width: string) => {
      tried.push(Number.parseFloat(width));
      return Promise.resolve(weak);
    };
    assert.equal(await widthThatHolds(weak, compute, 'mm', 1.4), undefined);
    assert.ok(tried.length === 2 && Math.max(...tried) < 1.4 * (now.maxX - now.minX) + 5, tried.join());
  });

  it('keeps to the lettering where several pieces are made to go together', async () => {
    const text = tagOf(sample('4'), { texts: [], width: '60 mm' });
    assert.match(text, /word: {4}\{text: Fennel, font: Nunito, weight: 800, width: 60 mm\}/);
    const made = await report(text);
    assert.deepEqual(
      made.issues.filter(({ severity }) => severity === 'error'),
      [],
    );
  });

  it('may have several words, and any', () => {
    const round = tagOf(sample('8'), { texts: ['HERB WALK', '', 'more than there are'] });
    assert.deepEqual(
      letteringOf(new SpecSource(round)).map(({ text }) => text),
      ['HERB WALK', 'plant swap'],
    );
    for (const odd of ['2024', 'yes: no', '# 1', 'a, b', '"q"', 'true', '- x', '\\d'])
      assert.equal(letteringOf(new SpecSource(tagOf(sample('2'), { texts: [odd] })))[0]?.text, odd);
  });

  it('for a list of names has a row for each, asks for no words that are of the rows, and has no rows of the sample', async () => {
    const lists = samples.filter(({ text }) => /^batch:/m.test(text));
    assert.ok(lists.length > 0);
    for (const { text, title } of lists) {
      const source = new SpecSource(text);
      assert.deepEqual(wordsToAsk(source), [], title);
      const { names } = namesToAsk(source)!;
      const made = tagOf(text, { texts: [], names: ['Jyoti', 'yes', names[1]!, 'Søren: “7”'] });
      const { batch, issues } = await report(made);
      assert.deepEqual(
        batch!.rows.map(({ label }) => label),
        ['Jyoti', 'yes', names[1], 'Søren: “7”'],
        title,
      );
      const before = parseSpec(text).batch!.rows[1]!.cells;
      assert.deepEqual([...batch!.rows[2]!.cells], [...before], 'a name that the sample has keeps its row');
      assert.ok(!made.includes(names[0]!), title);
      assert.deepEqual(
        issues.filter(({ severity }) => severity !== 'info').map(({ message }) => message),
        [],
        title,
      );
    }
    const words = tagOf(lists[0]!.text.replace('"{name}", font', '"Pot of {name}", font'), {
      texts: ['Ivy'],
      names: ['Rue'],
    });
    assert.match(words, /batch:\n {2}- \{name: Rue, sown: ""\}\n\n/);
    assert.match(words, /text: "Pot of \{name\}"/);
  });

  it('has the names that are pasted, one on each line, where their lines have become spaces', () => {
    const lines = 'Jyoti\r\nSea Kale (old)\nSøren\n';
    for (const typed of ['Jyoti Sea Kale (old) Søren ', 'JyotiSea Kale (old)Søren'])
      assert.deepEqual(namesIn(withPastedLines(typed, lines)!), ['Jyoti', 'Sea Kale (old)', 'Søren'], typed);
    assert.equal(withPastedLines('Ivy, Jyoti Sea Kale (old) Søren', lines), 'Ivy, Jyoti, Sea Kale (old), Søren');
    assert.equal(withPastedLines('Jyoti', lines), undefined, 'typed, with a list in the clipboard');
    assert.equal(withPastedLines('Jyoti Søren', 'Jyoti Søren'), undefined);
  });

  it('is the sample where nothing is chosen', () => {
    for (const { text } of samples) assert.equal(tagOf(text, { texts: [] }), text);
  });
});

describe('Putting a sample into a spec', () => {
  it('adds its shapes and pieces under free names, and leaves the rest alone', () => {
    const spec = sample('2');
    const both = merged(spec, sample('3').replace('  tag:', '  name:'));
    const value = new SpecSource(both).value as { shapes: object; pieces: object };
    assert.deepEqual(Object.keys(value.shapes), ['name', 'word', 'backing']);
    assert.deepEqual(Object.keys(value.pieces), ['tag', 'name']);
    assert.ok(both.startsWith(spec.slice(0, spec.indexOf('shapes:'))));
    assert.deepEqual(parseSpec(both).issues, []);
  });

  it('changes names that are taken, wherever they are used', () => {
    const both = merged(sample('2'), sample('2'));
    assert.match(both, /name2: \{text: Angelica/);
    assert.match(both, /tag2: \{body: \[name2\], hanger: \{ring: \{on: name2, at: left\}\}\}/);
    assert.deepEqual(parseSpec(both).issues, []);
  });

  it('works for every pair of samples, and into an empty file', () => {
    for (const { text } of samples) {
      assert.equal(merged('', text), text);
      assert.deepEqual(parseSpec(merged('# mine\n', text)).issues, []);
      for (const other of oneIn(3, samples)) {
        const both = merged(text, other.text);
        assert.deepEqual(parseSpec(both).issues, [], both);
        const count = (spec: string) => Object.keys((new SpecSource(spec).value as { pieces: object }).pieces).length;
        assert.equal(count(both), count(text) + count(other.text));
      }
    }
  });

  it('brings the batch along that its texts ask for', () => {
    const batch = sample('10');
    assert.deepEqual(
      (new SpecSource(merged(sample('2'), batch)).value as { batch: unknown }).batch,
      (new SpecSource(batch).value as { batch: unknown }).batch,
    );
  });

  it('makes the sections that are missing', () => {
    const both = merged('tagwright: 1\ntitle: Mine\n', sample('1'));
    assert.deepEqual(parseSpec(both).issues, []);
    assert.match(both, /^tagwright: 1\ntitle: Mine\n\nshapes:\n {2}letter: \{/);
  });
});
