import assert from 'node:assert/strict';
import { scaling, transform } from '../../../src/geometry/affine.ts';
import { difference, offset } from '../../../src/geometry/clipper.ts';
import { area, boxCentre, centroid } from '../../../src/geometry/measure.ts';
import { centreOf } from '../../../src/tag/made-shape.ts';
import { assertNear, make, makeShape, report, specOf } from '../support/engine.ts';

describe('Sizes', () => {
  for (const shape of [
    'text: Sorrel, font: Pacifico, width: 82',
    'text: Fennel, font: Nunito, weight: 800, width: 82',
    'text: Tansy, font: Great Vibes, width: 82',
    'ellipse: [30, 20], width: 82',
    'polygon: {sides: 5, across: 30}, width: 82',
  ]) {
    for (const grow of [0, 0.5, 2, -0.3]) {
      it(`end at the width asked for, whatever the growth: {${shape}, grow: ${grow}}`, async () => {
        assertNear((await makeShape(`{${shape}, grow: ${grow}}`)).width, 82, 0.01);
      });
    }
  }

  it('keep the proportions with one figure and follow both with two', async () => {
    const one = await makeShape('{rectangle: [30, 20], width: 60}');
    assertNear(one.height, 40, 1e-4);
    const tall = await makeShape('{rectangle: [30, 20], height: 10}');
    assertNear(tall.width, 15, 1e-4);
    const both = await makeShape('{text: Sage, font: Pacifico, width: 70, height: 18, grow: 0.4}');
    assertNear(both.width, 70, 0.01);
    assertNear(both.height, 18, 0.01);
  });

  it('of lettering in millimetres are the em: twice as large, four times the area', async () => {
    const small = await makeShape('{text: Sage, font: Nunito, size: 10}');
    const large = await makeShape('{text: Sage, font: Nunito, size: 20}');
    assertNear(large.width / small.width, 2, 1e-3);
    assertNear(large.area / small.area, 4, 2e-3);
  });

  it('grow as an offset does, and thin as one does', async () => {
    assertNear((await makeShape('{rectangle: [80, 40], grow: 2}')).area, 3692.56637, 0.07);
    assertNear((await makeShape('{rectangle: [80, 40], grow: -2}')).area, 2736, 1e-3);
    assertNear((await makeShape('{rectangle: [80, 40], grow: 2, corners: miter}')).area, 84 * 44, 1e-3);
  });

  it('tidy goes by the finished size of a hole, as growth leaves it', async () => {
    const holes = async (tidy: number) => {
      const { report } = await makeShape(
        `{difference: [{rectangle: [20, 20]}, {rectangle: [1.6, 1.6]}], tidy: ${tidy}, grow: 0.5}`,
      );
      return report.tag!.pieces[0]!.region.length - 1;
    };
    // 1.6 mm less twice 0.5 mm leaves 0.6 mm.
    assert.deepEqual([await holes(0.5), await holes(0.7), await holes(1.5)], [1, 0, 0]);
  });

  it('tidy drops what is smaller than it and nothing else', async () => {
    const specks =
      '{union: [{rectangle: [20, 20]}, {ellipse: 0.8, nudge: {right: 30}}, {ellipse: 3, nudge: {left: 30}}], tidy: 1}';
    const made = await makeShape(specks);
    assertNear(made.area, 400 + Math.PI * 2.25, 0.05);
    assert.equal(made.region.length, 2);
  });

  it('are the same in inches', async () => {
    const shapes = ['word: {text: Mint, font: Pacifico, width: W, grow: G}', 'body: {around: word, by: B}'];
    const fill = (w: string, g: string, b: string) =>
      shapes.map((line) => line.replace('W', w).replace('G', g).replace('B', b));
    const piece = 'body: [body], hanger: {ring: {at: left, diameter: O}}';
    const inches = await make(specOf(fill('3', '1/50', '1/4'), piece.replace('O', '1/8'), ['units: in']));
    const mm = await make(specOf(fill('76.2', '0.508', '6.35'), piece.replace('O', '3.175')));
    const mixed = await make(specOf(fill('3 in', '0.508 mm', '0.25 in'), piece.replace('O', '1/8 in')));
    assert.deepEqual(inches.region, mm.region);
    assert.deepEqual(mixed.region, mm.region);
  });
});

