import assert from 'node:assert/strict';
import { boundsOf, boxCentre } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import type { Piece } from '../../../src/tag/tag.ts';
import { assertNear, make, makeShape, report, specOf } from '../support/engine.ts';
import { distanceByJts } from '../support/reference.ts';

const dot = 'dot: {ellipse: 3}';
const leaf = 'leaf: {polygon: {points: [[0, 0], [1, 8], [-1, 8]]}}';

async function middles(repeat: string, others: readonly string[] = [dot]): Promise<Point[]> {
  const { region } = await makeShape(`{repeat: {shape: dot, ${repeat}}}`, others);
  return partsOf(region).map((part) => boxCentre(boundsOf(part)!));
}

const byX = (a: Point, b: Point): number => a.x - b.x || b.y - a.y;

function assertPoints(found: readonly Point[], expected: readonly Point[], tolerance = 1e-4): void {
  assert.equal(found.length, expected.length);
  // To the tolerance, so that what is level is in one order.
  const round = ({ x, y }: Point): Point => ({ x: Math.round(x * 1e3) / 1e3, y: Math.round(y * 1e3) / 1e3 });
  const [a, b] = [found, expected].map((points) => points.map(round).sort(byX)) as [Point[], Point[]];
  a.forEach((point, i) => {
    assertNear(Math.hypot(point.x - b[i]!.x, point.y - b[i]!.y), 0, tolerance + 2e-3, JSON.stringify([point, b[i]]));
  });
}

async function problemsOf(repeat: string, others: readonly string[] = [dot]): Promise<string[]> {
  const { issues } = await report(specOf([...others, `body: {repeat: ${repeat}}`], 'body: [body], parts: many'));
  return issues.map(({ message }) => message);
}

