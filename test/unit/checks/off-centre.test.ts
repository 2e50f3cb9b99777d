import assert from 'node:assert/strict';
import { make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

/**
 * A 3 × 3 square less its upper right 2 × 2, `scale` times as large. Exact (Green's theorem): its centroid is at (1.1, 1.1), the
 * middle of its box at (1.5, 1.5); half-way between, which counts as its centre for the eye, 0.2 off the box on both ways.
 */
function ell(scale: number, rest = 'place: {on: plate, by: box}'): string {
  const at = (n: number) => (n * scale).toFixed(4);
  return `ell: {path: "M0 0 H${at(1)} V${at(2)} H${at(3)} V${at(3)} H0 Z", ${rest}}`;
}

function onPlate(shape: string, plate = '{rectangle: [60, 24]}'): Promise<Made> {
  return make(specOf([`plate: ${plate}`, shape], 'body: [plate]'));
}

describe('A shape centred by its box', () => {
  it('that looks off is told how far and which way', async () => {
    const made = await onPlate(ell(5));
    const issue = only(made, 'off-centre');
    assert.equal(issue.severity, 'info');
    assert.match(issue.message, /1\.00 mm too far left and 1\.00 mm too low/);
    assert.deepEqual(
      issue.points!.map(({ x, y }) => [x.toFixed(2), y.toFixed(2)]),
      [['-1.00', '-1.00']],
    );
    assert.equal(placeOf(made.report, issue).line, 4);
    assert.equal(placeOf(made.report, issue).text, '{on: plate, by: box}');
  });

  for (const [turn, direction] of [
    ['rotate: 90', 'too far left and 1.00 mm too high'],
    ['rotate: 180', 'too far right and 1.00 mm too high'],
    ['mirror: left-right', 'too far right and 1.00 mm too low'],
    ['mirror: up-down', 'too far left and 1.00 mm too high'],
  ] as const) {
    it(`is told the other way with ${turn}`, async () => {
      const issue = only(await onPlate(ell(5, `${turn}, place: {on: plate, by: box}`)), 'off-centre');
      assert.ok(issue.message.includes(`1.00 mm ${direction}`), issue.message);
    });
  }

  it('is silent below half a millimetre, and below a fiftieth of what it is centred on', async () => {
    // Off by 0.2 times the scale.
    assertSilent(await onPlate(ell(2.4)), 'off-centre');
    only(await onPlate(ell(2.6)), 'off-centre');
    // A fiftieth of 60 is 1.2.
    assertSilent(await onPlate(ell(5.9), '{rectangle: [100, 60]}'), 'off-centre');
    only(await onPlate(ell(6.1), '{rectangle: [100, 60]}'), 'off-centre');
  });

  it('is silent with the rule that it recommends, and where its maker chose the place', async () => {
    for (const rest of [
      'place: {on: plate, by: eye}',
      'place: {on: plate}',
      'place: {on: plate, by: mass}',
      'place: {on: plate, by: box, at: left}',
      'place: {on: plate, by: box}, nudge: {right: 1}',
    ]) {
      assertSilent(await onPlate(ell(5, rest)), 'off-centre', rest);
    }
  });

  it('is silent where it looks the same from all sides', async () => {
    for (const shape of [
      '{ellipse: [20, 8]}',
      '{rectangle: [20, 8], rotate: 30}',
      '{polygon: {sides: 6, across: 15}}',
    ]) {
      assertSilent(await onPlate(`dot: ${shape.slice(0, -1)}, place: {on: plate, by: box}}`), 'off-centre', shape);
    }
  });

  it('is told on a lopsided ground: the middle of an arrow’s box is not the middle of the arrow', async () => {
    // Exact: a right triangle of legs 60 and 30: box centre (30, 15), centroid (20, 10) from its right angle.
    const made = await onPlate(
      'dot: {ellipse: 5, place: {on: plate, by: box}}',
      '{polygon: {points: [[0, 0], [0, 30], [60, 30]]}}',
    );
    assert.match(only(made, 'off-centre').message, /5\.00 mm too far right and 2\.50 mm too high/);
  });

  it('is told on a member of a stack', async () => {
    const shapes = [
      'top: {rectangle: [20, 10]}',
      'base: {rectangle: [60, 24]}',
      'plate: {stack: {shapes: [top, base], lap: 1}}',
      ell(5, 'place: {on: plate, part: base, by: box}'),
    ];
    assert.match(
      only(await make(specOf(shapes, 'body: [plate]')), 'off-centre').message,
      /too far left and 1\.00 mm too low/,
    );
  });

  it('is told of lettering whose one tail, or whose initial, pushes the rest off the middle', async () => {
    const name = (text: string, by: string) =>
      onPlate(
        `name: {text: ${text}, font: Pacifico, size: 12, place: {on: plate, by: ${by}}}`,
        '{rectangle: [80, 24]}',
      );
    assert.match(only(await name('yeeeee', 'box'), 'off-centre').message, /too high/);
    assert.match(only(await name('Leeeee', 'box'), 'off-centre').message, /too low/);
    for (const text of ['sauerrose', 'HELLO']) assertSilent(await name(text, 'box'), 'off-centre');
    for (const text of ['yeeeee', 'Leeeee']) assertSilent(await name(text, 'eye'), 'off-centre');
  });

  it('is not told of a place that would leave one margin more than twice the other', async () => {
    // 0.2 × 15 = 3 off; with 11 mm of room above and below together, a sixth of that is as far as the eye goes.
    assert.match(
      only(await onPlate(ell(15), '{rectangle: [100, 56]}'), 'off-centre').message,
      /3\.00 mm too far left and 1\.83 mm too low/,
    );
    assertSilent(await onPlate(ell(15), '{rectangle: [47, 48]}'), 'off-centre');
  });
});

describe('A shape fitted to one side', () => {
  const heart = (width: number, rest = 'fit: {in: plate, margin: 4}', hanger = 'keyhole: top') =>
    make(
      specOf(
        [`plate: {heart: ${width}}`, `ab: {text: AB, font: Alfa Slab One, ${rest}}`],
        `body: [plate], engrave: [ab], hanger: {${hanger}}`,
      ),
    );

  it('of a heart whose middle a keyhole takes is told so, at its fit', async () => {
    const made = await heart(40);
    const issue = only(made, 'off-centre');
    assert.equal(issue.severity, 'info');
    assert.equal(
      issue.message,
      '“ab” is all on the left of “plate”: the keyhole at the top leaves too little room in the middle. A ring instead, or the keyhole elsewhere, would free it.',
    );
    assert.equal(placeOf(made.report, issue).text, '{in: plate, margin: 4}');
  });

  it('of a plate on which it reaches past the middle, but stands far from it', async () => {
    const plate = (text: string, hanger = 'slot: {at: top, width: 3, length: 9}') =>
      make(
        specOf(
          [
            'plate: {rectangle: [80, 40], radius: 4}',
            `name: {text: ${text}, font: Pacifico, fit: {in: plate, margin: 4}}`,
          ],
          `body: [plate], engrave: [name], hanger: {${hanger}}`,
        ),
      );
    const issue = only(await plate('Bo'), 'off-centre');
    assert.match(issue.message, /^“name” is \d+ mm to the (left|right) of the middle of “plate”: the slot at the top/);
    for (const made of [await plate('Marjoram'), await plate('Bo', 'ring: top')]) assertSilent(made, 'off-centre');
  });

  it('of a heart onto which it is glued', async () => {
    const glued = (hanger: string) =>
      make(
        specOf(
          ['plate: {heart: 40}', 'ab: {text: AB, font: Alfa Slab One, fit: {in: plate, margin: 4}}'],
          `body: [plate], hanger: {${hanger}}}\n  letters: {body: [ab], glue_to: tag, parts: many`,
        ),
      );
    const issue = only(await glued('keyhole: top'), 'off-centre');
    assert.equal(issue.piece, 'letters');
    assertSilent(await glued('ring: top'), 'off-centre');
  });

  it('is silent where it is in the middle, or where its maker put it', async () => {
    assertSilent(await heart(60), 'off-centre');
    assertSilent(await heart(40, undefined, 'ring: top'), 'off-centre');
    const beside = await make(
      specOf(
        [
          'plate: {rectangle: [60, 26]}',
          'dot: {heart: 16, place: {on: plate, at: right, margin: 4}}',
          'ab: {text: AB, font: Nunito, fit: {in: plate, margin: 4, at_most: {x_height: 5}}}',
        ],
        'body: [plate], engrave: [dot, ab], hanger: {hole: {at: top}}',
      ),
    );
    assertSilent(beside, 'off-centre', 'a drawing has the other side');
    assertSilent(await heart(40, 'nudge: {down: 0.1}, fit: {in: plate, margin: 4}'), 'off-centre');
  });
});
