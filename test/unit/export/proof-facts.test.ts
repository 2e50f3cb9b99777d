import assert from 'node:assert/strict';
import { assembliesOf } from '../../../src/export/assemblies.ts';
import { sizeOf } from '../../../src/export/proof-facts.ts';
import { make, specOf } from '../support/engine.ts';

describe('The size on a proof', () => {
  for (const [thickness, words] of [
    ['0.25 mm', '0.25 mm thick'],
    ['0.95 mm', '0.95 mm thick'],
    ['1.05 mm', '1.1 mm thick'],
    ['3 mm', '3 mm thick'],
  ] as const) {
    it(`states ${words}`, async () => {
      const { report } = await make(
        specOf(['plate: {rectangle: [60, 30]}'], 'body: plate', [`stock: {thickness: ${thickness}}`]),
      );
      const [assembly] = assembliesOf(report.tag!.pieces);
      assert.equal(sizeOf(assembly!, report.tag!), `60 mm wide, 30 mm high, ${words}`);
    });
  }
});
