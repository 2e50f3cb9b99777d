import assert from 'node:assert/strict';
import { withEdits, findFixes } from '../../../src/fixes/find-fixes.ts';
import { difference } from '../../../src/geometry/clipper.ts';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { describeLoad } from '../../../src/strength/describe-load.ts';
import { estimateLoad } from '../../../src/strength/load.ts';
import { assertNear, make, newEngine, report, specOf } from '../support/engine.ts';
import { distanceByJts } from '../support/reference.ts';
import { box } from '../support/shapes.ts';

const head = ['stock: {material: walnut, thickness: 3, kerf: 0, min_web: 2}', 'tie: {twine: 2}'];

async function hung(body: string, hanger: string) {
  const made = await make(specOf([`body: ${body}`], `body: [body], hanger: ${hanger}`, head));
  const [piece] = made.pieces;
  return { ...made, piece: piece!, centres: piece!.hangers.map(({ centre }) => centre) };
}

async function messages(body: string, hanger: string): Promise<string[]> {
  const { issues } = await report(specOf([`body: ${body}`], `body: [body], hanger: ${hanger}`, head));
  return issues.map(({ severity, message }) => `${severity}: ${message}`);
}

describe('Hangers in a row', () => {
  const plate = '{rectangle: [100, 40]}';

  it('lie so far apart, level, about where one would be', async () => {
    const { issues, centres, piece } = await hung(
      plate,
      '{hole: {at: top, count: 3, spacing: 30, diameter: 4, inset: 3}}',
    );
    assert.deepEqual(issues, []);
    assert.equal(piece.region.length, 4, 'an outline and three holes');
    // Exact: half the height less the inset and the radius.
    for (const [index, x] of [-30, 0, 30].entries()) {
      assertNear(centres[index]!.x, x, 1e-3);
      assertNear(centres[index]!.y, 20 - 3 - 2, 1e-3);
    }
  });

  it('of no stated inset go nearer to the edge where the body is narrow, as a single one does', async () => {
    // 10 mm take 3 mm of hole and 1.05 × 3 mm beside it, not 1.5 × 3.
    const narrow = '{rectangle: [100, 10]}';
    const { issues, centres } = await hung(narrow, '{hole: {at: top, count: 3, spacing: 30, diameter: 3}}');
    const single = await hung(narrow, '{hole: {at: top, diameter: 3}}');
    assert.deepEqual([issues, single.issues], [[], []]);
    assert.deepEqual(
      centres.map(({ y }) => y.toFixed(3)),
      Array(3).fill(single.centres[0]!.y.toFixed(3)),
    );
    assert.match(
      (await messages(narrow, '{hole: {at: top, count: 3, diameter: 3, inset: 4}}')).join(),
      /no room for 3 holes/,
    );
    // Where there is room, as far in as ever.
    const wide = await hung(plate, '{hole: {at: top, count: 3, spacing: 30, diameter: 3}}');
    const one = await hung(plate, '{hole: {at: top, diameter: 3}}');
    assertNear(wide.centres[0]!.y, one.centres[0]!.y, 1e-3);
  });

  it('are one problem for what is wrong with several, and say with how many', async () => {
    const small = (more: string) => messages(plate, `{hole: {at: top, diameter: 2, inset: 3, ${more}}}`);
    const one = 'warning: The hole is 2.00 mm; 2.00 mm twine, doubled, needs 3.00 mm.';
    assert.deepEqual(await small('count: 1'), [one]);
    assert.deepEqual(await small('count: 2, spacing: 30'), [`${one} Both holes have this problem.`]);
    assert.deepEqual(await small('count: 3, spacing: 30'), [`${one} All 3 holes have this problem.`]);
    // A slot below comes within 1 mm of two of them; the third is clear.
    const near = await report(
      specOf(
        ['body: {rectangle: [100, 40]}', 'window: {rectangle: [60, 4], nudge: {up: 10, left: 15}}'],
        'body: [body], cut: [window], hanger: {hole: {at: top, count: 3, spacing: 30, diameter: 4, inset: 3}}',
        head,
      ),
    );
    const edge = near.issues.find(({ code }) => code === 'hole-near-edge');
    assert.match(edge!.message, /2 of the 3 holes have this problem\.$/);
    assert.equal(edge!.places!.length, 2);
  });

  it('share the width evenly where no spacing is given', async () => {
    for (const [count, expected] of [
      [2, [-25, 25]],
      [4, [-37.5, -12.5, 12.5, 37.5]],
    ] as const) {
      const { centres } = await hung(plate, `{slot: {count: ${count}, length: 10}}`);
      expected.forEach((x, index) => {
        assertNear(centres[index]!.x, x, 1e-3);
      });
    }
  });

  it('stand one above the other at a side, and side by side at a point or an angle', async () => {
    for (const [at, expected] of [
      ['left', ['-45.0 -8.0', '-45.0 8.0']],
      ['right', ['45.0 8.0', '45.0 -8.0']],
      ['bottom', ['8.0 -15.0', '-8.0 -15.0']],
      ['{up: 10, right: 20}', ['12.0 10.0', '28.0 10.0']],
      ['0', ['-8.0 15.0', '8.0 15.0']],
    ] as const) {
      const { centres } = await hung(plate, `{hole: {at: ${at}, count: 2, spacing: 16, diameter: 4, inset: 3}}`);
      // By place: the order is that of the row as seen from its side.
      const places = centres.map(({ x, y }) => `${(x + 1e-6).toFixed(1)} ${(y + 1e-6).toFixed(1)}`).sort();
      assert.deepEqual(places, [...expected].sort(), at);
    }
  });

  it('go down together on a shape that slopes, until all have room', async () => {
    for (const body of ['{oval: {size: [110, 50]}}', '{heart: 90}', '{house: {size: [80, 60]}}']) {
      const { centres, piece, issues } = await hung(
        body,
        '{hole: {at: top, count: 2, spacing: 44, diameter: 4, inset: 3}}',
      );
      assert.deepEqual(issues, [], body);
      const [first, second] = centres;
      assertNear(first!.y, second!.y, 1e-6, body);
      assertNear(second!.x - first!.x, 44, 1e-6, body);
      const least = Math.min(...piece.hangers.map(({ opening }) => distanceByJts(around(piece.body), opening)));
      // jts: the nearer of the two is the inset from the edge.
      assertNear(least, 3, 0.01, body);
    }
  });

  it('are rings as well, each on the edge above its place', async () => {
    const { centres, piece, issues } = await hung('{ellipse: [110, 50]}', '{ring: {count: 3, spacing: 35}}');
    assert.deepEqual(issues, []);
    assert.equal(piece.region.length, 4);
    for (const [index, x] of [-35, 0, 35].entries()) assertNear(centres[index]!.x, x, 3);
    assertNear(centres[0]!.y, centres[2]!.y, 0.02);
    const bounds = boundsOf(piece.region)!;
    assert.ok(bounds.maxY > 25 + 3, 'they stand outside');
  });

  it('keep the size of the whole piece', async () => {
    const made = await make(
      specOf(['body: {ellipse: [110, 50]}'], 'body: [body], width: 90, hanger: {ring: {at: left, count: 2}}', head),
    );
    const bounds = boundsOf(made.region)!;
    assertNear(bounds.maxX - bounds.minX, 90, 0.01);
  });

  it('count is not needed by one, and spacing is nothing without it', async () => {
    assert.deepEqual(await messages(plate, '{hole: {at: top, count: 1}}'), []);
    assert.deepEqual(await messages(plate, '{hole: {at: top, spacing: 20}}'), [
      'error: “spacing” goes with “count”, which says how many there are in the row.',
    ]);
    assert.deepEqual(await messages(plate, '{hole: {at: top-left, count: 2}}'), [
      'error: A row goes along a side: use “top”, “bottom”, “left” or “right”.',
    ]);
  });

  it('say once where they have no room', async () => {
    assert.deepEqual(await messages(plate, '{hole: {at: top, count: 3, spacing: 60}}'), [
      'error: There is no room for 3 holes in a row here; set them closer together, or make the body larger.',
    ]);
  });

  it('that are too close to each other are told at their line, a little further apart they are not', async () => {
    const near = (spacing: number) => messages(plate, `{hole: {at: top, count: 2, spacing: ${spacing}, diameter: 4}}`);
    assert.match((await near(5.9))[0]!, /Only 1\.90 mm of material is left between the hole and an edge/);
    assert.deepEqual(await near(6.1), []);
    assert.match((await near(3.5))[0]!, /runs into another opening: .* the other hole/);
  });

  it('bear what each bears by itself, and say so', async () => {
    const load = async (hanger: string) => {
      const { piece, report: made } = await hung(plate, hanger);
      return describeLoad(estimateLoad(piece, made.tag!.stock)!);
    };
    const one = await load('{hole: {at: {up: 15, left: 25}, diameter: 4}}');
    const two = await load('{hole: {count: 2, diameter: 4, inset: 3}}');
    assert.equal(two.headline, one.headline);
    assert.ok(two.lines.some((line) => line.startsWith('Each of its 2 openings bears that much by itself')));
    assert.ok(!one.lines.some((line) => line.startsWith('Each of')));
  });

  it('hang level if they balance between them, and are judged by the outer ones', async () => {
    const wedge = '{polygon: {points: [[0, 0], [100, 0], [100, 20], [0, 60]]}}';
    assert.deepEqual(await messages(wedge, '{hole: {at: top, count: 3, spacing: 30}}'), []);
    const far = await messages(wedge, '{hole: {at: top, count: 3, spacing: 6, nudge: {right: 22, down: 3}}}');
    assert.equal(far.length, 1, far.join('\n'));
    assert.match(
      far[0]!,
      /^warning: Hangs askew, turned \d+° counter-clockwise: it balances [\d.]+ mm left of the hole\.$/,
    );
  });

  it('are moved together by a fix', async () => {
    const engine = newEngine();
    const options = { locate: () => undefined };
    const text = specOf(
      [`body: ${plate}`],
      'body: [body], hanger: {hole: {at: {up: 17}, count: 2, diameter: 4}}',
      head,
    );
    const before = await engine.compute(text, options);
    const issue = before.issues.find(({ code }) => code === 'hole-near-edge');
    assert.ok(issue);
    const [fix] = await findFixes(engine, before, issue, options);
    assert.ok(fix);
    const after = await engine.compute(withEdits(text, fix.edits), options);
    assert.deepEqual(after.issues, []);
    const [a, b] = after.tag!.pieces[0]!.hangers;
    assertNear(a!.centre.y, b!.centre.y, 1e-9);
    assert.ok(a!.centre.y < 17);
  });
});

/** A sheet with the body cut out of it. */
function around(body: Region): Region {
  return difference([box(-100, -100, 100, 100)], [body]);
}
