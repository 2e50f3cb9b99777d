import assert from 'node:assert/strict';
import { parseSpec } from '../../../src/spec/parse.ts';

const spec = (sheet: string, units = 'mm') => `tagwright: 1
units: ${units}
sheet: ${sheet}
shapes:
  plate: {rectangle: [60 mm, 20 mm]}
pieces:
  tag: {body: [plate]}
`;

/** Problems as “code line text”. */
function messages(text: string): string[] {
  const { source, issues, model } = parseSpec(text);
  assert.equal(model === undefined, issues.length > 0);
  return issues.map(({ code, range }) => {
    return `${code} ${source.position(range.start).line} ${text.slice(range.start, range.end)}`;
  });
}

describe('The sheet of a spec', () => {
  it('is read in millimetres, with no margin unless it is said', () => {
    const usual = { width: 600, height: 300, margin: 0, gap: 2, turn: 'half', copies: 1 };
    assert.deepEqual(parseSpec(spec('{size: [600, 300]}')).model?.sheet, usual);
    const sheetText = '{size: [60 cm, 300 mm], margin: 5, gap: 1/8 in, turn: never, copies: 12}';
    const { gap, ...rest } = parseSpec(spec(sheetText)).model!.sheet!;
    assert.deepEqual(rest, { width: 600, height: 300, margin: 5, turn: 'never', copies: 12 });
    assert.ok(Math.abs(gap - 3.175) < 1e-9);
  });

  it('may be in inches, by the units of the spec or its own', () => {
    // 1 in = 25.4 mm.
    for (const text of [
      spec('{size: [12, 20], margin: 1/4 in}', 'in'),
      spec('{size: [12 in, 20 in], margin: 0.25 in}'),
    ]) {
      const { width, height, margin } = parseSpec(text).model!.sheet!;
      assert.ok(Math.abs(width - 304.8) < 1e-9 && Math.abs(height - 508) < 1e-9 && Math.abs(margin - 6.35) < 1e-9);
    }
  });

  it('may be left out', () => {
    const { model, issues } = parseSpec(spec('{size: [1, 1]}').replace(/^sheet.*\n/m, ''));
    assert.deepEqual(issues, []);
    assert.equal(model?.sheet, undefined);
  });

  for (const [sheet, problem] of [
    ['{margin: 5}', 'missing-key 3 '],
    ['{}', 'missing-key 3 '],
    ['{size: [600]}', 'bad-value 3 '],
    ['{size: [600, 300, 3]}', 'bad-value 3 '],
    ['{size: 600}', 'bad-value 3 600'],
    ['600 x 300', 'bad-value 3 600 x 300'],
    ['{size: [600, wide]}', 'bad-length 3 wide'],
    ['{size: [600, -300]}', 'bad-length 3 -300'],
    ['{size: [0, 300]}', 'bad-length 3 0'],
    ['{size: [600, 300], margin: -1}', 'bad-length 3 -1'],
    ['{size: [600, 300], margin: 150}', 'bad-length 3 150'],
    ['{size: [600, 300], margin: 200 mm}', 'bad-length 3 200 mm'],
    ['{size: [600, 300], edge: 5}', 'unknown-key 3 edge'],
  ] as const) {
    it(`cannot be ${sheet}`, () => {
      const [first, ...others] = messages(spec(sheet));
      assert.deepEqual(others, []);
      assert.ok(first?.startsWith(problem), first);
    });
  }

  it('may have a margin that leaves a little of it', () => {
    assert.deepEqual(messages(spec('{size: [600, 300], margin: 149}')), []);
  });
});
