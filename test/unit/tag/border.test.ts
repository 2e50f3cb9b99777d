import assert from 'node:assert/strict';
import { difference, intersection, offset } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, centroid } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';
import { assertNear, make, makeShape, report, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { Outlines } from '../support/distance.ts';
import { differenceAreaByJts, distanceByJts, intersectionAreaByJts } from '../support/reference.ts';
import { box, disc } from '../support/shapes.ts';

const plate = 'plate: {rectangle: [80, 40]}';

/** A border engraved on a plate, with what the piece has besides. */
function marked(border: string, more: string, shape = plate): Promise<Made> {
  return make(specOf([shape, `edge: {border: {of: plate, ${border}}}`], `body: [plate], engrave: [edge], ${more}`));
}

const markOf = ({ pieces }: Made): Region => pieces[0]!.marks[0]!.region;
const openingOf = ({ pieces }: Made): Region => pieces[0]!.hangers[0]!.opening;

/** Whether it is where the body itself has a corner. */
function isCornerOf(body: Region, ring: Ring): boolean {
  const at = centroid([ring])!;
  const corners = difference(body, [offset(offset(body, -4), 4)]).flatMap((each) => centroid([each]) ?? []);
  return corners.some(({ x, y }) => Math.hypot(x - at.x, y - at.y) < 5);
}

/** One band that closes on itself: one part with one hole. */
function assertClosed(region: Region): void {
  const parts = partsOf(region);
  assert.deepEqual(
    parts.map((part) => part.length),
    [2],
  );
}

// Areas are those of elementary geometry.
describe('A border', () => {
  it('runs as far from sharp bays, as between scallops, as from all else', async () => {
    const made = await marked('inset: 2', 'hanger: {ring: top}', 'plate: {scallops: {across: 50, lobes: 14}}');
    const outlines = new Outlines(made.pieces[0]!.body);
    const away = markOf(made)
      .flat()
      .map((point) => outlines.distance(point));
    assert.ok(away.length > 100);
    // The line is engraved with a width.
    for (const mm of away) assertNear(mm, 2, 0.11);
  });

  it('is the outline set in, less the same set in by its width', async () => {
    const straight = await makeShape('{border: {of: plate, inset: 3, width: 1}}', [plate]);
    assertNear(straight.area, 74 * 34 - 72 * 32, 1e-3);
    assertNear(straight.width, 74, 1e-4);
    const round = await makeShape('{border: {of: {ellipse: 50}, inset: 2, width: 0.8}}');
    assertNear(round.area, Math.PI * (23 ** 2 - 22.2 ** 2), 0.3);
    assertNear((await makeShape('{border: {of: plate, width: 1}}', [plate])).width, 76, 1e-4);
  });

  it('has a second line inside the first, as wide or by a width of its own', async () => {
    const alike = await makeShape('{border: {of: plate, inset: 3, width: 1, double: 2}}', [plate]);
    const first = 74 * 34 - 72 * 32;
    const usual = await makeShape('{border: {of: plate, inset: 3, width: 1, double: true}}', [plate]);
    assertNear(usual.area, first + 70 * 30 - 68 * 28, 1e-3);
    assertNear(alike.area, first + 68 * 28 - 66 * 26, 1e-3);
    const thin = await makeShape('{border: {of: plate, inset: 3, width: 1, double: {gap: 2, width: 0.5}}}', [plate]);
    assertNear(thin.area, first + 68 * 28 - 67 * 27, 1e-3);
  });

  it('rounds its corners: a rectangle less (4 − π)·r²', async () => {
    const { area: found } = await makeShape('{border: {of: plate, inset: 3, width: 1, radius: 5}}', [plate]);
    const rounded = (width: number, height: number, r: number) => width * height - (4 - Math.PI) * r * r;
    assertNear(found, rounded(74, 34, 5) - rounded(72, 32, 4), 0.1);
  });

  it('cuts its corners off: each takes as much of both sides', async () => {
    const { area: found } = await makeShape('{border: {of: plate, inset: 3, width: 1, clip: 5}}', [plate]);
    // Set in by 1, the legs of a corner at 45° are shorter by 2 − √2.
    const inner = 72 * 32 - 2 * (5 - (2 - Math.SQRT2)) ** 2;
    assertNear(found, 74 * 34 - 2 * 25 - inner, 0.01);
    // Half a side at most: a square becomes one that stands on its corner.
    const square = await makeShape('{border: {of: {rectangle: [20, 20]}, inset: 0, width: 9, clip: 90}}');
    assertNear(square.width, 20, 1e-4);
    assertNear(square.area, 200, 0.01);
  });

  it('leaves curves alone where corners are cut off', async () => {
    const [plain, clipped] = await Promise.all(
      ['', ', clip: 4'].map((more) => makeShape(`{border: {of: {ellipse: 50}, inset: 2, width: 1${more}}}`)),
    );
    assert.equal(clipped!.area, plain!.area);
  });

  it('cuts off rounded corners as pointed ones, and of each no less than its round takes', async () => {
    const round = 'plate: {rectangle: [80, 40], radius: 10}';
    const clipped = (clip: number, shape = round) =>
      makeShape(`{border: {of: plate, inset: 3, width: 1, clip: ${clip}}}`, [shape]);
    const square = await clipped(12, plate);
    assertNear((await clipped(12)).area, square.area, 0.01);
    // Set in by 3, the round takes 7 mm of either side.
    assertNear((await clipped(2)).area, (await clipped(7, plate)).area, 0.1);
  });

  it('says that it finds no corner to cut off', async () => {
    const said = async (shape: string, clip: string): Promise<string[]> => {
      const text = specOf(
        [shape, `edge: {border: {of: plate, inset: 3, width: 1${clip}}}`],
        'body: [plate], engrave: [edge]',
      );
      return (await report(text)).issues.filter(({ code }) => code === 'odd-value').map(({ message }) => message);
    };
    assert.deepEqual(await said('plate: {ellipse: 50}', ', clip: 4'), [
      '“clip” cuts nothing off: this outline has no corner between two straight sides.',
    ]);
    // Each end is one round.
    assert.equal((await said('plate: {rectangle: [80, 20], radius: 10}', ', clip: 4')).length, 1);
    assert.deepEqual(await said('plate: {ellipse: 50}', ''), []);
    assert.deepEqual(await said('plate: {rectangle: [80, 20], radius: 4}', ', clip: 4'), []);
    assert.deepEqual(await said('plate: {heart: 60}', ', clip: 4'), []);
  });

  for (const [what, shape, hanger] of [
    ['a hole at the edge', plate, '{hole: {at: top, diameter: 4, inset: 2}}'],
    ['a slot', plate, '{slot: {at: top, length: 11, inset: 3}}'],
    ['the hole of a label', 'plate: {label: {size: [90, 40]}}', '{hole: {at: left, diameter: 4, inset: 3}}'],
    ['a hole in a heart', 'plate: {heart: 50}', '{hole: {at: top, diameter: 4, inset: 2}}'],
  ] as const) {
    it(`goes round ${what} and keeps clear of it, in one closed line`, async () => {
      const made = await marked('inset: 2.5, width: 0.8', `hanger: ${hanger}`, shape);
      const region = markOf(made);
      assertClosed(region);
      assert.ok(distanceByJts(region, openingOf(made)) > 2.5 - 0.01);
      assert.equal(intersectionAreaByJts(region, openingOf(made)), 0);
      assert.ok(differenceAreaByJts(region, made.region) < 1e-6, 'stays on the piece');
    });
  }

  for (const [what, shape, hanger] of [
    ['a hole at the edge', plate, '{hole: {at: top, diameter: 4, inset: 2}}'],
    ['a slot', plate, '{slot: {at: top, length: 11, inset: 3}}'],
    ['two holes', plate, '{hole: {at: top, count: 2, diameter: 4, inset: 3}}'],
    ['a keyhole', 'plate: {oval: {size: [80, 46]}}', '{keyhole: top}'],
    ['a hole in a corner', plate, '{hole: {at: top-left, diameter: 4, inset: 3}}'],
    ['the hole of a house', 'plate: {house: {size: [56, 64]}}', '{hole: top}'],
  ] as const) {
    it(`has no horns beside ${what}: wherever it was not led aside, its turns are as round as asked for`, async () => {
      for (const lines of ['inset: 2, width: 0.8', 'inset: 2, width: 0.8, double: 0.8']) {
        const made = await marked(lines, `hanger: ${hanger}`, shape);
        const outer = partsOf(markOf(made)).map((part) => part[0]!)[0]!;
        const near = offset(openingOf(made), 8);
        // Our own rounding: an outline with bends of at least 1.9 mm everywhere stays as it is when it is opened with such a disc.
        const filled: Region = [outer];
        const opened = offset(offset(filled, -1.9), 1.9);
        const lost = intersection(difference(filled, [opened]), near);
        const corner = lost.filter((ring) => Math.abs(area([ring])) > 0.02 && !isCornerOf(made.pieces[0]!.body, ring));
        assert.deepEqual(corner, [], lines);
      }
    });
  }

  it('turns by no more than a chord of its curves at a time, on each of two lines, wherever it was led aside', async () => {
    for (const [shape, hanger] of [
      [plate, '{hole: {at: top, count: 2}}'],
      [plate, '{slot: top}'],
      ['plate: {oval: {size: [80, 46]}}', '{keyhole: top}'],
      ['plate: {circle: 60}', '{slot: {length: 14, width: 4, at: left}}'],
    ] as const) {
      const made = await marked('inset: 3, width: 1, double: 1', `hanger: ${hanger}`, shape);
      const openings = made.pieces[0]!.hangers.map(({ opening }) => centroid(opening)!);
      for (const ring of markOf(made))
        for (const [index, at] of ring.entries()) {
          if (!openings.some(({ x, y }) => Math.hypot(at.x - x, at.y - y) < 12)) continue;
          const [from, to] = [ring.at(index - 1)!, ring[(index + 1) % ring.length]!];
          const turn = Math.atan2(to.y - at.y, to.x - at.x) - Math.atan2(at.y - from.y, at.x - from.x);
          const degrees = Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * (180 / Math.PI);
          assert.ok(degrees < 20, `${hanger}: ${degrees.toFixed(0)}° at ${at.x.toFixed(1)}, ${at.y.toFixed(1)}`);
        }
    }
  });

  it('leaves the corners of the plate as sharp as they are, wherever a hole is', async () => {
    const corner: Region = [[...box(-38, 16, -36, 18)]];
    const made = await marked('inset: 2, width: 0.8', 'hanger: {hole: top}');
    const bare = await marked('inset: 2, width: 0.8', '');
    assertNear(intersectionAreaByJts(markOf(made), corner), intersectionAreaByJts(markOf(bare), corner), 1e-6);
  });

  it('keeps the barbs of an arrow: holes in its corners stay inside, a quarter nearer than elsewhere, unless a distance is asked for', async () => {
    const arrow = (border: string, hangers: string) =>
      make(
        specOf(
          [
            'plate: {arrow: {length: 90, width: 36, shaft: 24}}',
            `edge: {border: {of: plate, inset: 2, width: 0.8${border}}}`,
          ],
          `body: [plate], engrave: [edge]${hangers}`,
          ['stock: {material: birch plywood, thickness: 3 mm}'],
        ),
      );
    const holes = ', hanger: [{hole: {at: top-left}}, {hole: {at: top-right}}]';
    const plain = markOf(await arrow('', ''));
    const made = await arrow('', holes);
    assert.ok(area(difference(plain, [markOf(made)])) < 0.01 && area(difference(markOf(made), [plain])) < 0.01);
    for (const { opening } of made.pieces[0]!.hangers)
      assert.ok(distanceByJts(opening, markOf(made)) > 0.75 * 2, 'three quarters of the inset');
    const asked = markOf(await arrow(', clear: 2', holes));
    assert.ok(area(difference(plain, [asked])) > 10, 'it goes round them');
  });

  it('that loses one barb of an arrow to a bay leaves the opposite one too, straight on along the shaft', async () => {
    for (const mirror of ['', ', mirror: left-right']) {
      const made = await make(
        specOf(
          [
            `plate: {arrow: {length: 130, width: 60, shaft: 40, tail: pointed}${mirror}}`,
            'edge: {border: {of: plate, inset: 3, width: 0.8}}',
          ],
          'body: [plate], engrave: [edge], hanger: {hole: {at: top, count: 2, diameter: 4, spacing: 65}}',
          ['stock: {material: birch plywood, thickness: 4 mm}'],
        ),
      );
      const plain = await make(
        specOf(
          [
            `plate: {arrow: {length: 130, width: 60, shaft: 40, tail: pointed}${mirror}}`,
            'edge: {border: {of: plate, inset: 3, width: 0.8}}',
          ],
          'body: [plate], engrave: [edge]',
        ),
      );
      // The barbs of the border end 3 mm in from the slope, those of the shaft 3 mm in from its edges.
      assert.ok(boundsOf(markOf(plain))!.minY < -21);
      const { minY, maxY } = boundsOf(markOf(made))!;
      assertNear(minY, -17, 0.01, 'below');
      assertNear(maxY, 17, 0.6, 'above, beside the bay');
    }
  });

  it('is where it is led to for whatever is fitted beside it', async () => {
    const shapes = [
      'plate: {rectangle: [60, 40]}',
      'edge: {border: {of: plate, inset: 2, width: 0.8}}',
      'name: {text: Mugwort, font: Pacifico, fit: {in: plate, margin: 3, clear: 1.5}}',
    ];
    for (const use of ['engrave: [edge, name]', 'engrave: [name], score: [edge]']) {
      const { pieces } = await make(specOf(shapes, `body: [plate], ${use}, hanger: {hole: top}`));
      const [edge, name] = ['edge', 'name'].map((own) => pieces[0]!.marks.find(({ shape }) => shape.path[1] === own)!);
      const apart = distanceByJts(edge!.region, name!.region);
      assert.ok(apart >= 1.5 - 0.02, `${use}: ${apart} mm`);
    }
  });

  it('that leads through lettering is told at its line', async () => {
    const spec = (height: number) =>
      specOf(
        [
          `plate: {rectangle: [80, ${height}]}`,
          'edge: {border: {of: plate, inset: 2, width: 0.8}}',
          'name: {text: Lovage, font: Pacifico, width: 62, place: plate}',
        ],
        'body: [plate], engrave: [edge, name], hanger: {slot: top}',
      );
    assert.deepEqual((await report(spec(46))).issues, []);
    const { issues } = await report(spec(32));
    assert.ok(
      issues.some(({ code }) => code === 'marks-overlap'),
      issues.map(({ message }) => message).join('\n'),
    );
  });

  it('says so where openings leave it no way round, or hardly anything to go round', async () => {
    const messages = async (clear: number) => {
      const hanger = 'hanger: {slot: {length: 60, inset: 5, at: top}}';
      const made = await marked(`inset: 2, width: 0.8, clear: ${clear}`, hanger, 'plate: {rectangle: [80, 20]}');
      return made.issues.map(({ severity, message }) => `${severity}: ${message}`);
    };
    // Of 76 × 16 the bay takes 64 × 8, about two fifths, and 68 × 10, more than half.
    assert.deepEqual(await messages(2), []);
    assert.deepEqual(await messages(4), [
      'warning: The openings of the piece leave this border hardly anything to go round; set it in less, or make the piece larger.',
    ]);
  });

  it('goes round cuts in its way, and by no other', async () => {
    const bare = markOf(await marked('inset: 3, width: 1', ''));
    const middle = markOf(await marked('inset: 3, width: 1', 'cut: [{ellipse: 10}]'));
    assert.equal(area(middle), area(bare));
    const aside = await marked('inset: 3, width: 1, clear: 1.5', 'cut: [{ellipse: 6, nudge: {right: 36}}]');
    assertClosed(markOf(aside));
    const cut: Region = [disc(36, 0, 3)];
    assert.ok(distanceByJts(markOf(aside), cut) > 1.5 - 0.01);
  });

  it('goes round holes of the shape itself', async () => {
    const shape = 'plate: {difference: [{rectangle: [80, 40]}, {ellipse: 6, nudge: {right: 36}}]}';
    const region = markOf(await marked('inset: 2, width: 0.8', '', shape));
    assertClosed(region);
    assert.ok(distanceByJts(region, [disc(36, 0, 3)]) > 2 - 0.01);
  });

  it('ends at openings where it is cut, and what is between its ends holds the middle', async () => {
    const spec = (hanger: string) =>
      specOf([plate, 'edge: {border: {of: plate, inset: 5, width: 1}}'], `body: [plate], cut: [edge]${hanger}`);
    const loose = await report(spec(''));
    assert.ok(loose.issues.some(({ code }) => code === 'loose-part'));
    const held = await make(spec(', hanger: {hole: {at: top, diameter: 4, inset: 4}}'));
    assert.equal(partsOf(held.region).length, 1);
  });

  it('is as thick as it is once it was scaled or grown, when it goes round an opening', async () => {
    const grown = await make(
      specOf(
        [plate, 'edge: {border: {of: plate, inset: 3, width: 1}, grow: 0.25}'],
        'body: [plate], engrave: [edge], hanger: {hole: {at: top, diameter: 4, inset: 2}}',
      ),
    );
    // Far from the hole: along the lower side, 60 mm of it.
    const lower: Region = [
      [
        { x: -30, y: -20 },
        { x: 30, y: -20 },
        { x: 30, y: -10 },
        { x: -30, y: -10 },
      ],
    ];
    assertNear(intersectionAreaByJts(markOf(grown), lower), 60 * 1.5, 0.01);
    const whole = await make(
      specOf(
        [plate, 'edge: {border: {of: plate, inset: 3, width: 1}}'],
        'body: [plate], engrave: [edge], width: 160, hanger: {hole: {at: top, diameter: 4, inset: 2}}',
      ),
    );
    const below: Region = [lower[0]!.map(({ x, y }) => ({ x, y: 2 * y }))];
    assertNear(intersectionAreaByJts(markOf(whole), below), 60 * 2, 0.01);
  });

  it('says so where there is no room for it, and where corners are to be two things at once', async () => {
    const { issues } = await report(
      specOf([plate, 'edge: {border: {of: plate, inset: 20, width: 1}}'], 'body: [plate], engrave: [edge]'),
    );
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['This shape has no room inside the shape that it runs along.'],
    );
    const both = await report(
      specOf([plate, 'edge: {border: {of: plate, width: 1, radius: 3, clip: 3}}'], 'body: [plate], engrave: [edge]'),
    );
    assert.deepEqual(
      both.issues.map(({ message }) => message),
      ['Corners are rounded or cut off: give radius or clip.'],
    );
  });
});
