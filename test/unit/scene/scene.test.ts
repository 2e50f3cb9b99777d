import assert from 'node:assert/strict';
import { svgPathProperties } from 'svg-path-properties';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import type { Issue, YamlPath } from '../../../src/core/issue.ts';
import { innerPoint } from '../../../src/geometry/inner-point.ts';
import { pathData } from '../../../src/scene/path-data.ts';
import { pinIds, pinsOf } from '../../../src/scene/pins.ts';
import { sceneOf } from '../../../src/scene/scene.ts';
import type { Shape } from '../../../src/spec/model/shape-model.ts';
import type { Piece, Tag } from '../../../src/tag/tag.ts';
import { contains } from '../../../src/geometry/measure.ts';
import { ringsOf } from '../../../webview/preview/scene/outline-points.ts';
import { distance } from '../support/distance.ts';
import { make, specOf } from '../support/engine.ts';

function rectangle(x: number, y: number, width: number, height: number): Ring {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

const holeAt = (x: number, y: number, width: number, height: number): Ring =>
  rectangle(x, y, width, height).toReversed();

/** Each path stands at an offset of its own. */
const offsets = new Map<string, number>();
function sourceOf(path: YamlPath): number {
  const key = path.join('/');
  if (!offsets.has(key)) offsets.set(key, offsets.size * 10);
  return offsets.get(key)!;
}

const dot: Shape = {
  path: ['shapes', 'dot'],
  generator: { kind: 'rectangle', width: 2, height: 2, radius: 0 },
  modifiers: { corners: 'round' },
};

/** A plate 40 × 20 with an opening, a counter of its own and a hole for the tie, engraved and scored. */
function plate(): Piece {
  const opening: Region = [rectangle(10, 5, 4, 4)];
  const hangerHole: Region = [rectangle(2, 8, 3, 3)];
  const counter = holeAt(30, 5, 6, 6);
  const outline = rectangle(0, 0, 40, 20);
  return {
    id: 'plate',
    title: 'Plate',
    path: ['pieces', 'plate'],
    region: [outline, opening[0]!.toReversed(), hangerHole[0]!.toReversed(), counter],
    body: [outline, counter],
    sources: [
      { use: 'body', region: [rectangle(20, 0, 5, 5)], shape: dot, entry: [], path: ['shapes', 'small'] },
      { use: 'body', region: [outline, counter], shape: dot, entry: [], path: ['shapes', 'large'] },
      { use: 'cut', region: opening, shape: dot, entry: [], path: ['shapes', 'window'] },
    ],
    marks: [
      { operation: 'engrave', region: [rectangle(15, 10, 2, 2)], shape: dot, path: ['pieces', 'plate', 'engrave', 0] },
      { operation: 'score', region: [rectangle(18, 10, 2, 2)], shape: dot, path: ['pieces', 'plate', 'score', 0] },
    ],
    hangers: [
      {
        kind: 'hole',
        at: { kind: 'auto' },
        centre: { x: 3.5, y: 9.5 },
        opening: hangerHole,
        openingSize: 3,
        openingLength: 3,
        path: ['pieces', 'plate', 'hanger'],
      },
    ],
    parts: 'one',
  };
}

const tagOf = (...pieces: Piece[]): Tag => ({
  title: 'Seed-jar tag',
  units: 'mm',
  stock: { material: 'birch plywood', kerf: 0.16, minWeb: 1.5, leastWeb: 0.8, hangerWeb: 1.5 },
  output: { compensate: true, pictureWidth: 1600, styles: {} },
  made: new Map(),
  pieces,
});

describe('The scene of a tag', () => {
  const piece = sceneOf(tagOf(plate()), sourceOf).pieces[0]!;

  it('has its parts in cutting order: marks, then holes, then the outline', () => {
    assert.deepEqual(
      piece.parts.map(({ operation }) => operation),
      ['engrave', 'score', 'cut-inner', 'cut-inner', 'cut-inner', 'cut-outer'],
    );
  });

  it('gives each hole to what asked for it', () => {
    const holes = piece.parts.filter(({ operation }) => operation === 'cut-inner');
    assert.deepEqual(
      holes.map(({ label, source }) => [label, source]),
      [
        ['Opening', sourceOf(['shapes', 'window'])],
        ['Hanger hole', sourceOf(['pieces', 'plate', 'hanger'])],
        ['Inner cut', sourceOf(['shapes', 'large'])],
      ],
    );
  });

  it('keeps a hole that runs between shapes for the piece', () => {
    const between: Piece = { ...plate(), sources: [] };
    const part = sceneOf(tagOf(between), sourceOf).pieces[0]!.parts.find(({ id }) => id === 'plate/holes-between');
    assert.equal(part?.label, '2 inner cuts');
    assert.equal(part.source, sourceOf(['pieces', 'plate']));
  });

  it('says whose holes are whose where two would be called alike', async () => {
    // The rim and the two bars close two openings between them; the rim by itself has one.
    const shapes = [
      'rim: {difference: [{rectangle: [30, 30]}, {rectangle: [20, 20]}]}',
      'left: {rectangle: [3, 30], nudge: {right: 25}}',
      'top: {rectangle: [20, 3], nudge: {right: 20, up: 13.5}}',
      'foot: {rectangle: [20, 3], nudge: {right: 20, down: 13.5}}',
    ];
    const { tag } = (await make(specOf(shapes, 'body: [rim, left, top, foot]'))).report;
    const holes = sceneOf(tag!, sourceOf).pieces[0]!.parts.filter(({ operation }) => operation === 'cut-inner');
    assert.deepEqual(
      holes.map(({ label }) => label),
      ['Inner cut between shapes', 'Inner cut in “rim”'],
    );
  });

  it('turns y over, in lines, bounds and centres alike', () => {
    assert.deepEqual(piece.bounds, [0, -20, 40, 0]);
    assert.deepEqual(piece.hangers[0]?.centre, [3.5, -9.5]);
    assert.equal(piece.parts.find(({ id }) => id === 'plate/mark-1')?.data, 'M18 -10l2 0 0 -2 -2 0z');
  });

  it('lays smaller shapes over larger ones, so that both can be pointed at', () => {
    assert.deepEqual(
      piece.shapes.map(({ label, id }) => [label, id]),
      [
        ['large', 'plate/body-1'],
        ['small', 'plate/body-0'],
      ],
    );
  });

  it('tells which shapes are made of words, for labels to keep off them', async () => {
    const { report } = await make(
      specOf(
        ['word: {text: Sorrel, width: 50}', 'plate: {around: word, by: 5 mm}'],
        'body: [plate, word], engrave: [word]',
      ),
    );
    const [tag] = sceneOf(report.tag!, sourceOf).pieces;
    assert.deepEqual(
      tag!.shapes.map(({ label, isLettering }) => [label, isLettering]),
      [
        ['plate', undefined],
        ['word', true],
      ],
    );
  });

  it('counts outlines and holes and measures the piece', () => {
    assert.deepEqual([piece.partCount, piece.holeCount, piece.width, piece.height], [1, 3, 40, 20]);
  });

  it('leaves out a piece without material and stays measurable', () => {
    const scene = sceneOf(tagOf({ ...plate(), region: [] }), sourceOf);
    assert.deepEqual([scene.pieces, scene.bounds], [[], [0, 0, 0, 0]]);
  });

  it('calls several engravings by the names of their shapes, and one alone by no name', async () => {
    const labels = async (engrave: string) => {
      const shapes = [
        'plate: {rectangle: [60, 40]}',
        'edge: {rectangle: [50, 4], nudge: {up: 10}}',
        'words: {rectangle: [30, 8]}',
      ];
      const { tag } = (await make(specOf(shapes, `body: [plate], engrave: [${engrave}]`))).report;
      const { parts } = sceneOf(tag!, sourceOf).pieces[0]!;
      return parts.flatMap(({ label, operation }) => (operation === 'engrave' ? label : []));
    };
    assert.deepEqual(await labels('edge, words'), ['Engraving “edge”', 'Engraving “words”']);
    assert.deepEqual(await labels('edge, {rectangle: [30, 8]}'), ['Engraving “edge”', 'Engraving 2']);
    assert.deepEqual(await labels('words'), ['Engraving']);
  });

  it('names parts the same when the geometry moves', () => {
    const moved = (ring: Ring): Ring => ring.map(({ x, y }) => ({ x: x * 1.5, y: y + 3 }));
    const original = plate();
    const hanger = original.hangers[0]!;
    const scene = sceneOf(
      tagOf({
        ...original,
        region: original.region.map(moved),
        sources: original.sources.map((shape) => ({ ...shape, region: shape.region.map(moved) })),
        hangers: [{ ...hanger, opening: hanger.opening.map(moved) }],
      }),
      sourceOf,
    );
    assert.deepEqual(
      scene.pieces[0]!.parts.map(({ id }) => id),
      piece.parts.map(({ id }) => id),
    );
  });
});

describe('Path data', () => {
  it('has the length of its ring by an independent reading (svg-path-properties)', () => {
    const ring = rectangle(1.23456, -2, 30, 12.5);
    assert.ok(Math.abs(new svgPathProperties(pathData([ring])).getTotalLength() - 2 * (30 + 12.5)) < 0.003);
  });

  it('is written to a thousandth of a millimetre, in steps whose roundings do not add up', () => {
    const third = [
      { x: 1 / 3, y: -2 / 3 },
      { x: 11 / 3, y: -2 / 3 },
      { x: 11 / 3, y: 29 / 3 },
    ];
    assert.equal(pathData([third]), 'M.333 .667l3.334 0 0 -10.334z');
    const many = Array.from({ length: 3000 }, (_, n) => {
      const turn = (2 * Math.PI * n) / 3000;
      return { x: 40 * Math.cos(turn), y: 40 * Math.sin(turn) };
    });
    const { x, y } = new svgPathProperties(pathData([many])).getPointAtLength(40 * Math.PI);
    assert.ok(Math.hypot(x + 40, y) < 0.01, `${x} ${y}`);
  });

  it('runs within 0.005 mm of the outline, with fewer points', () => {
    const wave = Array.from({ length: 500 }, (_, n) => {
      const turn = (2 * Math.PI * n) / 500;
      const r = 20 + 4 * Math.cos(5 * turn);
      return { x: r * Math.cos(turn), y: r * Math.sin(turn) };
    });
    const drawn = ringsOf(pathData([wave]), [0, 0])[0]!.map(([x, y]) => ({ x, y: -y }));
    assert.ok(drawn.length < 0.75 * wave.length, `${drawn.length} points`);
    // What is drawn takes its points from the outline: those that it leaves out are the furthest off.
    const apart = Math.max(...wave.map((point) => distance([[point]], [drawn])));
    assert.ok(apart > 0.001 && apart < 0.006, `${apart} mm`);
  });
});

describe('A point inside a ring', () => {
  it('is found where the centroid lies outside', () => {
    const hook: Point[] = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 9, y: 10 },
      { x: 9, y: 1 },
      { x: 0, y: 1 },
    ];
    assert.ok(contains([hook], innerPoint(hook)));
    assert.ok(contains([hook], innerPoint(hook.toReversed())));
  });
});

