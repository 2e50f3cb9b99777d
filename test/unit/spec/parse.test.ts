import assert from 'node:assert/strict';
import { parseSpec } from '../../../src/spec/parse.ts';
import type { ParsedSpec } from '../../../src/spec/parse.ts';
import type { Issue } from '../../../src/core/issue.ts';
import type { IssueCode } from '../../../src/core/issue-kinds.ts';

const good = `tagwright: 1
title: Mint
shapes:
  plate: {rectangle: [60 mm, 20 mm], radius: 3 mm}
pieces:
  tag:
    body: [plate]
`;

/** Issues as “code line:column text”. */
function messages({ source, issues }: ParsedSpec): string[] {
  return issues.map(({ code, range }) => {
    const { line, column } = source.position(range.start);
    return `${code} ${line}:${column} ${source.text.slice(range.start, range.end)}`;
  });
}

function only(text: string, code: IssueCode): { issue: Issue; text: string; line: number; column: number } {
  const parsed = parseSpec(text);
  assert.deepEqual(
    parsed.issues.map((issue) => issue.code),
    [code],
    JSON.stringify(parsed.issues),
  );
  const issue = parsed.issues[0]!;
  return {
    issue,
    text: text.slice(issue.range.start, issue.range.end),
    ...parsed.source.position(issue.range.start),
  };
}

describe('Reading a spec', () => {
  it('gives lengths in mm, defaults filled in', () => {
    const { model, issues } = parseSpec(good);
    assert.deepEqual(issues, []);
    assert.equal(model?.title, 'Mint');
    // Rule of thumb, no source: 1.5 mm is the least web to rely on.
    assert.deepEqual(model.stock, { kerf: 0, minWeb: 1.5, leastWeb: 0.8, hangerWeb: 1.5 });
    const plate = model.shapes.get('plate');
    assert.deepEqual(plate?.generator, { kind: 'rectangle', width: 60, height: 20, radius: 3 });
  });

  it('takes the least web as it is written, and no wider for a thick sheet', () => {
    const thick = parseSpec(good.replace('shapes:', 'stock: {thickness: 1/4 in}\nshapes:'));
    assert.equal(thick.model?.stock.minWeb, 1.5);
    const parsed = parseSpec(good.replace('shapes:', 'stock: {thickness: 4 mm, min_web: 2 mm}\nshapes:'));
    assert.equal(parsed.model?.stock.minWeb, 2);
  });

  it('reads block style, flow style, quotes and aliases alike', () => {
    const flow = `{tagwright: 1, title: 'Mint', shapes: {plate: {rectangle: ["60 mm", 20], radius: "3"}}, pieces: {tag: {body: [plate]}}}`;
    const block = `---
tagwright: 1
title: "Mint"
shapes:
  plate:
    rectangle:
      - 60 mm
      - 20 mm
    radius: 3 mm
pieces:
  tag:
    body:
      - plate
`;
    const anchored = good
      .replace('[60 mm, 20 mm], radius: 3 mm', '[&w 60 mm, 20 mm], radius: &r 3 mm')
      .replace('title: Mint', 'title: Mint\nunits: mm');
    const model = parseSpec(good).model;
    for (const text of [flow, block, anchored]) assert.deepEqual(parseSpec(text).model, model, text);
    const twice = parseSpec(
      good.replace('pieces:', '  copy: {rectangle: [*w, *w]}\npieces:').replace('[60 mm', '[&w 60 mm'),
    );
    assert.deepEqual(twice.model?.shapes.get('copy')?.generator, {
      kind: 'rectangle',
      width: 60,
      height: 60,
      radius: 0,
    });
  });

  it('reads Windows line ends, with the same lines and columns', () => {
    const wrong = good.replace('radius', 'radios');
    assert.deepEqual(messages(parseSpec(wrong.replaceAll('\n', '\r\n'))), messages(parseSpec(wrong)));
    assert.deepEqual(parseSpec(good.replaceAll('\n', '\r\n')).model, parseSpec(good).model);
  });

  it('reads a byte order mark away', () => {
    assert.deepEqual(parseSpec(`\ufeff${good}`).issues, []);
  });

  it('knows inches', () => {
    const { model } = parseSpec(
      good.replace('title: Mint', 'units: in').replace('[60 mm, 20 mm], radius: 3 mm', '[2, 1/2], radius: 1/8'),
    );
    assert.deepEqual(model?.shapes.get('plate')?.generator, {
      kind: 'rectangle',
      width: 50.8,
      height: 12.7,
      radius: 3.175,
    });
  });
});