describe('Turning and mirroring', () => {
  // A triangle whose right angle is at the lower left.
  const triangle = 'polygon: {points: [[0, 0], [0, 30], [40, 30]]}';

  it('turn clockwise as CSS does', async () => {
    const upright = centroid((await makeShape(`{${triangle}}`)).region)!;
    const made = await makeShape(`{${triangle}, rotate: 90}`);
    assertNear(made.width, 30, 1e-4);
    assertNear(made.height, 40, 1e-4);
    const centre = { x: 20, y: -15 };
    // Clockwise by a right angle: (x, y) from the centre goes to (y, −x).
    const turned = centroid(made.region)!;
    assertNear(turned.x - centre.x, upright.y - centre.y, 1e-4);
    assertNear(turned.y - centre.y, -(upright.x - centre.x), 1e-4);
  });

  it('mirror about the middle of the box', async () => {
    const upright = centroid((await makeShape(`{${triangle}}`)).region)!;
    const sideways = centroid((await makeShape(`{${triangle}, mirror: left-right}`)).region)!;
    assertNear(sideways.x, 40 - upright.x, 1e-4);
    assertNear(sideways.y, upright.y, 1e-4);
    const upsideDown = await makeShape(`{${triangle}, mirror: up-down}`);
    assertNear(centroid(upsideDown.region)!.y, -30 - upright.y, 1e-4);
    assertNear(upsideDown.area, 600, 1e-4);
  });
});

describe('Placing', () => {
  const frame = 'frame: {rectangle: [100, 60], nudge: {right: 7, up: 3}}';
  const expected = {
    center: { x: 7, y: 3 },
    top: { x: 7, maxY: 28 },
    bottom: { x: 7, minY: -22 },
    left: { minX: -38, y: 3 },
    right: { maxX: 52, y: 3 },
    'top-left': { minX: -38, maxY: 28 },
    'top-right': { maxX: 52, maxY: 28 },
    'bottom-left': { minX: -38, minY: -22 },
    'bottom-right': { maxX: 52, minY: -22 },
  };
  for (const [at, want] of Object.entries(expected)) {
    it(`at ${at} keeps the margin from that side`, async () => {
      const { bounds } = await makeShape(`{rectangle: [20, 10], place: {on: frame, at: ${at}, margin: 5}}`, [frame]);
      const has: Record<string, number> = { ...bounds, ...boxCentre(bounds) };
      for (const [key, value] of Object.entries(want)) assertNear(has[key]!, value, 1e-4, key);
    });
  }

  it('by box, mass and x-height brings those centres together', async () => {
    const word = (by: string) => `{text: Sage, font: Nunito, width: 40, place: {on: frame, by: ${by}}}`;
    const byBox = await makeShape(word('box'), [frame]);
    assertNear(boxCentre(byBox.bounds).x, 7, 1e-4);
    assertNear(boxCentre(byBox.bounds).y, 3, 1e-4);
    const byMass = centroid((await makeShape(word('mass'), [frame])).region)!;
    assertNear(byMass.x, 7, 1e-4);
    assertNear(byMass.y, 3, 1e-4);
    // “x” has no part above or below its band.
    const byBand = await makeShape('{text: x, font: Nunito, width: 10, place: {on: frame, by: x-height}}', [frame]);
    assertNear(boxCentre(byBand.bounds).y, 3, 0.15);
    const tall = await makeShape(word('x-height'), [frame]);
    assert.ok(Math.abs(boxCentre(tall.bounds).y - 3) > 0.3, 'S and g reach out of the band unevenly');
  });

  it('on a member of a stack means that member', async () => {
    const stack = [
      'neck: {rectangle: [20, 20]}',
      'plate: {rectangle: [80, 40]}',
      'both: {stack: {shapes: [neck, plate], lap: 4}}',
    ];
    const whole = await makeShape('{ellipse: 6, place: {on: both, by: box}}', stack);
    const part = await makeShape('{ellipse: 6, place: {on: both, part: plate, by: box}}', stack);
    // 56 in all: the plate's middle lies 28 − 20 = 8 below that of the whole.
    assertNear(boxCentre(part.bounds).y, boxCentre(whole.bounds).y - 8, 1e-4);
  });

  it('is followed by the nudge, in words', async () => {
    const { bounds } = await makeShape('{ellipse: 6, place: {on: frame, by: box}, nudge: {left: 2, down: 1 mm}}', [
      frame,
    ]);
    assertNear(boxCentre(bounds).x, 5, 1e-4);
    assertNear(boxCentre(bounds).y, 2, 1e-4);
  });
});

