import assert from 'node:assert/strict';
import { inUnits, limit, mm, mm2, mmByMm, mmWide } from '../../../src/core/figures.ts';
import { make, report, specOf } from '../support/engine.ts';

describe('Figures in messages', () => {
  it('are in the unit of the spec (1 in = 25.4 mm, CSS Values)', () => {
    const message = `Only ${mm(0.9204)} of ${mm(134.2, 0)}, ${mmByMm(25.4, 50.8, 1)}, ${mm2(645.16)}, ${mm(1)} → ${mm(2)}.`;
    assert.equal(inUnits(message, 'mm'), 'Only 0.92 mm of 134 mm, 25.4 × 50.8 mm, 645 mm², 1.00 → 2.00 mm.');
    assert.equal(inUnits(message, 'in'), 'Only 0.036 in of 5.3 in, 1.00 × 2.00 in, 1.000 in², 0.039 → 0.079 in.');
    assert.equal(
      inUnits('“3 mm plate” is 2 mm × wide', 'in'),
      '“3 mm plate” is 2 mm × wide',
      'what people write stays',
    );
    assert.equal(
      inUnits('“3 2 length” hangs askew', 'mm'),
      '“3 2 length” hangs askew',
      'also what looks like a figure',
    );
    assert.equal(inUnits(`(${mm(0.5)}) and “${limit(6)}”`, 'mm'), '(0.50 mm) and “6 mm”', 'right beside other signs');
  });

  it('differ from their limit, with more decimals where they need them', () => {
    const near = `Only ${mm(0.99)} between the hole and “ring”; minimum ${mm(1)}.`;
    assert.equal(inUnits(near, 'in'), 'Only 0.0390 in between the hole and “ring”; minimum 0.0394 in.');
    assert.equal(inUnits(near, 'mm'), 'Only 0.99 mm between the hole and “ring”; minimum 1.00 mm.');
    assert.equal(inUnits(`Only ${mm(1.4992)}; minimum ${mm(1.5)}.`, 'mm'), 'Only 1.499 mm; minimum 1.500 mm.');
    assert.equal(
      inUnits(`It is ${mm(1.4992)} and can be at least ${limit(1.5)}.`, 'mm'),
      'It is 1.499 mm and can be at least 1.5 mm.',
    );
    // Nobody could tell them apart, and others are not compared.
    assert.equal(inUnits(`Only ${mm(1.5 - 1e-9)}; minimum ${mm(1.5)}.`, 'mm'), 'Only 1.50 mm; minimum 1.50 mm.');
    assert.equal(inUnits(mmByMm(12.001, 12.003), 'mm'), '12.00 × 12.00 mm');
  });

  it('say of a width that rounds to nothing what it is at most', () => {
    const bridge = (width: number): string => `Weak: only ${mmWide(width)} joins; minimum ${mm(1.5)}.`;
    assert.equal(inUnits(bridge(0), 'mm'), 'Weak: only 0.01 mm or less joins; minimum 1.50 mm.');
    assert.equal(inUnits(bridge(0.004), 'mm'), 'Weak: only 0.01 mm or less joins; minimum 1.50 mm.');
    assert.equal(inUnits(bridge(0.006), 'mm'), 'Weak: only 0.01 mm joins; minimum 1.50 mm.');
    assert.equal(inUnits(bridge(0.004), 'in'), 'Weak: only 0.001 in or less joins; minimum 0.059 in.');
    assert.equal(inUnits(`Only ${mmWide(0)} is left`, 'mm'), 'Only 0.01 mm or less is left');
    assert.equal(inUnits(`Moved by ${mm(0)}`, 'mm'), 'Moved by 0.00 mm', 'what is no width may be nothing');
  });

  it('are so in what is found on a tag and in what is wrong with a length', async () => {
    const spec = (units: string) =>
      specOf(['a: {ellipse: 20 mm}', 'b: {ellipse: 20 mm, nudge: {right: 16 mm}}'], 'body: [a, b]', [
        `units: ${units}`,
        'stock: {min_web: 13 mm}',
      ]);
    // Exact: two discs of radius 10 whose centres are 16 apart meet in a chord of 12.
    assert.match(
      (await make(spec('mm'))).issues[0]!.message,
      /only (11\.99|12\.00) mm of material joins parts of .* mm²; minimum 13\.00 mm/,
    );
    assert.match(
      (await make(spec('in'))).issues[0]!.message,
      /only 0\.472 in of material joins parts of .* in²; minimum 0\.512 in/,
    );
    const wide = await report(specOf(['a: {rectangle: [2, 1], radius: 0.8}'], 'body: [a]', ['units: in']));
    assert.match(wide.issues[0]!.message, /half the shorter side, 0\.5 in\./);
    for (const { message } of [...(await make(spec('in'))).issues, ...wide.issues])
      assert.doesNotMatch(message, /[\uE000\uE001]/);
  });
});
