/** The distances of `place` in a piece with a size of its own: millimetres of the finished piece, as those of `fit` are. */

import { boundsOf } from '../../../src/geometry/measure.ts';
import { assertNear, make, specOf } from '../support/engine.ts';

describe('In a piece of 20 mm that is made 60 mm wide', () => {
  const plate = 'plate: {rectangle: [20, 20]}';
  const marks = async (shapes: readonly string[], names: string) => {
    const made = await make(specOf([plate, ...shapes], `body: [plate], engrave: [${names}], width: 60`));
    return { bounds: made.bounds, boxes: made.pieces[0]!.marks.map(({ region }) => boundsOf(region)!) };
  };

  for (const [at, side] of [
    ['top', 'maxY'],
    ['bottom', 'minY'],
    ['left', 'minX'],
    ['right', 'maxX'],
  ] as const) {
    it(`a margin of 3 mm at the ${at} is 3 mm wide, whether or not the shape is fitted too`, async () => {
      for (const size of ['rectangle: [4, 2]', 'rectangle: [4, 2], fit: {in: plate, margin: 3}']) {
        const bar = `bar: {${size}, place: {on: plate, at: ${at}, margin: 3}}`;
        const { bounds, boxes } = await marks([bar], 'bar');
        assertNear(Math.abs(bounds[side] - boxes[0]![side]), 3, 0.02, size);
      }
    });
  }

  it('a gap of 2 mm is 2 mm wide, and the usual gap as wide as that', async () => {
    for (const gap of ['', ', gap: 2']) {
      const shapes = ['disc: {circle: 4, place: plate}', `bar: {rectangle: [4, 1], place: {below: disc${gap}}}`];
      const { boxes } = await marks(shapes, 'disc, bar');
      assertNear(boxes[0]!.minY - boxes[1]!.maxY, 2, 0.02);
    }
  });

  it('a shape that words go into stands as far from the edge as it says', async () => {
    const shapes = [
      'field: {rectangle: [14, 6], place: {on: plate, at: bottom, margin: 3}}',
      'words: {text: HHH, font: Nunito, fit: {in: field, margin: 0}}',
    ];
    const { bounds, boxes } = await marks(shapes, 'words');
    const field = 6 * 3;
    assertNear((boxes[0]!.minY + boxes[0]!.maxY) / 2 - bounds.minY, 3 + field / 2, 0.1);
  });

  it('what the body is put together from is scaled with its distances', async () => {
    const shapes = ['plate: {rectangle: [20, 20]}', 'tab: {rectangle: [4, 4], place: {above: plate, gap: -1}}'];
    const made = await make(specOf(shapes, 'body: [plate, tab], width: 60'));
    assertNear(made.height, 3 * (20 + 4 - 1), 0.02);
  });
});
