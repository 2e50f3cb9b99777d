import assert from 'node:assert/strict';
import { outlinesOnly, withPackedOutlines } from '../../../src/tag/outlines-only.ts';
import { report } from '../support/engine.ts';
import { nameAndPlate } from '../support/tags.ts';

describe('A tag that waits for its sheet', () => {
  it('has the same outlines, marks and openings, and holds none of their points', async () => {
    const tag = outlinesOnly((await report(nameAndPlate())).tag!);
    const outlines = ({ pieces }: typeof tag) =>
      pieces.flatMap(({ region, marks, hangers }) => [
        region,
        ...marks.flatMap((mark) => [mark.region, ...(mark.lines ? [mark.lines] : [])]),
        ...hangers.map(({ opening }) => opening),
      ]);
    const waiting = withPackedOutlines(tag);
    assert.equal(outlines(tag).length, 7);
    assert.deepEqual(outlines(waiting), outlines(tag));
    const again = outlines(waiting);
    for (const [index, outline] of outlines(waiting).entries()) assert.notEqual(outline, again[index]);
  });
});
