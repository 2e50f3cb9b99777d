import assert from 'node:assert/strict';
import { captionFont } from '../../../src/export/job/job.ts';
import { PageBuilder } from '../../../src/export/page/page.ts';
import { newEngine } from '../support/engine.ts';

describe('Captions of a page', () => {
  it('hold an outline for each glyph that recurs, and of a letter only where it stands', async () => {
    const face = await captionFont(newEngine().fonts, 600);
    const page = new PageBuilder();
    for (const y of [10, 20]) page.caption('Sorrel, sown in March', face, { x: 5, y, size: 3 });
    const lines = page.drawings.map((each) => ('letters' in each ? each.letters : []));
    // Spaces have nothing to draw.
    assert.deepEqual(
      lines.map(({ length }) => length),
      [18, 18],
    );
    // Of thousands of lines whatever else a letter held would fill the memory until the last page is written.
    for (const letter of lines.flat()) assert.deepEqual(Object.keys(letter).sort(), ['outline', 'x', 'y']);
    const letters = new Set(Array.from('Sorrel,sowninMarch'));
    assert.equal(new Set(lines.flat().map(({ outline }) => outline)).size, letters.size);
  });
});
