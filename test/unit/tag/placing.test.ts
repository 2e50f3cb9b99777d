/** Where a shape goes that is centred on another for the eye. */

import assert from 'node:assert/strict';
import { boundsOf, centroid } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertNear, make, specOf } from '../support/engine.ts';
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

describe('A margin at a side', () => {
  const barOn = async (plate: string, bar: string, at: string, margin: number): Promise<Region> =>
    markOf(
      await make(
        specOf(
          [`plate: {${plate}}`, `mark: {${bar}, place: {on: plate, at: ${at}, margin: ${margin}, by: box}}`],
          'body: [plate], engrave: [mark]',
        ),
      ),
    );

  it('is kept from the outline where that bends away: a bar on a disc is as far in as Pythagoras says', async () => {
    // Corners 15 mm to the sides on a circle of 30 − 3 mm.
    const low = boundsOf(await barOn('circle: 60', 'rectangle: [30, 8]', 'bottom', 3))!;
    assert.ok(Math.abs(low.minY + Math.sqrt(27 ** 2 - 15 ** 2)) < 0.02, `${low.minY}`);
    const left = boundsOf(await barOn('circle: 60', 'rectangle: [8, 30]', 'left', 3))!;
    assert.ok(Math.abs(left.minX + Math.sqrt(27 ** 2 - 15 ** 2)) < 0.02, `${left.minX}`);
    // On the diagonal: its corner is on that circle.
    const corner = boundsOf(await barOn('circle: 60', 'rectangle: [8, 8]', 'top-right', 3))!;
    assert.ok(Math.abs(Math.hypot(corner.maxX, corner.maxY) - 27) < 0.02, `${corner.maxX}, ${corner.maxY}`);
  });

  it('stays where the box has it: along a straight side, without a margin, and where there is no room', async () => {
    for (const [plate, margin, foot] of [
      ['rectangle: [80, 60]', 3, -27],
      ['circle: 60', 0, -30],
      ['circle: 32', 3, -13],
    ] as const) {
      const box = boundsOf(await barOn(plate, 'rectangle: [30, 8]', 'bottom', margin))!;
      assert.ok(Math.abs(box.minY - foot) < 0.01, `${plate}: ${box.minY}`);
    }
  });

  it('leaves words on the line on which they stand', async () => {
    const foot = async (more: string) =>
      boundsOf(await barOn('circle: 60', `text: mum, font: Nunito, width: 30${more}`, 'bottom', 3))!.minY;
    assert.ok(Math.abs((await foot(', align: baseline')) + 27) < 0.3, 'on its baseline');
    assert.ok((await foot('')) > -23);
  });
});

