import assert from 'node:assert/strict';
import { make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

function onSheet(sheet: string, body: string, ...head: readonly string[]): Promise<Made> {
  return make(specOf([`body: ${body}`], 'body: [body], title: Mint', [`sheet: {${sheet}}`, ...head]));
}

async function fits(sheet: string, body: string, ...head: readonly string[]): Promise<boolean> {
  const made = await onSheet(sheet, body, ...head);
  return made.issues.every(({ code }) => code !== 'exceeds-sheet');
}

describe('A piece on a sheet', () => {
  it('that is too large is told its size and the room', async () => {
    const made = await onSheet('size: [90, 40], margin: 5', '{rectangle: [81, 20]}');
    const issue = only(made, 'exceeds-sheet');
    assert.equal(issue.severity, 'error');
    assert.equal(issue.piece, 'tag');
    assert.match(
      issue.message,
      /“Mint” does not fit the sheet in any rotation: it needs 81\.00 × 20\.00 mm, and there is room for 80\.00 × 30\.00 mm/,
    );
    assert.equal(placeOf(made.report, issue).line, 6);
  });

  it('may touch the margins', async () => {
    assert.ok(await fits('size: [90, 40], margin: 5', '{rectangle: [80, 30]}'));
    assert.ok(!(await fits('size: [90, 40], margin: 5', '{rectangle: [80.02, 30]}')));
    assert.ok(!(await fits('size: [90, 40], margin: 5', '{rectangle: [80, 30.02]}')));
  });

  it('may be turned, and be drawn anywhere', async () => {
    assert.ok(await fits('size: [40, 90]', '{rectangle: [90, 40], nudge: {right: 500}}'));
    for (const degrees of [13, 45, 90, 122]) {
      assert.ok(await fits('size: [90, 40]', `{rectangle: [90, 40], rotate: ${degrees}}`), String(degrees));
    }
  });

  it('is turned only if it is short enough for that', async () => {
    assert.ok(await fits('size: [90, 40]', '{rectangle: [35, 90]}'));
    assert.ok(!(await fits('size: [90, 40]', '{rectangle: [35, 95]}')));
  });

  it('may lie across a square: a × b goes into one of (a + b)/√2', async () => {
    // Exact: 130/√2 = 91.924.
    assert.ok(await fits('size: [91.95, 91.95]', '{rectangle: [120, 10]}'));
    assert.ok(!(await fits('size: [91.9, 91.9]', '{rectangle: [120, 10]}')));
  });

  // The largest rectangles in a rectangle: W. B. Carver, American Mathematical Monthly 64 (1957), from memory:
  // p × q with p > a goes into a × b from b = (2pqa + (p² − q²)·√(p² + q² − a²)) / (p² + q²).
  for (const [p, q, a] of [
    [120, 10, 110],
    [120, 10, 60],
    [300, 25, 299],
    [200, 60, 190],
  ] as const) {
    it(`may lie aslant: ${p} × ${q} on a sheet of which one side is ${a}`, async () => {
      const b = (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q);
      assert.ok(b > q && b < p);
      assert.ok(await fits(`size: [${a}, ${(b + 0.1).toFixed(3)}]`, `{rectangle: [${p}, ${q}]}`));
      assert.ok(!(await fits(`size: [${a}, ${(b - 0.1).toFixed(3)}]`, `{rectangle: [${p}, ${q}]}`)));
    });
  }

  it('is no smaller for being turned where it is round', async () => {
    assert.ok(await fits('size: [100, 100]', '{ellipse: 100}'));
    assert.ok(!(await fits('size: [100, 99.9]', '{ellipse: 100}')));
  });

  it('takes half the width of the beam more on every side', async () => {
    const sheet = 'size: [90, 40], margin: 5';
    const kerf = 'stock: {kerf: 0.2}';
    assert.ok(await fits(sheet, '{rectangle: [79.8, 29.8]}', kerf));
    const issue = only(await onSheet(sheet, '{rectangle: [79.9, 29]}', kerf), 'exceeds-sheet');
    assert.match(issue.message, /with the kerf it needs 80\.10 × 29\.20 mm/);
    assert.ok(!(await fits(sheet, '{rectangle: [79, 29.9]}', kerf)));
  });

  it('may be measured in inches', async () => {
    // 1 in = 25.4 mm.
    assert.ok(await fits('size: [12 in, 8 in], margin: 1/4 in', '{rectangle: [292.1, 190.5]}'));
    const made = await onSheet('size: [12, 8], margin: 0.25', '{rectangle: [11.6, 7]}', 'units: in');
    assert.match(
      only(made, 'exceeds-sheet').message,
      /it needs 11\.600 × 7\.000 in, and there is room for 11\.500 × 7\.500 in/,
    );
  });

  it('is judged piece by piece, its ring included', async () => {
    const text = `tagwright: 1
sheet: {size: [60, 30]}
shapes:
  large: {rectangle: [60, 28]}
  small: {rectangle: [30, 20]}
pieces:
  one: {body: [large], hanger: {ring: {at: top}}}
  two: {body: [small], glue_to: one}
`;
    assert.equal(only(await make(text), 'exceeds-sheet').piece, 'one');
    assertSilent(await make(text.replace('28', '18')), 'exceeds-sheet');
  });

  it('is not judged where no sheet is given', async () => {
    assertSilent(await make(specOf(['body: {rectangle: [3000, 2000]}'])), 'exceeds-sheet');
  });
});
