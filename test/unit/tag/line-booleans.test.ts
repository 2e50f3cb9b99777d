import assert from 'node:assert/strict';
import { clippedLines } from '../../../src/geometry/clip-lines.ts';
import { scoreData } from '../../../src/scene/path-data.ts';
import { area } from '../../../src/geometry/measure.ts';
import type { Line, Region } from '../../../src/geometry/types.ts';
import { assertNear, make, report, specOf } from '../support/engine.ts';
import { bandAreaByJts, clippedLengthByJts } from '../support/reference.ts';

const shapes = [
  'plate: {rectangle: [80, 60]}',
  'wave: {path: "M-45 0 C-20 -60 20 60 45 0", lines: true}',
  'zigzag: {path: "M-30 20 L-10 -20 L10 20 L30 -20 M-40 25 H40", lines: true}',
  'ring: {difference: [{circle: 50}, {circle: 24}]}',
  'heart: {heart: 40}',
];

async function marks(it: string, operation = 'score') {
  const made = await make(specOf([...shapes, `it: ${it}`], `body: [plate], ${operation}: [it]`));
  return { mark: made.pieces[0]!.marks[0]!, shapeOf: shapeOf(made) };
}

function shapeOf({ report: { tag } }: Awaited<ReturnType<typeof make>>) {
  return (name: string) => [...tag!.made].find(([shape]) => shape.name === name)![1];
}

const lengthOf = (lines: readonly Line[] = []) =>
  lines.reduce(
    (sum, line) =>
      sum + line.slice(1).reduce((all, to, i) => all + Math.hypot(to.x - line[i]!.x, to.y - line[i]!.y), 0),
    0,
  );

describe('Lines that are cut off at areas', () => {
  for (const line of ['wave', 'zigzag']) {
    for (const region of ['ring', 'heart']) {
      it(`are the stretches of ${line} inside or outside ${region}, by jsts`, async () => {
        for (const [it, side] of [
          [`{intersection: [${line}, ${region}]}`, 'inside'],
          [`{intersection: [${region}, ${line}]}`, 'inside'],
          [`{difference: [${line}, ${region}]}`, 'outside'],
        ] as const) {
          const { mark, shapeOf: made } = await marks(it);
          const expected = clippedLengthByJts(made(line).lines!, made(region).region, side);
          assert.ok(expected > 10, `${expected}`);
          assertNear(lengthOf(mark.lines), expected, 1e-6, it);
          assert.equal(mark.filled, undefined);
        }
      });
    }
  }

  it('are cut off by several areas, and inside all of them, by jsts', async () => {
    const { mark, shapeOf: made } = await marks('{intersection: [wave, ring, heart]}');
    const within = clippedLines(made('wave').lines!, made('ring').region, 'inside');
    assertNear(lengthOf(mark.lines), clippedLengthByJts(within, made('heart').region, 'inside'), 1e-6);
    const outside = await marks('{difference: [wave, ring, heart]}');
    const rest = clippedLines(made('wave').lines!, made('ring').region, 'outside');
    assertNear(lengthOf(outside.mark.lines), clippedLengthByJts(rest, made('heart').region, 'outside'), 1e-6);
  });

  it('keep their direction, and a closed one that begins in the middle of a stretch is not parted there', () => {
    const square: Region = [[0, 10].flatMap((y) => (y === 0 ? [0, 10] : [10, 0]).map((x) => ({ x, y })))];
    const across = [
      { x: -5, y: 5 },
      { x: 15, y: 5 },
    ];
    assert.deepEqual(clippedLines([across], square, 'inside'), [
      [
        { x: 0, y: 5 },
        { x: 10, y: 5 },
      ],
    ]);
    const closed = [
      [5, 5],
      [15, 5],
      [15, 8],
      [5, 8],
      [5, 5],
    ].map(([x, y]) => ({ x: x!, y: y! }));
    assert.deepEqual(
      clippedLines([closed], square, 'inside').map((line) => line.map(({ x, y }) => [x, y])),
      [
        [
          [10, 8],
          [5, 8],
          [5, 5],
          [10, 5],
        ],
      ],
    );
    const whole = closed.map(({ x, y }) => ({ x: x / 2, y }));
    assert.deepEqual(clippedLines([whole], square, 'inside'), [whole]);
    assert.deepEqual(clippedLines([whole], square, 'outside'), []);
  });

  it('of nothing but lines share nothing, which is an error', async () => {
    const { issues } = await report(
      specOf([...shapes, 'it: {intersection: [wave, zigzag]}'], 'body: [plate], score: [it]'),
    );
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['This shape is empty: what it is made of shares nothing.'],
    );
  });
});

describe('Lines together with areas', () => {
  it('stay lines beside the areas, which the beam fills or follows as any', async () => {
    for (const operation of ['score', 'engrave']) {
      const { mark, shapeOf: made } = await marks('{union: [wave, heart]}', operation);
      assertNear(lengthOf(mark.lines), lengthOf(made('wave').lines), 1e-9);
      assertNear(area(mark.filled!), area(made('heart').region), 1e-4);
    }
  });

  it('are cut off with them', async () => {
    const { mark, shapeOf: made } = await marks('{intersection: [{union: [zigzag, heart]}, ring]}');
    assertNear(lengthOf(mark.lines), clippedLengthByJts(made('zigzag').lines!, made('ring').region, 'inside'), 1e-6);
    assert.ok(area(mark.filled!) > 10 && area(mark.filled!) < area(made('heart').region));
  });

  it('are no part of what is cut', async () => {
    const { issues } = await report(specOf([...shapes, 'it: {union: [wave, heart]}'], 'body: [plate, it]'));
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['“it” has lines in it, which enclose nothing: score or engrave it.'],
    );
  });
});

describe('The band around lines', () => {
  for (const by of [0.05, 0.1, 1, 3]) {
    it(`goes ${by} mm to either side, with round ends, by jsts`, async () => {
      for (const line of ['wave', 'zigzag']) {
        const made = await make(
          specOf([...shapes, `it: {around: ${line}, by: ${by}, holes: keep, bays: 0}`], 'body: [it], parts: many'),
        );
        const { lines = [] } = shapeOf(made)(line);
        const expected = bandAreaByJts(lines, by);
        // Both draw round ends with corners, and outlines are simplified by 0.005 mm.
        assertNear(made.area, expected, 0.01 * lengthOf(lines));
      }
    });
  }

  it('has its distance from areas as well, where there are some', async () => {
    const made = await make(
      specOf([...shapes, 'it: {around: {union: [wave, heart]}, by: 2, holes: keep, bays: 0}'], 'body: [it]'),
    );
    const heart = await make(specOf([...shapes, 'it: {around: heart, by: 2, bays: 0}'], 'body: [it]'));
    const [wide, lines] = [heart.region, shapeOf(made)('wave').lines!];
    const { minY, maxY } = made.bounds;
    assertNear(minY, Math.min(heart.bounds.minY, ...lines.flat().map(({ y }) => y - 2)), 0.01);
    assertNear(maxY, Math.max(heart.bounds.maxY, ...lines.flat().map(({ y }) => y + 2)), 0.01);
    assert.ok(made.area > area(wide));
  });
});

it('Areas and lines in one score are both drawn, in the preview and on sheets', async () => {
  const { mark } = await marks('{union: [zigzag, {circle: 10}]}');
  assert.ok(mark.filled!.length > 0);
  const begun = scoreData(mark).match(/M/g)!.length;
  assert.equal(begun, mark.lines!.length + mark.filled!.length);
});
