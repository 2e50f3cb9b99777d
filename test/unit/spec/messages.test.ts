import assert from 'node:assert/strict';
import { parseSpec } from '../../../src/spec/parse.ts';

const messages = (text: string) => parseSpec(text).issues.map(({ code, message }) => `${code}: ${message}`);

describe('What is said of slips in the text', () => {
  it('is in plain words, not in those of the parser', () => {
    const slips: readonly (readonly [string, RegExp])[] = [
      ['tagwright: 1\npieces: {a: 1\n', /never closed: “}” is missing/],
      ['tagwright: 1\npieces: [a, 1\n', /never closed: “\]” is missing/],
      ['tagwright: 1\ntitle: "Sorrel\n', /This quote is never closed: put " after “Sorrel”/],
      ["tagwright: 1\ntitle: 'Sorrel\n", /This quote is never closed: put ' after “Sorrel”/],
      ['tagwright: 1\ntitle: seed: jar\n', /A text with a colon in it needs quotes/],
      ['tagwright: 1\nshapes:\n\ta: 1\n', /with spaces here, not with tabs/],
      ['tagwright: 1\ntitle: a\ntitle: b\n', /“title” appears twice/],
      ['tagwright: 1\ntitle: }\n', /A text with brackets in it needs quotes: "}"/],
      ['tagwright: 1\nnonsense\n', /A colon and a value are missing here/],
      ['tagwright: 1\ntitle: @home\n', /“@” needs quotes/],
      ['%FOO bar\ntagwright: 1\n', /: Something is missing here, or does not belong\.$/],
      ['tagwright: 1\ntitle: |sage\n  mint\n', /: There is a character here that does not belong\.$/],
      [
        `tagwright: 1\na: &a [x, x]\nb: &b [${'*a, '.repeat(99)}*a]\nc: [${'*b, '.repeat(99)}*b]\n`,
        /: What & and \* stand for cannot be put in here; write it out instead\.$/,
      ],
    ];
    for (const [text, expected] of slips) {
      const reported = messages(text).filter((message) => message.startsWith('yaml-syntax'));
      assert.ok(
        reported.some((message) => expected.test(message)),
        `${text}: ${reported.join('\n')}`,
      );
      for (const message of reported)
        assert.doesNotMatch(
          message,
          /flow|scalar|implicit|mapping|collection|token|alias|anchor|directive|resolve/i,
          text,
        );
    }
  });

  it('is that the file is not UTF-8, where its first letter is lost', () => {
    // As TextDecoder, of the Encoding Standard, reads ISO 8859-1 and UTF-16.
    const read = (bytes: Uint8Array) => parseSpec(new TextDecoder().decode(bytes));
    const spec = (text: string) => `tagwright: 1\nshapes:\n  a: {text: ${text}, width: 80}\npieces: {t: {body: a}}\n`;
    const latin = read(Buffer.from(spec('Gänseblümchen'), 'latin1'));
    const wide = read(Buffer.from(`\ufeff${spec('Tansy')}`, 'utf16le'));
    for (const { issues } of [latin, wide])
      assert.deepEqual(
        issues.map(({ code, message }) => `${code}: ${message}`),
        ['not-a-spec: This file is not UTF-8 text; save it as UTF-8.'],
      );
    assert.deepEqual(latin.source.position(latin.issues[0]!.range.start), { line: 3, column: 14 });
    assert.deepEqual(messages(spec('Gänseblümchen')), []);
    assert.deepEqual(read(Buffer.from(`${spec('Tansy')}# für Gäste\n`, 'latin1')).issues, []);
  });

  it('is said once where a generator is misspelt', () => {
    const reported = messages('tagwright: 1\nshapes:\n  a: {elipse: 20}\npieces:\n  t: {body: [a]}\n');
    assert.deepEqual(reported, ['unknown-key: Unknown key “elipse”. Did you mean “ellipse”?']);
  });

  it('is of capitals alone where keys are in capitals, and not that a key is missing', () => {
    const spec = 'tagwright: 1\nShapes:\n  a: {Ellipse: 20}\nPIECES:\n  t: {Body: a}\n';
    assert.deepEqual(messages(spec), [
      'unknown-key: Unknown key “Shapes”. Did you mean “shapes”?',
      'unknown-key: Unknown key “PIECES”. Did you mean “pieces”?',
    ]);
    assert.deepEqual(messages('tagwright: 1\nshapes: {a: {ellipse: 20}}\nPIECES: {t: {Bdoy: a}}\n'), [
      'unknown-key: Unknown key “PIECES”. Did you mean “pieces”?',
    ]);
  });

  it('is one thing of a file that is no spec at all, and nothing is offered to change in it', () => {
    for (const text of [
      '{"tag": {"width": 80, "text": "Tansy", "font-size": "12px"}}',
      '{"title": "Beds", "shapes": [{"points": [1, 2]}], "tag": 3}',
      'name: seeds\nversion: 1.0.0\n',
    ]) {
      const { issues } = parseSpec(text);
      assert.deepEqual(
        issues.map(({ code, suggestions, repairs }) => [code, suggestions, repairs]),
        [['not-a-spec', undefined, undefined]],
        text,
      );
    }
  });

  it('does not lead from one unknown key to another', () => {
    for (const key of ['colour', 'color'])
      assert.deepEqual(messages(`tagwright: 1\nshapes:\n  a: {circle: 20, ${key}: red}\npieces:\n  t: {body: [a]}\n`), [
        `unknown-key: Unknown key “${key}”. A tag has the colour of its stock: “look” in “stock”.`,
      ]);
  });

  it('finds what was meant where two letters changed places', () => {
    const reported = messages('tagwright: 1\nshapes:\n  a: {ellipse: 20, widht: 3}\npieces:\n  t: {body: [a]}\n');
    assert.match(reported[0]!, /Did you mean “width”\?/);
  });

  it('says how several are written where one key goes', () => {
    const of = (hanger: string) =>
      messages(`tagwright: 1\nshapes:\n  a: {ellipse: 20}\npieces:\n  t: {body: [a], hanger: ${hanger}}\n`)[0]!;
    assert.match(
      of('{hole: top, ring: left}'),
      /“hanger” takes only one of its keys; for both write a list: \[\{hole: top\}, \{ring: left\}\]\.$/,
    );
    assert.match(
      of('{hole: {at: top}, ring: left, slot: right}'),
      /for all of them write a list: \[\{hole: …\}, \{ring: left\}, \{slot: right\}\]\.$/,
    );
  });

  it('says what would fit where a value has no form that does', () => {
    const reported = messages(
      'tagwright: 1\nshapes:\n  a: {ellipse: 20}\npieces:\n  t: {body: [a], hanger: {ring: {at: sideways}}}\n',
    );
    assert.match(
      reported[0]!,
      /“at” has a value that does not fit\. What goes here: A side \(top, bottom, left, right\), a corner such as top-left, auto \(/,
    );
  });
});

describe('Half a group, as it is typed', () => {
  const whole = 'tagwright: 1\nshapes:\n  name: {text: Claudia, font: Pacifico, width: 92 mm}\n';
  const start = whole.indexOf('{');
  for (let end = start + 1; end < whole.lastIndexOf('}'); end++) {
    const typed = whole.slice(start, end);
    it(`is not closed yet, and no text: ${typed}`, () => {
      const { issues } = parseSpec(`${whole.slice(0, end)}\npieces:\n  tag: {body: name}\n`);
      assert.ok(issues.length > 0);
      for (const { message, repairs = [] } of issues) {
        assert.doesNotMatch(message, /needs quotes/);
        for (const { title } of repairs) assert.notEqual(title, 'Put in quotes');
      }
    });
  }
});
