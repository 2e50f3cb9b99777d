import assert from 'node:assert/strict';
import { nest } from '../../../src/nesting/nest.ts';
import { assertKept, boxOf, never, sheetsOf } from '../support/sheets.ts';
import type { StripInstance } from '../support/strip-instances.ts';
import { blaz, fu } from '../support/strip-instances.ts';

/** How much of a strip is used, as a multiple of the published length. */
async function lengthOf({ parts, width, published }: StripInstance): Promise<number> {
  const room = { width, height: 2 * published, margin: 0, gap: 0, keep: 'width' } as const;
  const layout = await nest(parts, room, never);
  assertKept(parts, room, layout);
  assert.deepEqual([layout.sheets, layout.unplaced], [1, []]);
  return boxOf(sheetsOf(parts, layout)[0]!).maxY / published;
}

// Measured when this was written: 1.053 and 1.106. The methods of the literature take minutes to hours, this one a second.
describe('Strips of the literature take little more than the length that Gomes and Oliveira published in 2006', () => {
  it('for twelve convex parts turned by quarters (Fujita, Akagji and Kirokawa 1993)', async () => {
    const times = await lengthOf(fu);
    assert.ok(times < 1.07, String(times));
  });

  it('for 28 parts of seven shapes (Blazewicz, Hawryluk and Walkowiak 1993)', async () => {
    const times = await lengthOf(blaz);
    assert.ok(times < 1.12, String(times));
  });
});