describe('What is wrong with a spec is told where it stands', () => {
  it('an unknown key, with the key that was meant', () => {
    const { issue, ...place } = only(good.replace('radius', 'radios'), 'unknown-key');
    assert.deepEqual(place, { text: 'radios', line: 4, column: 38 });
    assert.deepEqual(issue.suggestions, ['radius']);
    assert.match(issue.message, /“radios”.*“radius”/);
    assert.equal(issue.severity, 'error');
    assert.deepEqual(issue.path, ['shapes', 'plate', 'radios']);
  });

  it('unknown keys at every level', () => {
    const text = good.replace('title', 'titel').replace('    body', '    colour: red\n    body');
    assert.deepEqual(messages(parseSpec(text)), ['unknown-key 2:1 titel', 'unknown-key 7:5 colour']);
  });

  it('a length that is none', () => {
    const { issue, ...place } = only(good.replace('20 mm', '20 qq'), 'bad-length');
    assert.deepEqual(place, { text: '20 qq', line: 4, column: 30 });
    assert.match(issue.message, /“20 qq”/);
  });

  for (const [what, value] of [
    ['zero', '0'],
    ['negative', '-20 mm'],
    ['absurd', '1e9'],
    ['.nan', '.nan'],
    ['.inf', '.inf'],
    ['-.inf', '-.inf'],
  ] as const) {
    it(`a size that is ${what}`, () => {
      const parsed = parseSpec(good.replace('20 mm', value));
      assert.equal(parsed.model, undefined);
      const [first] = parsed.issues;
      assert.ok(first?.code === 'bad-length' || first?.code === 'bad-value', JSON.stringify(parsed.issues));
      assert.equal(parsed.source.position(first.range.start).line, 4);
    });
  }

  it('a shape that does not exist, with the one that was meant', () => {
    const { issue, ...place } = only(good.replace('[plate]', '[plat]'), 'unknown-shape');
    assert.deepEqual(place, { text: 'plat', line: 7, column: 12 });
    assert.deepEqual(issue.suggestions, ['plate']);
  });

  it('shapes made from themselves, at the reference that closes the ring', () => {
    const text = good.replace(
      '  plate:',
      '  a: {from: b}\n  b: {around: c, by: 2 mm}\n  c: {union: [a, plate]}\n  plate:',
    );
    const { issue, ...place } = only(text, 'cycle');
    assert.deepEqual(place, { text: 'a', line: 6, column: 15 });
    assert.match(issue.message, /a → b → c → a/);
    assert.equal(only(good.replace('plate: {', 'me: {from: me}\n  plate: {'), 'cycle').line, 4);
  });

  it('a piece glued on itself or on none', () => {
    assert.equal(only(`${good}    glue_to: tag\n`, 'cycle').line, 8);
    const { issue, ...place } = only(`${good}    glue_to: tab\n`, 'unknown-piece');
    assert.deepEqual(place, { text: 'tab', line: 8, column: 14 });
    assert.deepEqual(issue.suggestions, ['tag']);
  });

  it('several things at once, each at its line and column', () => {
    const text = `tagwright: 1
stock: {thicknes: 3 mm, kerf: lots}
tie: {twine: -2 mm}
shapes:
  plate: {rectangle: [60 mm], radius: 3 mm}
  word: {text: Mint, widht: 40 mm, align: middle}
  round: {ellipse: 0}
pieces:
  tag:
    body: [nothing]
    hanger: {ring: {at: above}}
`;
    const found = messages(parseSpec(text)).sort();
    for (const expected of [
      'unknown-key 2:9 thicknes',
      'bad-length 2:31 lots',
      'bad-length 3:14 -2 mm',
      'bad-value 5:22 [60 mm]',
      'unknown-key 6:22 widht',
      'bad-value 6:43 middle',
      'bad-length 7:20 0',
      'unknown-shape 10:12 nothing',
      'bad-value 11:25 above',
    ]) {
      assert.ok(found.includes(expected), `${expected}\nis not in\n${found.join('\n')}`);
    }
  });

  it('two generators, none, and a companion that does not belong', () => {
    assert.match(only(good.replace('{rectangle', '{ellipse: 3 mm, rectangle'), 'bad-value').issue.message, /rectangle/);
    assert.equal(
      only(good.replace('{rectangle: [60 mm, 20 mm], radius: 3 mm}', '{width: 3 mm}'), 'missing-key').line,
      4,
    );
    const { text } = only(good.replace('radius', 'weight: 700, radius'), 'bad-value');
    assert.equal(text, 'weight');
  });

  it('a text without a size, an empty text, an around without its distance', () => {
    const shape = (spec: string) => good.replace('{rectangle: [60 mm, 20 mm], radius: 3 mm}', spec);
    assert.match(
      only(shape('{text: Mint}'), 'missing-key').issue.message,
      /This text has no size: add width, height or x_height/,
    );
    assert.equal(only(shape(`{text: '  ', width: 3 mm}`), 'bad-value').text, `'  '`);
    assert.match(
      only(good.replace('  plate', '  edge: {around: plate}\n  plate'), 'missing-key').issue.message,
      /“by”/,
    );
  });

  it('an arrow that is all head, or whose shaft is wider than its head', () => {
    const arrow = (spec: string) => good.replace('{rectangle: [60 mm, 20 mm], radius: 3 mm}', `{arrow: {${spec}}}`);
    // A tip of 90° on a head of 40 takes 20 mm.
    assert.equal(only(arrow('length: 20 mm, width: 40 mm, shaft: 10 mm'), 'bad-length').text, '20 mm');
    assert.deepEqual(parseSpec(arrow('length: 20.1 mm, width: 40 mm, shaft: 10 mm')).issues, []);
    assert.equal(only(arrow('length: 90 mm, width: 9 mm, shaft: 10 mm'), 'bad-length').text, '10 mm');
    assert.equal(only(arrow('length: 90 mm, width: 10 mm, tip: 180'), 'bad-value').text, '180');
  });

  it('a radius of more than half the shorter side', () => {
    assert.equal(only(good.replace('radius: 3', 'radius: 10.1'), 'bad-length').text, '10.1 mm');
    assert.deepEqual(parseSpec(good.replace('radius: 3', 'radius: 10')).issues, []);
  });

  it('a version that is not 1, or is not said', () => {
    assert.equal(only(good.replace(': 1', ': 2'), 'bad-value').line, 1);
    assert.match(only(good.replace('tagwright: 1\n', ''), 'not-a-spec').issue.message, /tagwright: 1/);
  });

  it('no pieces', () => {
    assert.equal(only(good.slice(0, good.indexOf('pieces:')), 'missing-key').issue.severity, 'error');
  });

  it('faulty YAML, at its place', () => {
    const parsed = parseSpec(good.replace('[plate]', '[plate'));
    assert.equal(parsed.model, undefined);
    assert.ok(
      parsed.issues.every((issue) => issue.code === 'yaml-syntax'),
      JSON.stringify(messages(parsed)),
    );
    assert.ok(parsed.source.position(parsed.issues[0]!.range.start).line >= 7);
    assert.ok(parseSpec(good.replace('  tag:', '\ttag:')).issues.some((issue) => issue.code === 'yaml-syntax'));
    assert.ok(parseSpec(good.replace('title: Mint', 'title: Mint\ntitle: Sage')).issues.length > 0);
  });

  it('a file that is no spec', () => {
    for (const text of [
      '',
      '\n',
      '   \n\n',
      '# only a comment\n# and another',
      'Mint',
      '42',
      '[1, 2]',
      'null',
      '---',
      '"',
    ]) {
      const parsed = parseSpec(text);
      assert.equal(parsed.model, undefined);
      assert.ok(parsed.issues.length > 0, JSON.stringify(text));
      for (const { range } of parsed.issues) assert.ok(range.start >= 0 && range.end <= Math.max(text.length, 1));
    }
  });
});