describe('Fitting', () => {
  const margin = 2;
  for (const [what, shape, room] of [
    ['a square in a disc', 'rectangle: [1, 1]', '{ellipse: 60}'],
    ['a word in a plate', 'text: BEANS, font: Nunito, weight: 800', '{rectangle: [80, 22], radius: 6}'],
    ['a turned word in an ellipse', 'text: Mint, font: Pacifico, rotate: 20', '{ellipse: [80, 50]}'],
    ['a grown script in a hexagon', 'text: Sage, font: Pacifico, grow: 0.5', '{polygon: {sides: 6, across: 70}}'],
    ['a word in an arrow', 'text: BEANS, font: Nunito, weight: 800', '{arrow: {length: 90, width: 40, shaft: 24}}'],
    [
      'a word in a star',
      'text: Oat, font: Pacifico',
      '{path: "M0 -40 L9 -12 L38 -12 L15 5 L24 32 L0 15 L-24 32 L-15 5 L-38 -12 L-9 -12 Z"}',
    ],
    [
      'a bar in a bow whose middle is outside',
      'rectangle: [3, 1]',
      '{path: "M0 0 A40 40 0 0 1 80 0 L60 0 A20 20 0 0 0 20 0 Z"}',
    ],
    ['a disc beside a hole', 'ellipse: 1', '{difference: [{rectangle: [80, 40]}, {ellipse: 24}]}'],
    [
      'letters in a step',
      'text: HI, font: Nunito, weight: 800',
      '{polygon: {points: [[0, 0], [60, 0], [60, 15], [30, 15], [30, 40], [0, 40]]}}',
    ],
  ] as const) {
    it(`makes ${what} as large as goes in, and no larger`, async () => {
      const text = specOf(
        [`room: ${room}`, `body: {${shape}, fit: {in: room, margin: ${margin} mm}}`],
        'body: [room], engrave: [body]',
      );
      const made = await make(text);
      const piece = made.pieces[0]!;
      const fitted = piece.marks[0]!.region;
      assert.ok(area(fitted) > 1, 'something goes in');
      const free = offset(piece.region, -margin);
      assertNear(area(difference(fitted, [free])), 0, 0.01, 'outside');
      // Scaled about the point that it is centred by, it sticks out when it is a thousandth larger.
      const [, solid] = [...made.report.tag!.made].find(([each]) => each.name === 'body')!;
      const larger = transform(fitted, scaling(1.001, 1.001, centreOf(solid, 'eye')!));
      assert.ok(area(difference(larger, [free])) > 1e-7, 'a thousandth larger it would still go in');
    });
  }

  it('of a square in a disc is exact: side (D − 2m)/√2', async () => {
    const text = specOf(
      ['room: {ellipse: 60}', 'body: {rectangle: [1, 1], fit: {in: room, margin: 2}}'],
      'body: [body]',
    );
    assertNear((await make(text)).width, 56 / Math.SQRT2, 0.01);
  });

  it('says so where there is no room', async () => {
    const text = specOf(['room: {rectangle: [20, 3]}', 'body: {text: A, fit: {in: room, margin: 2}}']);
    const { issues } = await report(text);
    assert.ok(issues.some((issue) => issue.code === 'empty-shape'));
  });
});
