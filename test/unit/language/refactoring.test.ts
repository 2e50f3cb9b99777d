import assert from 'node:assert/strict';
import { withEdits } from '../../../src/fixes/find-fixes.ts';
import { area } from '../../../src/geometry/measure.ts';
import { unitConversion } from '../../../src/language/refactor/convert-units.ts';
import { formatted } from '../../../src/language/refactor/format.ts';
import { refactoringsAt } from '../../../src/language/refactor/refactor.ts';
import type { Refactoring } from '../../../src/language/refactor/refactoring.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { noUses } from '../../../src/spec/files/used-files.ts';
import { assertNear, report } from '../support/engine.ts';
import { marked, samples } from './marked.ts';

function refactored(spec: string, kind: Refactoring['kind']): string | undefined {
  const { text, offset } = marked(spec);
  const found = refactoringsAt(new SpecSource(text), offset, noUses).find((each) => each.kind === kind);
  return found && withEdits(text, found.edits);
}

/** The tag must be the same: the same areas, piece by piece. */
async function assertSameTag(before: string, after: string, tolerance = 1e-9): Promise<void> {
  const [one, other] = await Promise.all([report(before), report(after)]);
  assert.ok(one.tag && other.tag, after);
  assert.equal(one.tag.pieces.length, other.tag.pieces.length);
  for (const [index, { region }] of one.tag.pieces.entries())
    assertNear(area(other.tag.pieces[index]!.region), area(region), tolerance * area(region), 'area');
}