describe('The pins of issues', () => {
  const issue = (start: number, more: Partial<Issue> = {}): Issue => ({
    code: 'weak-bridge',
    severity: 'warning',
    message: 'Thin.',
    path: ['shapes', 'word'],
    range: { start, end: start + 1 },
    ...more,
  });
  const lineOf = (offset: number): number => offset + 1;

  it('keep their ids while the text before them grows', () => {
    const ids = (issues: Issue[]): string[] => pinsOf(issues, lineOf).map(({ id }) => id);
    assert.deepEqual(ids([issue(4), issue(4)]), ids([issue(90), issue(90)]));
    assert.equal(new Set(ids([issue(4), issue(4), issue(4, { code: 'thin-stroke' })])).size, 3);
  });

  it('have errors first, then warnings, then infos, each by line, and the ids that they have in the text', () => {
    const issues = [
      issue(1),
      issue(2, { code: 'fine-mark', severity: 'info' }),
      issue(3, { code: 'hole-blocked', severity: 'error' }),
      issue(4),
      issue(5, { code: 'loose-part', severity: 'error' }),
    ];
    const pins = pinsOf(issues, lineOf);
    assert.deepEqual(
      pins.map(({ line, severity }) => `${severity} ${line}`),
      ['error 4', 'error 6', 'warning 2', 'warning 5', 'info 3'],
    );
    const ids = pinIds(issues);
    for (const { line, id } of pins) assert.equal(id, ids[line - 2]);
  });

  it('carry the line, and their points with y down', () => {
    const [pin] = pinsOf([issue(6, { points: [{ x: 1, y: 2 }], width: 0.92, piece: 'tag' })], lineOf);
    assert.deepEqual([pin?.line, pin?.points, pin?.width, pin?.piece], [7, [[1, -2]], 0.92, 'tag']);
  });

  it('carry the other places of the same problem, but none that is on another tag of the batch', () => {
    const worst = { points: [{ x: 1, y: 2 }], width: 0.5 };
    const places = [worst, { points: [{ x: 3, y: 4 }], width: 0.92 }];
    const [pin] = pinsOf([issue(6, { ...worst, places, piece: 'tag' })], lineOf);
    assert.deepEqual(pin?.points, [[1, -2]]);
    assert.deepEqual(pin.others, [{ points: [[3, -4]], width: 0.92 }]);
    const [elsewhere] = pinsOf([issue(6, { ...worst, places, row: 2 })], lineOf);
    assert.deepEqual([elsewhere?.points, elsewhere?.others], [[], undefined]);
  });
});
