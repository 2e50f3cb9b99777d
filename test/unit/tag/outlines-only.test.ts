import assert from 'node:assert/strict';
import { outlinesOnly, withPackedOutlines } from '../../../src/tag/outlines-only.ts';
import { report } from '../support/engine.ts';

const spec = `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}
shapes:
  name: {text: Sage, font: Pacifico, x_height: 9 mm, overlap: 0.6 mm}
  plate: {label: {size: [60 mm, 30 mm]}}
  words: {text: Rue, font: single line, x_height: 6 mm, place: {on: plate, at: center}}
pieces:
  name: {body: [name], hanger: {ring: {at: left, diameter: 4 mm}}}
  plate: {body: [plate], engrave: [words], score: [{from: plate, grow: -2 mm}], hanger: {hole: {on: plate, at: left}}}
`;

describe('A tag that waits for its sheet', () => {
  it('has the same outlines, marks and openings, and holds none of their points', async () => {
    const tag = outlinesOnly((await report(spec)).tag!);
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