// What is expected is elementary geometry.
describe('A shape that is repeated', () => {
  for (const [towards, x, y] of [
    ['right', 1, 0],
    ['left', -1, 0],
    ['up', 0, 1],
    ['down', 0, -1],
  ] as const) {
    it(`goes on ${towards} from where it stands, from middle to middle`, async () => {
      const found = await middles(`count: 4, spacing: 10, along: ${towards}`);
      assertPoints(
        found,
        [0, 10, 20, 30].map((along) => ({ x: along * x, y: along * y })),
      );
    });
  }

  it('goes to the right where nothing is said', async () => {
    assertPoints(await middles('count: 2, spacing: 7'), [
      { x: 0, y: 0 },
      { x: 7, y: 0 },
    ]);
  });

  it('fills a grid to the right and down', async () => {
    const expected = [0, 1, 2].flatMap((column) => [0, 1].map((row) => ({ x: 8 * column, y: -5 * row })));
    assertPoints(await middles('count: [3, 2], spacing: [8, 5], along: grid'), expected);
    assert.equal((await middles('count: 3, spacing: 8, along: grid')).length, 9);
  });

  it('goes evenly round a circle from its top, clockwise', async () => {
    const expected = Array.from({ length: 12 }, (_, hour) => {
      const angle = (hour * Math.PI) / 6;
      return { x: 20 * Math.sin(angle), y: 20 * Math.cos(angle) };
    });
    assertPoints(await middles('count: 12, along: {circle: 40}'), expected, 5e-3);
  });

  it('goes round a circle as many times as go about so far apart', async () => {
    // π·40 = 125.7 mm: 13 of 10 mm.
    assert.equal((await middles('spacing: 10, along: {circle: 40}')).length, 13);
  });

  it('spreads to both sides of the top where count and spacing are given', async () => {
    const found = await middles('count: 3, spacing: 10, along: {circle: 40}');
    const angle = 10 / 20;
    assertPoints(
      found,
      [-angle, 0, angle].map((each) => ({ x: 20 * Math.sin(each), y: 20 * Math.cos(each) })),
      0.01,
    );
  });

  it('goes along an outline, set in as asked, at even distances', async () => {
    const others = [dot, 'plate: {rectangle: [80, 40]}'];
    const found = await middles('spacing: 10, along: {outline: plate, inset: 5}', others);
    assert.equal(found.length, 20);
    for (const { x, y } of found) assertNear(Math.max(Math.abs(x) / 35, Math.abs(y) / 15), 1, 1e-4);
    assert.ok(
      found.some(({ x, y }) => Math.abs(x) < 1e-4 && Math.abs(y - 15) < 1e-4),
      'one at the top',
    );
    for (const a of found) {
      const nearest = Math.min(...found.filter((b) => b !== a).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
      assert.ok(nearest < 10 + 1e-3 && nearest > 7, String(nearest));
    }
  });

  it('turns with the line, its top outwards, or stands upright', async () => {
    const turned = await makeShape('{repeat: {shape: leaf, count: 4, along: {circle: 40}}}', [leaf]);
    assertNear(turned.width, 48, 1e-3);
    assertNear(turned.height, 48, 1e-3);
    const upright = await makeShape('{repeat: {shape: leaf, count: 4, along: {circle: 40}, upright: true}}', [leaf]);
    assertNear(upright.width, 42, 1e-3);
    assertNear(upright.height, 48, 1e-3);
    // The leaf's tip is its top; the circle lies about the middle of its box.
    const right = partsOf(turned.region).find((part) => boundsOf(part)!.minX > 10)!;
    const tip = right.flat().reduce((most, point) => (point.x > most.x ? point : most));
    assertNear(tip.y, -4, 1e-3);
  });

  it('makes rows of holes, as far from each other as the beam leaves them', async () => {
    const row = 'row: {repeat: {shape: dot, count: 5, spacing: 6}, place: {on: plate}}';
    const made = await make(specOf(['plate: {rectangle: [60, 20]}', dot, row], 'body: [plate], cut: [row]'));
    const holes = made.region.slice(1).sort((a, b) => boundsOf([a])!.minX - boundsOf([b])!.minX);
    assert.equal(holes.length, 5);
    const solids: Region[] = holes.map((hole) => [hole.toReversed()]);
    for (let i = 1; i < solids.length; i++) assertNear(distanceByJts(solids[i - 1]!, solids[i]!), 3, 1e-3);
  });

  it('that leaves too little between its holes is told so', async () => {
    const row = 'row: {repeat: {shape: dot, count: 5, spacing: 3.6}, place: {on: plate}}';
    const { issues } = await report(specOf(['plate: {rectangle: [60, 20]}', dot, row], 'body: [plate], cut: [row]'));
    assert.deepEqual([...new Set(issues.map(({ code }) => code))], ['weak-bridge']);
  });

  it('keeps its lettering as lettering', async () => {
    const text = 'ab: {text: ab, font: Nunito, size: 8}';
    const { report: found } = await makeShape('{repeat: {shape: ab, count: 3, spacing: 20}}', [text]);
    assert.equal(found.tag!.pieces[0]!.sources[0]!.lettering!.length, 3);
  });

  it('makes room along an edge for the hole that a piece hangs by, unless so many are asked for', async () => {
    const piece = async (along: string, use: string, hanger = ', hanger: {hole: {at: top, diameter: 3}}') =>
      (
        await make(
          specOf(
            ['plate: {circle: 60}', dot, `dots: {repeat: {shape: dot, along: {outline: plate, inset: 5}, ${along}}}`],
            `body: [plate], ${use}: [dots]${hanger}`,
          ),
        )
      ).pieces[0]!;
    const plain = (await make(specOf(['plate: {circle: 60}'], 'body: [plate], hanger: {hole: {at: top, diameter: 3}}')))
      .pieces[0]!.hangers[0]!;
    const dotsOf = ({ marks, sources }: Piece) =>
      partsOf((marks[0] ?? sources.find((each) => each.use === 'cut'))!.region);
    // 157 mm round, 9 mm apart: 17, of which the one at the top gives way.
    for (const use of ['engrave', 'cut']) {
      const made = await piece('spacing: 9', use);
      assert.equal(dotsOf(made).length, 16, use);
      assert.deepEqual(made.hangers[0]!.centre, plain.centre, 'the hole stays where it would be');
      for (const each of dotsOf(made)) assert.ok(distanceByJts(each, made.hangers[0]!.opening) > 1 - 1e-3);
      assert.equal(dotsOf(await piece('spacing: 9', use, '')).length, 17, use);
      assert.equal(dotsOf(await piece('count: 17', use)).length, 17, use);
    }
  });

  for (const [repeat, message] of [
    ['{shape: dot, count: 3}', '“repeat” in a row needs “spacing”.'],
    ['{shape: dot}', '“repeat” in a row needs “count” and “spacing”.'],
    ['{shape: dot, along: grid}', 'A grid needs “count” and “spacing”.'],
    ['{shape: dot, along: {circle: 30}}', '“repeat” needs “count”, “spacing” or both.'],
    ['{shape: dot, count: [2, 3], spacing: 5, along: right}', '“count” is one number here; two go with “along: grid”.'],
    [
      '{shape: dot, count: 2, spacing: 5, upright: true}',
      '“upright” is for copies that go round a circle or an outline; in a row each is as it was drawn.',
    ],
    [
      '{shape: dot, count: 20, spacing: 12, along: {circle: 40}}',
      '20 copies, 12.00 mm apart, take 240.0 mm; once round is only 125.7 mm.',
    ],
    ['{shape: dot, spacing: 0.1, along: {circle: 400}}', 'These would be 12566 copies; at most 1000 are made.'],
    ['{shape: dot, count: [100, 20], spacing: 5, along: grid}', 'These are 2000 copies; at most 1000 are made.'],
  ] as const) {
    it(`says what is wrong with ${repeat}`, async () => {
      assert.deepEqual(await problemsOf(repeat), [message]);
    });
  }
});
