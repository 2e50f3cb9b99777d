import assert from 'node:assert/strict';
import { withEdits, findFixes } from '../../../src/fixes/find-fixes.ts';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { estimateLoad } from '../../../src/strength/load.ts';
import { assertNear, make, makeShape, newEngine, report, specOf } from '../support/engine.ts';
import { differenceAreaByJts, intersectionAreaByJts } from '../support/reference.ts';
import { disc } from '../support/shapes.ts';

const plate = 'plate: {rectangle: [80, 40]}';

function specWithHanger(hanger: string, shape = plate): string {
  return specOf([shape], `body: [plate], hanger: {keyhole: ${hanger}}`, [
    'stock: {material: birch plywood, thickness: 4 mm, kerf: 0}',
    'tie: {twine: 2 mm}',
  ]);
}

async function openingOf(hanger: string, shape?: string): Promise<Region> {
  return (await make(specWithHanger(hanger, shape))).pieces[0]!.hangers[0]!.opening;
}

// A disc, a half disc and the slot between them.
describe('A keyhole', () => {
  it('is a round opening with a narrower slot above it, as far from the edge as asked', async () => {
    const opening = await openingOf('{at: top, diameter: 8, width: 4, length: 14, inset: 5}');
    const box = boundsOf(opening)!;
    assertNear(box.maxY, 15, 1e-3);
    assertNear(box.minY, 1, 1e-3);
    assertNear(box.maxX - box.minX, 8, 1e-3);
    // What of the slot lies in the upper half of the disc: ∫ √(16 − x²) dx from −2 to 2.
    const shared = 2 * (Math.sqrt(12) + 8 * Math.asin(0.5));
    assertNear(area(opening), 16 * Math.PI + 4 * 8 + 2 * Math.PI - shared, 0.06);
  });

  it('holds the head of its nail: moved up the slot, a disc as large as the opening no longer goes through', async () => {
    const made = await make(specWithHanger('{at: top}'));
    const { opening, centre } = made.pieces[0]!.hangers[0]!;
    const head = [disc(centre.x, centre.y, 4)];
    const free = intersectionAreaByJts(opening, head);
    assert.ok(free < area(head) / 2, 'most of the head lies on material');
    const through = [disc(centre.x, boundsOf(opening)!.minY + 4, 3.99)];
    assertNear(differenceAreaByJts(through, opening), 0, 1e-6);
  });

  it('points to the side on which the piece hangs, and up in the corners', async () => {
    const boxOf = async (at: string) => boundsOf(await openingOf(`{at: ${at}}`, 'plate: {rectangle: [80, 80]}'))!;
    const tall = await boxOf('top');
    assert.ok(tall.maxY - tall.minY > tall.maxX - tall.minX && tall.minY > 0);
    const wide = await boxOf('left');
    assert.ok(wide.maxX - wide.minX > wide.maxY - wide.minY && wide.maxX < 0);
    for (const corner of ['top-left', 'top-right']) {
      const { minX, maxX, minY, maxY } = await boxOf(corner);
      assertNear(maxY - minY, 14, 1e-3, corner);
      assertNear(maxX - minX, 8, 1e-3, corner);
    }
  });

  it('is judged as any opening is, but not by the tie', async () => {
    const near = await report(specWithHanger('{at: top, inset: 0.8}'));
    assert.deepEqual(
      near.issues.map(({ code }) => code),
      ['hole-near-edge'],
    );
    assert.match(near.issues[0]!.message, /^Only 0\.80 mm of material is left between the keyhole and an edge/);
    const open = await report(specWithHanger('{at: {up: 20 mm}}'));
    assert.ok(open.issues.some(({ message }) => message === 'The keyhole is open to the edge: the nail slips out.'));
    // Twine of 2 mm would not go through a slot of 1 mm.
    assert.deepEqual((await report(specWithHanger('{at: top, diameter: 6, width: 1}'))).issues, []);
    const made = await make(specWithHanger('{at: top}'));
    const load = estimateLoad(made.pieces[0]!, made.report.tag!.stock);
    assert.equal(load?.kind, 'bears');
  });

  for (const [hanger, message] of [
    [
      '{diameter: 5, width: 5}',
      'The slot must be narrower than the round opening, or the head of the nail slips through.',
    ],
    [
      '{diameter: 8, width: 4, length: 9}',
      'A keyhole like this must be at least 10 mm long, or the head of the nail comes out again.',
    ],
  ] as const) {
    it(`says why ${hanger} holds nothing`, async () => {
      assert.deepEqual(
        (await report(specWithHanger(hanger))).issues.map(({ message: text }) => text),
        [message],
      );
    });
  }
});

