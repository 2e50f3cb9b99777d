import assert from 'node:assert/strict';
import { withEdits } from '../../../src/core/issue.ts';
import { findFixes } from '../../../src/fixes/find-fixes.ts';
import { make, newEngine, placeOf, report, specOf } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

const stocked = (stock: string, head: readonly string[] = []) =>
  specOf(['body: {rectangle: [40, 20]}'], undefined, [`stock: ${stock}`, ...head]);

const lettered = (text: string, head: readonly string[] = []) => `tagwright: 1
stock: {thickness: 3 mm}
${head.map((line) => `${line}\n`).join('')}shapes:
  plate: {rectangle: [80 mm, 30 mm]}
  word: {text: ${text}, width: 50 mm, place: plate}
pieces:
  tag: {body: plate, engrave: word}
`;

const options = { locate: (relative: string) => `/specs/${relative}` };

async function fixed(text: string): Promise<string[]> {
  const engine = newEngine();
  const made = await engine.compute(text, options);
  const issue = only(made, 'odd-value');
  const fixes = await findFixes(engine, made, issue, options);
  return fixes.map(({ edits }) => withEdits(text, edits));
}

describe('A kerf that no laser cuts', () => {
  // What lasers cut, 0.05 to 0.5 mm: common practice, no source.
  for (const [kerf, severity, says] of [
    ['1.6 mm', 'warning', /The kerf is 1\.60 mm; lasers cut about 0\.05 mm to 0\.5 mm wide\. Was 0\.16 mm meant\?/],
    ['0.51 mm', 'warning', /Cut a kerf test/],
    ['0.016 mm', 'info', /The kerf is 0\.016 mm.* Was 0\.16 mm meant\?/],
    ['{outer: 1.6 mm, inner: 0.16 mm}', 'warning', /1\.60 mm/],
    ['0.063 in', 'warning', /1\.60 mm/],
  ] as const) {
    it(`is told at its value: ${kerf}`, async () => {
      const made = await make(stocked(`{thickness: 3, kerf: ${kerf}}`));
      const issue = only(made, 'odd-value');
      assert.equal(issue.severity, severity);
      assert.match(issue.message, says);
      assert.equal(placeOf(made.report, issue).text, kerf);
    });
  }

  it('may be anything that lasers do, and none', async () => {
    for (const kerf of ['0', '0.05 mm', '0.16 mm', '0.5 mm', '{outer: 0.24 mm, inner: 0.16 mm}', '0.006 in'])
      assertSilent(await make(stocked(`{thickness: 3, kerf: ${kerf}}`)), 'odd-value', kerf);
  });

  it('is put right in place, by operation, and under its name', async () => {
    for (const [stock, after, head] of [
      ['{thickness: 3, kerf: 1.6 mm}', '{thickness: 3, kerf: 0.16 mm}', []],
      [
        '{thickness: 3, kerf: {outer: 1.8 mm, inner: 1.6 mm}}',
        '{thickness: 3, kerf: {outer: 0.18 mm, inner: 0.18 mm}}',
        [],
      ],
      ['ply3', 'ply3', ['stocks: {ply3: {thickness: 3 mm, kerf: 1.6 mm}}']],
    ] as const) {
      const [first] = await fixed(stocked(stock, head));
      assert.ok(first);
      assertSilent(await make(first), 'odd-value');
      assert.ok(first.includes(`stock: ${after}\n`), first);
    }
  });
});

describe('A material that is misspelt', () => {
  for (const [written, meant] of [
    ['brich plywood', 'birch plywood'],
    ['brich plywod', 'birch plywood'],
    ['3 mm cardbord, white', '3 mm cardboard, white'],
    ['black wallnut', 'black walnut'],
    ['acrilic', 'acrylic'],
    ['popular', undefined],
  ] as const)
    it(`is told at its name, and put right: ${written}`, async () => {
      const made = await make(stocked(`{material: "${written}", thickness: 3}`));
      if (meant === undefined) {
        assertSilent(made, 'odd-value');
        return;
      }
      assert.equal(only(made, 'odd-value').severity, 'info');
      const [first] = await fixed(stocked(`{material: ${JSON.stringify(written)}, thickness: 3}`));
      assert.ok(first !== undefined && first.includes(meant), first);
      assertSilent(await make(first), 'odd-value');
    });

  it('is none for what is known in whatever form, in another language, or like nothing', async () => {
    const names =
      'birch ply; cherrywood; maples; cardstock; white linen card; slate; Pappelsperrholz; bambou; papier kraft; Mahagoni; legno di olivo; elder; marble paper';
    for (const name of names.split('; '))
      assertSilent(await make(stocked(`{material: ${name}, thickness: 3}`)), 'odd-value', name);
  });

  it('is a danger where what was meant is one, and nothing else', async () => {
    for (const name of ['vynil', 'vinil sheet', 'polycarbonnate', 'fibreglas', 'neoprane', 'epoxi board']) {
      const made = await make(stocked(`{material: ${name}, thickness: 3}`));
      assert.equal(only(made, 'unsafe-material').severity, 'error', name);
      assertSilent(made, 'odd-value', name);
    }
    assert.match(
      only(await make(stocked('{material: vynil, thickness: 3}')), 'unsafe-material').message,
      /^Do not laser cut this: “vynil” looks like vinyl, which is or may be PVC/,
    );
  });
});

