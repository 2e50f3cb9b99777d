import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { assertNear, make, specOf } from '../support/engine.ts';

const heart = 'heart: {heart: [70, 64]}';
const date =
  'date: {text: 14 May 2027, font: Nunito, weight: 700, fit: {in: heart, margin: 4, at_most: {x_height: 3}}}';

async function boxes(name: string, engrave = 'name, date', hole = '{at: top}', plate = heart) {
  const text = specOf([plate, name, date], `body: [heart], engrave: [${engrave}], hanger: {hole: ${hole}}`);
  const [first, second] = (await make(text)).pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
  return engrave.startsWith('name') ? { name: first!, date: second! } : { name: second!, date: first! };
}

describe('The order of words that are fitted', () => {
  const named = (name: string, rest: string) => `name: {text: ${name}, font: Pacifico, ${rest}}`;
  const fitted = (name: string) => named(name, 'fit: {in: heart, margin: 4, at_most: {x_height: 7}}');

  it('is that in which they are written, from top to bottom, whatever the name', async () => {
    // There is more room above some of them, as for Peggy, Otto and Ivy.
    for (const each of ['Rosa', 'Peggy', 'Otto', 'Ivy', 'Elisabeth']) {
      const { name, date: below } = await boxes(fitted(each));
      assert.ok(below.maxY < (name.minY + name.maxY) / 2, each);
    }
    const above = await boxes(fitted('Peggy'), 'date, name');
    assert.ok(above.name.maxY < above.date.minY);
  });

  it('counts a name in the middle, and none that is put elsewhere', async () => {
    const placed = await boxes(named('Peggy', 'x_height: 6, place: {on: heart}'));
    assert.ok(placed.date.maxY < placed.name.minY);
    const low = await boxes(named('Peggy', 'x_height: 6, place: {on: heart}, nudge: {down: 5}'));
    assert.ok(low.date.minY > (low.name.minY + low.name.maxY) / 2);
  });

  it('is given up where the words would be much smaller below', async () => {
    const name = named('Otto', 'x_height: 6, place: {on: heart}');
    for (const [hole, isBelow] of [
      ['{at: left, diameter: 2}', true],
      // Beside this one it would be three fifths as large, and aside.
      ['{at: bottom, diameter: 2}', false],
      ['{at: bottom, diameter: 15}', false],
    ] as const) {
      const plate = 'heart: {rectangle: [60, 36], radius: 17}';
      const found = await boxes(name, 'name, date', hole, plate);
      assert.equal(found.date.maxY < found.name.minY, isBelow, hole);
    }
  });

  it('beside a word in the middle of the plate is the written one, where that has as much room', async () => {
    const shapes = [
      'plate: {rectangle: [70, 40], radius: 4}',
      'day: {text: 5 May, font: Nunito, x_height: 2.2, place: {on: plate}}',
      'name: {text: Marigold, font: Pacifico, fit: {in: plate, margin: 3, clear: 2}}',
    ];
    for (const [engrave, isFirst] of [
      ['name, day', true],
      ['day, name', false],
    ] as const) {
      const { pieces } = await make(specOf(shapes, `body: [plate], engrave: [${engrave}], hanger: {ring: {at: top}}`));
      const [first, second] = pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
      assert.ok((first!.minY + first!.maxY) / 2 > second!.maxY, `${isFirst}`);
    }
  });

  it('is left where the room on the other side of a word in the middle is larger, with all names on one side', async () => {
    // The wall below the date is 11 mm high within the margin; above it, the roof is 24 mm high at its middle.
    for (const [name, date] of [
      ['Fern', '5 May'],
      ['Marigold', '12 June'],
      ['Ivy', '3 July'],
    ] as const) {
      const shapes = [
        'plate: {house: {size: [50, 50], roof: 20, eaves: 3}}',
        `day: {text: ${date}, font: Nunito, weight: 700, x_height: 2.2, place: {on: plate}}`,
        `name: {text: ${name}, font: Pacifico, fit: {in: plate, margin: 3, clear: 2}}`,
      ];
      const { pieces } = await make(specOf(shapes, 'body: [plate], engrave: [day, name], hanger: {ring: {at: top}}'));
      const [day, fitted] = pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
      assert.ok(fitted!.minY > (day!.minY + day!.maxY) / 2, name);
      if (name === 'Fern') assert.ok(fitted!.maxX - fitted!.minX > 33, `${fitted!.maxX - fitted!.minX}`);
    }
  });

  it('is left by a name of a size asked for too, where a hole leaves it little of that, and kept where it leaves most', async () => {
    for (const [name, hole, isAbove] of [
      ['Rosemary', 'hole: top', true],
      ['Ida', 'hole: top', true],
      ['Rosemary', 'hole: {at: top, diameter: 8}', false],
      ['Ida', 'hole: {at: top, diameter: 8}', false],
    ] as const) {
      const shapes = [
        'plate: {circle: 50}',
        `name: {text: ${name}, font: Pacifico, fit: {in: plate, margin: 4, clear: 2, at_most: {x_height: 6}}}`,
        'day: {text: "2026", font: Nunito, weight: 700, cap_height: 5, place: plate}',
      ];
      const { pieces } = await make(specOf(shapes, `body: [plate], engrave: [name, day], hanger: {${hole}}`));
      const [fitted, day] = pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
      assert.equal((fitted!.minY + fitted!.maxY) / 2 > (day!.minY + day!.maxY) / 2, isAbove, `${name}, ${hole}`);
    }
  });

  it('counts a word at the top, whichever is written first, and stands below its middle', async () => {
    // One letter alone would have more room beside the word.
    for (const letter of ['I', 'J', 'y', 'Gig']) {
      const shapes = [
        'label: {label: {size: [70, 28], clip: 7}}',
        `name: {text: ${letter}, font: Pacifico, fit: {in: label, margin: 3}}`,
        'to: {text: to, font: Great Vibes, x_height: 2.5, place: {on: label, at: top, margin: 3}}',
      ];
      const body = 'body: [label], engrave: [name, to], hanger: {hole: {at: left}}';
      const [name, to] = (await make(specOf(shapes, body))).pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
      assert.ok(name!.maxY < to!.minY, letter);
      assertNear((name!.minX + name!.maxX) / 2, (to!.minX + to!.maxX) / 2, 2.5, letter);
    }
  });

  it('is said where it cannot be kept, as the words before fill the plate', async () => {
    const squeezed = async (name: string, most = '') => {
      const shapes = [
        'plate: {rectangle: [70, 40], radius: 4}',
        `name: {text: ${name}, font: Pacifico, fit: {in: plate, margin: 3, clear: 2${most}}}`,
        'day: {text: sown in May, font: Nunito, weight: 700, fit: {in: plate, margin: 3, clear: 2}}',
      ];
      const body = 'body: [plate], engrave: [name, day], hanger: {hole: {at: left}}';
      return (await make(specOf(shapes, body))).issues.filter(({ code }) => code === 'squeezed');
    };
    // Beside the P, and beside what hangs down from the y.
    for (const name of ['Peggy', 'Lily']) {
      const [issue] = await squeezed(name);
      assert.match(issue!.message, /“name” leaves no line free below in “plate”, so “day” stands beside/, name);
      assert.deepEqual(issue!.path, ['shapes', 'day', 'fit']);
      assert.deepEqual(await squeezed(name, ', at_most: {x_height: 7}'), [], name);
    }
    assert.deepEqual(await squeezed('Marigold'), []);
  });

  it('keeps them on one upright line where a window has pushed the first aside', async () => {
    const shapes = [
      'plate: {label: {size: [100, 46], end: left}}',
      'window: {polygon: {sides: 6, across: 26}, place: {on: plate, at: right, margin: 8}}',
      'name: {text: Lentils, font: Nunito, weight: 700, fit: {in: plate, margin: 4}}',
      'price: {text: "3.50", font: Nunito, fit: {in: plate, margin: 4, at_most: {cap_height: 5}}}',
    ];
    const piece = 'body: [plate], cut: [window], engrave: [name, price], hanger: {hole: {at: left}}';
    const [name, price] = (await make(specOf(shapes, piece))).pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
    assert.ok(price!.maxY < name!.minY);
    assertNear((price!.minX + price!.maxX) / 2, (name!.minX + name!.maxX) / 2, 0.5);
  });

  it('is said where what a plate hangs by leaves them less than half of its width', async () => {
    const squeezed = async (hanger: string, engrave = 'edge, name', text = '"Please close\\nthe gate"') => {
      const shapes = [
        'plate: {rectangle: [156, 60], radius: 10}',
        'edge: {border: {of: plate, inset: 3, width: 1}}',
        `name: {text: ${text}, font: Nunito, fit: {in: plate, margin: 7}}`,
        'leaf: {ellipse: [40, 40], place: {on: plate, at: left, margin: 8}}',
      ];
      const made = await make(specOf(shapes, `body: [plate], engrave: [${engrave}], hanger: {${hanger}}`));
      return made.issues.flatMap(({ code, message }) => (code === 'squeezed' ? [message] : []));
    };
    assert.match(
      (await squeezed('keyhole: {at: top}')).join(),
      /^The keyhole at the top leaves “name” \d\d % of the size .* or break the words into fewer lines\.$/,
    );
    for (const hanger of ['ring: {at: top}', 'hole: {at: left}']) assert.deepEqual(await squeezed(hanger), []);
    // A long line has the width; beside a drawing, words are meant to be smaller.
    assert.deepEqual(await squeezed('keyhole: {at: top}', 'edge, name', 'Please close the gate'), []);
    assert.deepEqual(await squeezed('keyhole: {at: top}', 'edge, leaf, name'), []);
  });
});
