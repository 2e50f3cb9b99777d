import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { markdownTable } from '../../../src/dev/markdown-table.ts';
import { filesWithWebTable, webTable } from '../../../src/dev/min-web-table.ts';
import { materialNames } from '../../../src/strength/materials.ts';
import { defaultMinWeb, webDefaultOf } from '../../../src/spec/model/min-web-defaults.ts';
import { parseSpec } from '../../../src/spec/parse.ts';

function stockOf(stock: string) {
  const { model, issues } = parseSpec(
    `tagwright: 1\nstock: {${stock}}\nshapes:\n  p: {ellipse: 40}\npieces:\n  t: {body: [p]}\n`,
  );
  assert.deepEqual(issues, []);
  return model!.stock;
}

describe('What min_web is where it is left out', () => {
  // The numbers are our own judgement, but for the 1.5 mm of plywood, which is common practice without a source.
  for (const [material, web, least] of [
    ['birch plywood', 1.5, 0.8],
    ['Baltic birch ply, 3 mm', 1.5, 0.8],
    ['birch', 1.5, 0.8],
    ['paper birch', 2, 1],
    ['birch veneer', 2, 1],
    ['walnut veneered MDF', 1.5, 0.8],
    ['hardboard', 1.5, 0.8],
    ['bamboo', 1.5, 0.8],
    ['Black walnut, oiled', 2, 1],
    ['basswood', 2, 1],
    ['cherry red acrylic', 2, 1],
    ['PMMA', 2, 1],
    ['pine green card', 1, 0.5],
    ['vegetable-tanned leather', 2, 1],
    ['cork', 3, 1.5],
    ['wool felt', 3, 1.5],
    ['something new', 1.5, 0.8],
  ] as const) {
    it(`is ${web} mm for ${material}, and ${least} mm at the least`, () => {
      const { minWeb, leastWeb } = stockOf(`material: "${material}", thickness: 3 mm, kerf: 0.16 mm`);
      assert.deepEqual([minWeb, leastWeb], [web, least]);
    });
  }

  it('is no more for a thicker sheet', () => {
    for (const thickness of [2, 3, 6, 10]) {
      assert.equal(stockOf(`material: birch plywood, thickness: ${thickness} mm`).minWeb, 1.5);
    }
  });

  it('is more for a thin rigid sheet, by √(2/t), up to one and a half times', () => {
    // By hand: 1.5·√(2/1.5) = 1.73, 1.5·√(2/1) = 2.12, and 1.5·1.5 = 2.25 from 2/2.25 = 0.89 mm on.
    for (const [thickness, web] of [
      [2, 1.5],
      [1.9, 1.5],
      [1.85, 1.6],
      [1.5, 1.7],
      [1, 2.1],
      [0.9, 2.2],
      [0.88, 2.3],
      [0.4, 2.3],
    ] as const)
      assert.equal(defaultMinWeb('birch plywood', thickness), web, `${thickness} mm`);
    assert.equal(defaultMinWeb('card', 0.4), 1);
    assert.equal(defaultMinWeb('felt', 1), 3);
  });

  it('is what the spec says where it says so, whatever the material', () => {
    const written = stockOf('material: cork, thickness: 6 mm, min_web: 0.6 mm, kerf: 0.2 mm');
    assert.deepEqual([written.minWeb, written.leastWeb], [0.6, 0.6]);
    assert.equal(stockOf('material: birch plywood, min_web: 4 mm').leastWeb, 0.8);
  });

  it('leaves no less than the kerf where nothing pulls', () => {
    assert.equal(stockOf('material: card, kerf: 0.6 mm').leastWeb, 0.6);
    assert.equal(stockOf('material: card, kerf: 0.4 mm').leastWeb, 0.5);
  });

  it('knows every material whose strength is known', () => {
    for (const name of materialNames) assert.notEqual(webDefaultOf(name).material, 'anything else', name);
  });

  it('stands in the guide and on the pages of the checks as it is', () => {
    for (const name of filesWithWebTable) {
      assert.ok(
        readFileSync(new URL(`../../../${name}`, import.meta.url), 'utf8').includes(markdownTable(webTable())),
        name,
      );
    }
  });
});

describe('What a hanger adds or leaves', () => {
  it('is as written, or else as wide as the sheet is thick, up to 3 mm', () => {
    for (const [stock, width] of [
      ['material: birch plywood, thickness: 2.9 mm', 2.9],
      ['material: birch plywood, thickness: 3 mm', 3],
      ['material: birch plywood, thickness: 3.1 mm', 3],
      ['material: birch plywood, thickness: 1 mm', 2.1],
      ['material: cork, thickness: 2 mm', 3],
      ['material: birch plywood, thickness: 6 mm, min_web: 1.2 mm', 1.2],
      ['kerf: 0.1 mm', 1.5],
    ] as const)
      assert.equal(stockOf(stock).hangerWeb, width, stock);
  });
});