describe('Giving a shape a name', () => {
  const spec = `tagwright: 1
shapes:
  disc: {ellipse: 30 mm}   # a lid
pieces:
  t: {body: [disc, {rectangle: [40 mm, 5 mm], nu^dge: {up: 3 mm}}]}
`;

  it('puts it under shapes and its name where it was', async () => {
    const after = refactored(spec, 'extract')!;
    assert.match(
      after,
      / {2}disc: \{ellipse: 30 mm\} {3}# a lid\n {2}rectangle: \{rectangle: \[40 mm, 5 mm\], nudge: \{up: 3 mm\}\}\npieces:/,
    );
    assert.match(after, /t: \{body: \[disc, rectangle\]\}/);
    await assertSameTag(marked(spec).text, after);
  });

  it('works where there are no shapes yet, in block style, and on shapes in shapes', async () => {
    const block = 'tagwright: 1\npieces:\n  t:\n    body:\n      - ellip^se: 30 mm\n        grow: 2 mm\n';
    const after = refactored(block, 'extract')!;
    assert.equal(
      after,
      'tagwright: 1\nshapes:\n  ellipse: {ellipse: 30 mm, grow: 2 mm}\n\npieces:\n  t:\n    body:\n      - ellipse\n',
    );
    await assertSameTag(marked(block).text, after);
    const inner = 'tagwright: 1\nshapes:\n  a: {around: {ellipse: ^9 mm}, by: 2 mm}\npieces:\n  t: {body: [a]}\n';
    assert.match(refactored(inner, 'extract')!, /a: \{around: ellipse, by: 2 mm\}\n {2}ellipse: \{ellipse: 9 mm\}\n/);
    await assertSameTag(marked(inner).text, refactored(inner, 'extract')!);
  });

  it('takes a name that is free, and is not offered on a shape that has one, or where a comment would be lost', () => {
    assert.match(refactored(spec.replaceAll('disc', 'rectangle'), 'extract')!, /rectangle2: \{/);
    assert.equal(refactored(spec.replace('nu^dge', 'nudge').replace('ellipse', 'elli^pse'), 'extract'), undefined);
    assert.equal(
      refactored(
        'tagwright: 1\npieces:\n  t:\n    body:\n      - elli^pse: 30 mm # why\n        grow: 2 mm\n',
        'extract',
      ),
      undefined,
    );
  });
});

describe('Writing a shape where it is used', () => {
  it('takes its name away', async () => {
    const spec =
      'tagwright: 1\nshapes:\n  a: {ellipse: 30 mm}\n  b^:\n    rectangle: [40 mm, 5 mm]\n    rotate: 5\npieces:\n  t: {body: [a, b]}\n';
    const after = refactored(spec, 'inline')!;
    assert.equal(
      after,
      'tagwright: 1\nshapes:\n  a: {ellipse: 30 mm}\npieces:\n  t: {body: [a, {rectangle: [40 mm, 5 mm], rotate: 5}]}\n',
    );
    await assertSameTag(marked(spec).text, after);
    assert.equal(refactored(spec.replace('b^:', 'b:').replace('a, b]', 'a, b^]'), 'inline'), after);
  });

  it('takes the section away with the last of them', () => {
    const spec = 'tagwright: 1\nshapes:\n  a^: {ellipse: 30 mm}\npieces:\n  t: {body: [a]}\n';
    assert.equal(refactored(spec, 'inline'), 'tagwright: 1\npieces:\n  t: {body: [{ellipse: 30 mm}]}\n');
  });

  it('is not offered for one that is used more than once, or not at all, or where only a name can be', () => {
    for (const uses of ['body: [a, a]', 'body: [{ellipse: 3 mm}]', 'body: [{ellipse: 3 mm, place: {on: a}}]'])
      assert.equal(
        refactored(`tagwright: 1\nshapes:\n  a^: {ellipse: 30 mm}\npieces:\n  t: {${uses}}\n`, 'inline'),
        undefined,
        uses,
      );
  });

  it('undoes giving it a name', () => {
    const spec = 'tagwright: 1\nshapes:\n  a: {ellipse: 30 mm}\npieces:\n  t: {body: [a, {ellipse: ^[40 mm, 5 mm]}]}\n';
    const named = refactored(spec, 'extract')!;
    assert.equal(refactored(named.replace('[a, ellipse', '[a, ^ellipse'), 'inline'), marked(spec).text);
  });
});

describe('Making a batch of what a text says', () => {
  const spec = (text: string): string =>
    `tagwright: 1\ntitle: Label\n\n# What it says.\nshapes:\n  word: {text: ${text}, font: Pacifico, width: 60 mm}\npieces:\n  t: {body: [word], parts: many}\n`;

  it('takes the names that stand in it, however they are parted', () => {
    const batch = 'tagwright: 1\ntitle: Label\n\nbatch:\n  - Sorrel\n  - Sea Kale\n\n# What it says.\nshapes:\n';
    for (const text of ['"Sorrel, Sea^ Kale"', '"Sor^rel; Sea Kale"', '"Sorrel\\n Sea Kale^"']) {
      const after = refactored(spec(text), 'rewrite')!;
      assert.ok(after.startsWith(batch), after);
      assert.ok(after.includes('  word: {text: "{name}", font: Pacifico, width: 60 mm}\n'), after);
    }
    const block =
      'tagwright: 1\npieces:\n  t:\n    body:\n      - text: |\n          Sor^rel\n          "No"\n        width: 60 mm\n    parts: many\n';
    assert.equal(
      refactored(block, 'rewrite'),
      'tagwright: 1\nbatch:\n  - Sorrel\n  - "\\"No\\""\n\npieces:\n  t:\n    body:\n      - text: "{name}"\n        width: 60 mm\n    parts: many\n',
    );
  });

  it('begins one with a single name, and leaves that tag as it was', async () => {
    const before = spec('Sor^rel');
    const after = refactored(before, 'rewrite')!;
    assert.match(after, /\nbatch:\n {2}- Sorrel\n\n/);
    await assertSameTag(marked(before).text, after);
  });

  it('writes names that YAML would take for something else in quotes', () => {
    assert.match(
      refactored(spec('"true, 12^, Sorrel: red"'), 'rewrite')!,
      /\n {2}- "true"\n {2}- "12"\n {2}- "Sorrel: red"\n/,
    );
  });

  it('is not offered for prices, dates and phrases with figures', () => {
    for (const text of [
      '"$3.50 ea^ch, sow ½ in deep"',
      '"Sorrel, €4^"',
      '"packed 2^026"',
      '"05/14/2^6"',
      '"2 oz^, Dill"',
      '"19 Sept^. 2026"',
    ])
      assert.equal(refactored(spec(text), 'rewrite'), undefined, text);
    for (const text of ['"Table 1, Tabl^e 2"', '"1, 2^, 3"', '"Rosa^ x alba, Dill"'])
      assert.ok(refactored(spec(text), 'rewrite'), text);
  });

  it('is not offered elsewhere, or where there is a batch', () => {
    assert.equal(refactored(spec('Sorrel').replace('Paci', 'Pa^ci'), 'rewrite'), undefined);
    assert.equal(refactored(spec('Sor^rel').replace('title', 'batch: [Sorrel]\ntitle'), 'rewrite'), undefined);
  });
});

describe('Converting a file to the other unit', () => {
  for (const { title, text } of samples) {
    it(`leaves ${title} as large as it was, there and back`, async () => {
      const convert = (before: string) => withEdits(before, unitConversion(new SpecSource(before))!.edits);
      const inches = convert(text);
      assert.match(inches, /^units: in$/m);
      assert.ok(!/\d mm/.test(inches), inches);
      // Rounded to a ten-thousandth of an inch, 0.0025 mm, on pieces of some 30 mm and more.
      await assertSameTag(text, inches, 5e-4);
      assert.match(convert(inches), /^units: mm$/m);
      await assertSameTag(text, convert(inches), 1e-3);
    });
  }

  it('follows CSS Values: 25.4 mm to the inch; bare numbers stay bare, points stay points', () => {
    const text =
      'tagwright: 1\nshapes:\n  a: {ellipse: 25.4, grow: 1.27 cm, tidy: 12 pt, width: "50.8 mm", rotate: 5}\npieces: {t: {body: [a]}}\n';
    const after = withEdits(text, unitConversion(new SpecSource(text))!.edits);
    assert.match(after, /tagwright: 1\nunits: in\n/);
    assert.match(after, /a: \{ellipse: 1, grow: 0\.5 in, tidy: 12 pt, width: "2 in", rotate: 5\}/);
  });

  it('is not offered where path data would change its size', () => {
    assert.equal(unitConversion(new SpecSource('tagwright: 1\nshapes:\n  a: {path: M0 0H9V9Z}\n')), undefined);
  });
});

describe('Setting a spec out', () => {
  it('leaves the samples as they are', () => {
    for (const { title, text } of samples) assert.equal(formatted(text), text, title);
  });

  it('evens indentation and spaces, and keeps comments, text over several lines and values in line', () => {
    const messy = `

tagwright:   1
# all of it
title: Two  words   
stock:  {material: walnut ,thickness: 3 mm,kerf:   0.18 mm }


# shapes
shapes:
    a:   {rectangle: [ 26 mm,18 mm ] , radius: 6 mm}   # keep
    bcd: { ellipse: 3 mm,
       grow: 1 mm }
    longer:
        # about it
        text: |
          Two
            lines
        font: "A  b"
pieces:
  tag:
    body:
    - a
    -   from: bcd
        grow: 3 mm
    hanger: {ring: {at:   left}}`;
    const even = `tagwright: 1
# all of it
title: Two  words
stock: {material: walnut, thickness: 3 mm, kerf: 0.18 mm}

# shapes
shapes:
  a: {rectangle: [26 mm, 18 mm], radius: 6 mm}   # keep
  bcd: {ellipse: 3 mm,
     grow: 1 mm}
  longer:
    # about it
    text: |
      Two
        lines
    font: "A  b"
pieces:
  tag:
    body:
      - a
      - from: bcd
        grow: 3 mm
    hanger: {ring: {at: left}}
`;
    assert.equal(formatted(messy), even);
    assert.equal(formatted(even), even);
    assert.equal(formatted(messy.replaceAll('\n', '\r\n')), even.replaceAll('\n', '\r\n'));
  });

  it('brings values back in line once one is longer', () => {
    assert.equal(
      formatted('shapes:\n  ab:   {ellipse: 3}\n  abcdef: {ellipse: 4}\n'),
      'shapes:\n  ab:     {ellipse: 3}\n  abcdef: {ellipse: 4}\n',
    );
  });

  it('never changes what is said, however the spaces lie', () => {
    // The samples with their spaces between brackets and at the ends of lines multiplied.
    for (const { text } of samples) {
      const lines = text
        .split('\n')
        .map((line) =>
          /^ .*[{[](?!name\}|sown\})/.test(line)
            ? line.replace(/(?<=[{[,])(?!name\}|sown\}) ?|(?<!\{name|\{sown)(?= ?[}\]])/g, '   ')
            : line,
        );
      const wide = lines.join(' \n');
      assert.deepEqual(new SpecSource(formatted(wide)).value, new SpecSource(text).value);
      assert.equal(formatted(wide).replace(/ +/g, ' '), formatted(text).replace(/ +/g, ' '));
    }
  });

  it('leaves broken text alone', () => {
    for (const text of ['shapes:  {a', 'a:  b:  c', '"']) assert.equal(formatted(text), text);
  });
});