describe('A stick', () => {
  it('stands under the centre of gravity, as long as asked below what it carries', async () => {
    const { region, bounds } = await makeShape('{stick: {carries: plate, length: 50, width: 6, point: 12}}', [plate]);
    assertNear(bounds.minY, -20 - 50, 1e-3);
    assertNear(bounds.maxY, -20 + 6, 0.02);
    assertNear(bounds.maxX - bounds.minX, 6, 1e-6);
    // A bar of 6 by 44 mm, and a taper from 6 to 1.5 mm over 12.
    assertNear(area(region), 6 * 44 + ((6 + 1.5) / 2) * 12, 0.2);
  });

  it('goes in until it has so much material of what it carries', async () => {
    for (const carried of [
      '{heart: 40}',
      '{ellipse: 50}',
      '{around: {text: Basil, font: Pacifico, width: 70}, by: 4}',
    ]) {
      const made = await makeShape('{stick: {carries: it, length: 50, width: 6, lap: 5}}', [`it: ${carried}`]);
      const it = (await makeShape(carried)).region;
      assertNear(intersectionAreaByJts(made.region, it), 30, 0.1, carried);
    }
  });

  it('is one part with it, without a problem', async () => {
    const spec = specOf(
      ['it: {heart: 44}', 'spike: {stick: {carries: it, length: 70, width: 5}}'],
      'body: [it, spike]',
      ['stock: {material: birch plywood, thickness: 4 mm, kerf: 0.16 mm}'],
    );
    const made = await make(spec);
    assert.equal(partsOf(made.region).length, 1);
    assert.deepEqual(made.issues, []);
  });

  it('that carries what is not on its piece is an error, with a fix; half of it is enough', async () => {
    const spec = (body: string) =>
      specOf(
        [
          'it: {heart: 44}',
          'spike: {stick: {carries: it, length: 70, width: 5}}',
          'half: {intersection: [it, {rectangle: [100, 40], nudge: {down: 8}}]}',
        ],
        `body: ${body}`,
        ['stock: {material: birch plywood, thickness: 4 mm, kerf: 0.16 mm}'],
      );
    const engine = newEngine();
    const made = await engine.compute(spec('spike'), { locate: () => undefined });
    const [issue] = made.issues;
    assert.equal(issue!.message, 'The stick carries “it”, which is not on “tag”: it needs to be in “body” too.');
    assert.equal(issue!.severity, 'error');
    const [fix] = await findFixes(engine, made, issue!, { locate: () => undefined });
    assert.match(withEdits(spec('spike'), fix!.edits), /body: \[it, spike\]/);
    const half = await report(spec('[half, spike]'));
    assert.ok(!half.issues.some(({ message }) => message.startsWith('The stick carries')));
  });

  it('points where it is told', async () => {
    for (const [towards, key, sign] of [
      ['down', 'minY', -1],
      ['up', 'maxY', 1],
      ['left', 'minX', -1],
      ['right', 'maxX', 1],
    ] as const) {
      const { bounds } = await makeShape(`{stick: {carries: it, length: 30, width: 5, towards: ${towards}}}`, [
        'it: {ellipse: 40}',
      ]);
      assertNear(bounds[key], sign * 50, 0.01, towards);
    }
  });

  it('says so where it would meet nothing, and where its point is longer than it is', async () => {
    const ring = 'it: {difference: [{ellipse: 60}, {ellipse: 50}, {rectangle: [8, 80]}]}';
    const none = await report(specOf([ring, 'spike: {stick: {carries: it, length: 30, width: 5}}'], 'body: [spike]'));
    assert.deepEqual(
      none.issues.map(({ message }) => message),
      ['This shape meets nothing of what it should carry.'],
    );
    const long = await report(
      specOf([plate, 'spike: {stick: {carries: plate, length: 30, width: 5, point: 40}}'], 'body: [spike]'),
    );
    assert.deepEqual(
      long.issues.map(({ message }) => message),
      ['The point cannot be longer than the stick, 30.00 mm.'],
    );
  });
});