describe('Beside another shape', () => {
  const boxOf = async (shapes: readonly string[], use = 'engrave') => {
    const made = await make(specOf(['plate: {rectangle: [400, 400]}', ...shapes], `body: [plate], ${use}: [a, b]`));
    const [a, b] = made.pieces[0]!.marks.map(({ region }) => region);
    return { a: a!, b: boundsOf(b!)! };
  };

  it('a gap is between the outlines: two discs of which one is nudged are as far apart as Pythagoras says', async () => {
    // Centres 18 mm apart in height: radii 20 and 10, with 2 mm between them, are √(32² − 18²) apart along.
    const { b } = await boxOf([
      'a: {union: [{circle: 40}]}',
      'b: {union: [{circle: 20, nudge: {up: 18}}, {rectangle: [0.02, 0.02], nudge: {down: 28}}], place: {right_of: a, gap: 2}}',
    ]);
    const middle = (b.maxY + b.minY) / 2;
    assert.ok(Math.abs(middle) < 10, `${middle}`);
    const along = Math.sqrt(32 ** 2 - (b.maxY - 10) ** 2);
    assert.ok(Math.abs(b.minX + 10 - along) < 0.02, `${b.minX + 10} or ${along}`);
  });

  for (const [at, axis, sign] of [
    ['right_of', 'x', 1],
    ['left_of', 'x', -1],
    ['above', 'y', 1],
    ['below', 'y', -1],
  ] as const) {
    it(`a diamond ${at.replace('_', ' ')} another meets it corner to corner, and in its bay as deep as half of it`, async () => {
      const diamond = 'polygon: {points: [[-10, 0], [0, 10], [10, 0], [0, -10]]}';
      const near = (box: Awaited<ReturnType<typeof boxOf>>['b']) =>
        axis === 'x' ? (sign > 0 ? box.minX : -box.maxX) : sign > 0 ? box.minY : -box.maxY;
      for (const gap of [0, 2, -1.5]) {
        const { b } = await boxOf([`a: {${diamond}}`, `b: {${diamond}, place: {${at}: a, gap: ${gap}}}`]);
        assert.ok(Math.abs(near(b) - 10 - gap) < 0.01, `${gap}: ${near(b)}`);
      }
      // Two bars leave a bay 20 mm wide and 30 mm deep on each side.
      const bay =
        'a: {union: [{rectangle: [100, 4], nudge: {up: 12}}, {rectangle: [100, 4], nudge: {down: 12}}, {rectangle: [40, 24]}], rotate: ';
      const { b } = await boxOf([`${bay}${axis === 'x' ? 0 : 90}}`, `b: {circle: 8, place: {${at}: a, gap: 2}}`]);
      assert.ok(Math.abs(near(b) - (50 + 2 - 4)) < 0.01, `${near(b)}`);
    });
  }

  it('a heart beside a name joins it with a negative gap, and not without one', async () => {
    for (const [gap, parts] of [
      [0.5, 2],
      [-1, 1],
      [-2, 1],
    ] as const) {
      const made = await make(
        specOf(
          [
            'name: {text: Wilmette, font: Pacifico, x_height: 11, overlap: auto}',
            `heart: {heart: 16, place: {right_of: name, gap: ${gap}}}`,
          ],
          'body: [name, heart]',
        ),
      );
      assert.equal(partsOf(made.region).length, parts, `${gap}`);
    }
  });

  it('words below words keep their distance from the tails above, whatever letters meet', async () => {
    const foot = async (name: string) => {
      const { a, b } = await boxOf([
        `a: {text: ${name}, font: Nunito, x_height: 10}`,
        'b: {text: sow, font: Nunito, x_height: 3, place: {below: a, gap: 2}}',
      ]);
      return boundsOf(a)!.minY - b.maxY;
    };
    for (const name of ['Sage', 'pansy', 'Rue']) assert.ok(Math.abs((await foot(name)) - 2) < 0.01, name);
  });
});

describe('A name with align: baseline above a bar', () => {
  /** The middle of the bar is at 0; the box of what comes of both. */
  async function onBar(text: string, thick: number, font = 'Nunito, weight: 800'): Promise<Made> {
    const spec = specOf(
      [
        `bar: {rectangle: [120, ${thick}]}`,
        `name: {text: ${text}, font: ${font}, x_height: 12, overlap: auto, align: baseline, place: {above: bar, gap: -1}}`,
        'both: {union: [name, bar], tidy: 1.5}',
      ],
      'body: both',
      ['stock: {material: birch plywood, thickness: 3, kerf: 0}'],
    );
    return make(spec);
  }

  it('stands on it with its baseline, and what hangs down passes across it', async () => {
    const [flat, low] = [await onBar('mama', 3), await onBar('mampy', 3)];
    const [lower, upper] = [boundsOf(flat.region)!, boundsOf(low.region)!];
    for (const made of [flat, low]) {
      assert.deepEqual(made.issues, []);
      assert.equal(partsOf(made.region).length, 1);
    }
    // An m is an x-height high and a little over, and its feet are 1 mm deep in a bar whose upper edge is at 1.5.
    assertNear(lower.maxY, 1.5 - 1 + 12, 0.6, 'the top of the m');
    assertNear(upper.maxY, lower.maxY, 0.1, 'with tails or without');
    assert.ok(Math.abs(lower.minY + 1.5) < 0.01, 'nothing below the bar');
    assert.ok(upper.minY < -1.5 - 2, `${upper.minY}: the tails of y and p`);
  });

  it('is told of where the bar is so thick that it covers what hangs down', async () => {
    const { issues } = await onBar('Peggy', 8);
    assert.deepEqual(
      issues.map(({ code }) => code),
      ['hard-to-read'],
    );
  });
});
