import assert from 'node:assert/strict';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { make, newEngine, specOf } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

const code = 'across-grain';

/** A plate with a hole, upright if it is higher than wide. */
const plate = (width: number, height: number, stock = 'material: cherry, thickness: 2', more = '') =>
  specOf([`plate: {rectangle: [${width}, ${height}]}`], `body: [plate], hanger: {hole: top}${more}`, [
    `stock: {${stock}}`,
  ]);

describe('A long narrow piece of solid wood', () => {
  it('is told of with the grain across it: info where nobody said so, a warning where the stock does', async () => {
    const plain = only(await make(plate(36, 150)), code);
    assert.equal(plain.severity, 'info');
    assert.match(
      plain.message,
      /150 mm long and 36 mm wide, and the grain runs across it unless the stock says otherwise/,
    );
    const stated = only(await make(plate(36, 150, 'material: cherry, thickness: 2, look: {grain: left-right}')), code);
    assert.equal(stated.severity, 'warning');
    const lying = only(await make(plate(150, 36, 'material: cherry, thickness: 2, look: {grain: up-down}')), code);
    assert.match(lying.message, /look: {grain: left-right}/);
  });

  it('counts from three times its width and twenty times its thickness', async () => {
    only(await make(plate(36, 108.1)), code);
    assertSilent(await make(plate(36, 107.9)), code);
    only(await make(plate(12, 60.1, 'material: cherry, thickness: 3')), code);
    assertSilent(await make(plate(12, 59.9, 'material: cherry, thickness: 3')), code);
  });

  it('is left in peace with the grain along it, and so is what has none', async () => {
    for (const made of [
      plate(150, 36),
      plate(36, 150, 'material: cherry, thickness: 2, look: {grain: up-down}'),
      plate(36, 150, 'material: cherry, thickness: 2, look: {grain: none}'),
      ...['birch plywood', 'MDF', 'cast acrylic', 'something else'].map((name) =>
        plate(36, 150, `material: ${name}, thickness: 2`),
      ),
      plate(36, 150, 'thickness: 2'),
    ])
      assertSilent(await make(made), code, made);
  });

  it('runs along a stick by itself', async () => {
    const stick = specOf(
      ['plate: {rectangle: [24, 30]}', 'stick: {stick: {carries: plate, length: 90}}'],
      'body: [plate, stick]',
      ['stock: {material: walnut, thickness: 3}'],
    );
    assertSilent(await make(stick), code);
  });

  it('is told of once for each stock, and not where pieces are glued together', async () => {
    const two = [
      'stock: {material: cherry, thickness: 2}',
      'shapes:',
      '  a: {rectangle: [30, 150]}',
      '  b: {rectangle: [20, 90]}',
    ];
    const spec = (glue: string) =>
      ['tagwright: 1', ...two, 'pieces:', '  back: {body: [a]}', `  front: {body: [b]${glue}}`, ''].join('\n');
    assert.equal(only(await make(spec('')), code).piece, 'back');
    assertSilent(await make(spec(', glue_to: back')), code);
  });

  it('is offered the sheet laid the other way, for the maker to decide', async () => {
    const engine = newEngine();
    const options = { locate: () => undefined };
    for (const stock of [
      'material: cherry, thickness: 2',
      'material: cherry, thickness: 2, look: {grain: left-right}',
    ]) {
      const text = plate(36, 150, stock);
      const report = await engine.compute(text, options);
      const [fix] = await findFixes(engine, report, only(report, code), options);
      assert.ok(fix?.isChoice, stock);
      assert.match(withEdits(text, fix.edits), /look: {grain: up-down}/);
    }
  });
});
