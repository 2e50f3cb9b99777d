import assert from 'node:assert/strict';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import { assertNear, make, report, specOf } from '../support/engine.ts';

const shapes = [
  'word: {text: Angelica, font: Pacifico, width: 60, grow: 0.4}',
  'plate: {rectangle: [50, 20], radius: 4}',
  'round: {ellipse: 30}',
];

describe('The size of a whole piece', () => {
  for (const [body, hanger, size] of [
    ['word', 'ring: {at: left}', 'width: 90'],
    ['word', 'ring: {at: auto}', 'height: 30'],
    ['word', 'ring: {at: top-right, sink: 0.5}', 'width: 41.5'],
    ['plate', 'hole: {at: left}', 'width: 120'],
    ['plate', 'slot: {at: top}', 'height: 64'],
    ['round', 'ring: {at: 45}', 'width: 3 in'],
  ] as const) {
    it(`is what is asked for, its ring included: ${body} with {${hanger}}, ${size}`, async () => {
      const made = await make(specOf(shapes, `body: [${body}], hanger: {${hanger}}, ${size}`, ['tie: {twine: 2}']));
      const [side, asked] = size.split(': ') as ['width' | 'height', string];
      assertNear(made[side], asked.endsWith('in') ? 76.2 : Number(asked), 0.005, side);
      // Exact: the hole is that of the tie, twice the twine, whatever the size.
      const opening = boundsOf(made.pieces[0]!.hangers[0]!.opening)!;
      assertNear(opening.maxY - opening.minY, hanger.startsWith('slot') ? 3 : 4, 0.01);
    });
  }

  it('scales openings and marks with the body, and keeps proportions', async () => {
    const piece = (size: string) =>
      `body: [plate], cut: [{ellipse: 6, nudge: {right: 10}}], engrave: [{ellipse: [20, 4]}]${size}`;
    const plain = await make(specOf(shapes, piece('')));
    const twice = await make(specOf(shapes, piece(', width: 100')));
    assertNear(twice.area, 4 * plain.area, 0.01);
    assertNear(twice.height, 2 * plain.height, 1e-3);
    assertNear(area(twice.pieces[0]!.marks[0]!.region), 4 * area(plain.pieces[0]!.marks[0]!.region), 0.01);
  });

  it('leaves the margin and the largest size of what is fitted as they are on the finished piece', async () => {
    for (const width of [30, 120]) {
      const made = await make(
        specOf(
          [
            ...shapes,
            'name: {text: Sorrel, fit: {in: round, margin: 3}}',
            'small: {text: Rue, fit: {in: round, at_most: {x_height: 2}}}',
          ],
          `body: [round], engrave: [name, small], width: ${width}`,
        ),
      );
      const [name, small] = made.pieces[0]!.marks;
      const reach = Math.max(...name!.region.flat().map(({ x, y }) => Math.hypot(x, y)));
      assertNear(width / 2 - reach, 3, 0.05, `margin of the name, ${width} mm`);
      assertNear(small!.lettering![0]!.xHeight, 2, 1e-3, `x-height, ${width} mm`);
    }
  });

  it('is followed by what is glued on, and by what is glued on that', async () => {
    const text = `tagwright: 1
shapes:
  plate: {rectangle: [50, 20]}
  badge: {ellipse: [20, 10]}
  dot: {ellipse: 4}
pieces:
  dots: {body: [dot], glue_to: front}
  front: {body: [badge], glue_to: back}
  back: {body: [plate], width: 75}
`;
    const { pieces } = await make(text);
    const widths = pieces.map(({ region }) => boundsOf(region)!.maxX - boundsOf(region)!.minX);
    assertNear(widths[0]!, 6, 1e-3);
    assertNear(widths[1]!, 30, 1e-3);
    assertNear(widths[2]!, 75, 1e-3);
  });

  it('is one side of a piece that hangs by itself', async () => {
    const messages = async (piece: string) =>
      (await report(specOf(shapes, piece))).issues.map(({ code, path }) => `${code} ${path.join('/')}`);
    assert.deepEqual(await messages('body: [plate], width: 90, height: 40'), ['bad-value pieces/tag/width']);
    const glued =
      'tagwright: 1\nshapes: {a: {ellipse: 9}}\npieces: {b: {body: [a]}, c: {body: [a], glue_to: b, width: 30}}\n';
    assert.deepEqual(
      (await report(glued)).issues.map(({ code }) => code),
      ['bad-value'],
    );
    // A ring of 2.8 + 2 · 1.78 mm alone is wider than that.
    assert.deepEqual(await messages('body: [round], hanger: {ring: {at: top}}, width: 3'), [
      'empty-shape pieces/tag/width',
    ]);
  });
});
