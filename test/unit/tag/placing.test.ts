/** Where a shape goes that is centred on another for the eye. */

import assert from 'node:assert/strict';
import { boundsOf, centroid } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { make, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';

const markOf = (made: Made): Region => made.pieces[0]!.marks[0]!.region;

/** Distances of what is engraved from the edges of the plate. */
async function marginsOf(shape: string, [width, height]: readonly [number, number]) {
  const made = await make(
    specOf([`plate: {rectangle: [${width}, ${height}]}`, shape], 'body: [plate], engrave: [mark]'),
  );
  const { minX, minY, maxX, maxY } = boundsOf(markOf(made))!;
  return { above: height / 2 - maxY, below: minY + height / 2, left: minX + width / 2, right: width / 2 - maxX };
}

const words = ['Odile', 'Will', 'Anna', 'gypsy', 'Zoë', 'Jürgen', 'HELLO', 'ace', 'Peggy', 'Philippa', 'Tom', 'yeah'];

describe('Centring for the eye', () => {
  for (const font of ['Pacifico', 'Nunito', 'Great Vibes', 'Alfa Slab One']) {
    it(`leaves no word in ${font} with a margin of more than twice the opposite one, on a plate with room or without`, async () => {
      for (const word of words) {
        for (const height of [40, 30, 26]) {
          const mark = `mark: {text: ${word}, font: ${font}, height: 25, place: plate}`;
          const { above, below } = await marginsOf(mark, [300, height]);
          const [less, more] = [above, below].sort((a, b) => a - b) as [number, number];
          assert.ok(less >= more / 2 - 1e-6, `${word} on ${height} mm: ${above} above, ${below} below`);
        }
      }
    });
  }

  it('is half-way between the middle of the box and the centre of gravity', async () => {
    const made = await make(
      specOf(
        ['plate: {rectangle: [90, 60]}', 'mark: {text: Odile, font: Pacifico, width: 60, place: plate}'],
        'body: [plate], engrave: [mark]',
      ),
    );
    const region = markOf(made);
    const { minX, minY, maxX, maxY } = boundsOf(region)!;
    const { x, y } = centroid(region)!;
    assert.ok(Math.abs((minX + maxX) / 2 + x) < 1e-6);
    assert.ok(Math.abs((minY + maxY) / 2 + y) < 1e-6);
  });

  it('keeps a triangle on a triangle about concentric, however little room there is', async () => {
    // It stands on its tip. Exact: 2 mm smaller all round, its base is 2 mm and its tip 4 mm further in.
    const made = await make(
      specOf(
        ['plate: {polygon: {points: [[0, 0], [60, 0], [30, 51.9615]]}}', 'mark: {from: plate, grow: -2, place: plate}'],
        'body: [plate], engrave: [mark]',
      ),
    );
    const [outer, inner] = [boundsOf(made.region)!, boundsOf(markOf(made))!];
    assert.ok(Math.abs(outer.maxY - inner.maxY - 2) < 0.6, `${outer.maxY - inner.maxY}`);
  });

  it('goes as far to a side that has been chosen as its margin says', async () => {
    const { above } = await marginsOf(
      'mark: {text: Odile, font: Pacifico, height: 25, place: {on: plate, at: top, margin: 1}}',
      [80, 40],
    );
    assert.ok(Math.abs(above - 1) < 1e-6, `${above}`);
  });
});