describe('A tie that no tag hangs by', () => {
  it('is told at the tie, with the way to say how wide the opening is to be', async () => {
    for (const [tie, isOdd] of [
      ['{twine: 20 mm}', true],
      ['{twine: 6.1 mm}', true],
      ['{twine: 6 mm}', false],
      ['{ribbon: 50 mm}', false],
      ['{ribbon: 60 mm}', true],
      ['{twine: 2 mm, opening: 20 mm}', false],
    ] as const) {
      const made = await make(stocked('{thickness: 3 mm}', [`tie: ${tie}`]));
      if (!isOdd) assertSilent(made, 'odd-value', tie);
      else {
        const issue = only(made, 'odd-value');
        assert.equal(issue.severity, 'warning');
        assert.equal(placeOf(made.report, issue).text, tie);
        assert.match(issue.message, /“opening: 5 mm”/);
      }
    }
  });
});

describe('A sheet thicker than small lasers cut', () => {
  const thick = (thickness: string) => make(stocked(`{thickness: ${thickness}}`));

  it('is asked about, and one of 20 mm is not', async () => {
    const issue = only(await thick('3 cm'), 'odd-value');
    assert.equal(issue.severity, 'info');
    assert.match(issue.message, /^The sheet is 30\.00 mm thick, and small lasers cut up to about 20 mm; check/);
    assertSilent(await thick('20 mm'), 'odd-value');
    only(await thick('20.1 mm'), 'odd-value');
  });
});

describe('A sheet thinner than paper', () => {
  it('is told at its value', async () => {
    const made = await make(stocked('{thickness: 0.03 mm}'));
    const issue = only(made, 'odd-value');
    assert.equal(placeOf(made.report, issue).text, '0.03 mm');
    assert.match(issue.message, /0\.03 mm thick.*check the number and its unit/);
  });

  it('may be paper', async () => {
    assertSilent(await make(stocked('{thickness: 0.1 mm}')), 'odd-value');
  });
});

describe('Typographic quotes round all the words', () => {
  for (const [text, words] of [
    ['“Tansy”', 'Tansy'],
    ['„Rainfarn“', 'Rainfarn'],
    ['«Tanaisie»', 'Tanaisie'],
    ['» Rainfarn «', 'Rainfarn'],
    ['‘Gran’s jar’', 'Gran’s jar'],
    ['”Renfana”', 'Renfana'],
    ['“12:30”', '"12:30"'],
    ['“007”', '"007"'],
  ] as const) {
    it(`are asked about, and come off: ${text}`, async () => {
      const spec = lettered(text);
      const made = await report(spec);
      const issue = only(made, 'odd-value');
      assert.deepEqual([issue.severity, placeOf(made, issue).text], ['info', text]);
      assert.deepEqual(await fixed(spec), [lettered(words)]);
    });
  }

  it('are so in lists of words and in batches', async () => {
    only(await report(lettered('"{name}"', ['batch: [{name: Tansy}, {name: “Sea Kale”}]'])), 'odd-value');
  });

  it('are left alone where they enclose less, or stand in quotes of YAML', async () => {
    for (const text of [
      '“Keep” and “grow”',
      'the “good” seed',
      '“Tansy',
      'Tansy’',
      '“”',
      '"“Tansy”"',
      "'“Tansy”'",
      'O’Kale',
    ])
      assertSilent(await report(lettered(text)), 'odd-value', text);
  });
});

describe('A tag longer than small lasers cut', () => {
  const sized = (size: string, head: readonly string[] = []) =>
    make(specOf([`body: {rectangle: [${size}]}`], undefined, head));

  it('is asked about at its piece, as of another unit', async () => {
    for (const [size, says] of [
      ['92 cm, 30 mm', /is 920 mm wide, and small lasers cut up to about 900 mm; check the numbers and their units/],
      ['30 mm, 92 in', /is 2337 mm high/],
    ] as const) {
      const made = await sized(size);
      const issue = only(made, 'odd-value');
      assert.deepEqual([issue.severity, issue.path], ['info', made.pieces[0]!.path]);
      assert.match(issue.message, says);
    }
  });

  it('may be a sign that is long, and any length that the sheet is said to have', async () => {
    assertSilent(await sized('900 mm, 200 mm'), 'odd-value');
    assertSilent(await sized('35.4 in, 8 in'), 'odd-value');
    assertSilent(await sized('920 mm, 200 mm', ['sheet: {size: [1200 mm, 600 mm]}']), 'odd-value');
  });
});
