import assert from 'node:assert/strict';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, found, only } from './found.ts';

const plate = ['body: {rectangle: [60, 40]}'];

function tag(hanger: string, shapes: readonly string[] = plate, head: readonly string[] = []): Promise<Made> {
  return make(specOf(shapes, `body: [body], hanger: ${hanger}`, head));
}

/**
 * Exact (statics): a body hangs with its centre of mass below its support. Of a plate of 60 × 40 with a hole of 2 mm at (x, 15),
 * that centre is −π·(x, 15)/(2400 − π) from the middle.
 */
function hangs(x: number): number {
  const share = -Math.PI / (2400 - Math.PI);
  return (Math.atan2(Math.abs(x - share * x), 15 - share * 15) * 180) / Math.PI;
}

const at = (x: number, y = 15) => `{hole: {diameter: 2, at: {up: ${y}, right: ${x}}}}`;

describe('The angle at which a tag hangs', () => {
  it('is told as it is, to the side on which it is low, with where it balances', async () => {
    for (const [x, words] of [
      [-2, 'turned 8° clockwise: it balances 2.00 mm right of the hole.'],
      [2, 'turned 8° counter-clockwise: it balances 2.00 mm left of the hole.'],
    ] as const) {
      const made = await tag(at(x));
      const issue = only(made, 'hangs-askew');
      assert.equal(issue.severity, 'info');
      assert.equal(issue.message, `Hangs askew, ${words}`);
      assertNear(issue.angle!, hangs(x), 0.01);
      assert.equal(issue.piece, 'tag');
      assert.equal(placeOf(made.report, issue).line, 5);
      const [from, balance] = issue.points!;
      assertNear(balance!.x, (-Math.PI * x) / (2400 - Math.PI), 1e-3);
      // The tie lies at the rim of the hole, on the plumb line.
      assertNear(Math.hypot(from!.x - x, from!.y - 15), 1, 1e-6);
    }
  });

  it('is told from three degrees on', async () => {
    const x = 15 * Math.tan((3 * Math.PI) / 180);
    assert.ok(hangs(x + 0.01) > 3 && hangs(x - 0.01) < 3);
    only(await tag(at(x + 0.01)), 'hangs-askew');
    assertSilent(await tag(at(x - 0.01)), 'hangs-askew');
  });

  it('is told from six degrees on of a ring, whose place nobody has set', async () => {
    // Pushed along the edge: exact (statics), a disc of radius 3.4 less the hole of 1.4 hangs on the plate at (x, 21.4).
    const ring = (right: number) => `{ring: {at: top, diameter: 2.8, wall: 2, nudge: {right: ${right}}}}`;
    const angles = await Promise.all(
      [1.5, 2, 2.5].map(async (x) => found(await tag(ring(x)), 'hangs-askew')[0]?.angle),
    );
    assert.equal(angles[0], undefined, '4°');
    assert.equal(angles[1], undefined, '5°');
    assert.ok(angles[2]! > 6 && angles[2]! < 7, `${angles[2]}`);
    assert.ok(Math.abs(angles[2]! - (Math.atan(2.5 / 21.4) * 180) / Math.PI) < 0.2);
    // A point is somebody's word.
    const set = await tag('{ring: {at: {up: 21.4, right: 1.5}, diameter: 2.8, wall: 2}}');
    assertNear(only(set, 'hangs-askew').angle!, (Math.atan(1.5 / 21.4) * 180) / Math.PI, 0.2);
  });

  it('counts what is glued on', async () => {
    const text = `tagwright: 1
shapes:
  plate: {rectangle: [60, 40]}
  leaf: {ellipse: 16, nudge: {right: 18, down: 6}}
pieces:
  back: {body: [plate], hanger: {hole: {diameter: 2, at: top}}}
  front: {body: [leaf], glue_to: back}
`;
    const issue = only(await make(text), 'hangs-askew');
    // Exact: areas 2400 − π and 64π; the hole’s inset is 2.25, so that its centre is at 16.75.
    const [back, leaf] = [2400 - Math.PI, 64 * Math.PI];
    const x = (18 * leaf) / (back + leaf);
    const y = (-16.75 * Math.PI - 6 * leaf) / (back + leaf);
    assertNear(issue.angle!, (Math.atan2(x, 16.75 - y) * 180) / Math.PI, 0.02);
    assert.match(issue.message, /turned 5° clockwise/);
    assertSilent(await make(text.replace('right: 18, ', '')), 'hangs-askew');
  });

  it('is that of the side it hangs by', async () => {
    const arrow = ['body: {arrow: {length: 80, width: 34, shaft: 20, tip: 90}}'];
    for (const place of ['left', '270', '{left: 34}']) {
      assertSilent(await tag(`{hole: {diameter: 2, at: ${place}}}`, arrow), 'hangs-askew', place);
    }
    const issue = only(await tag('{hole: {diameter: 2, at: {left: 34, up: 4}}}', arrow), 'hangs-askew');
    assert.match(
      issue.message,
      /^Hangs askew, turned \d° (counter-)?clockwise: the hole is \d\.\d\d mm too high on the drawing\.$/,
    );
    assertSilent(await tag('{ring: {at: left}}', arrow), 'hangs-askew');
    // A ring that finds its own place has one that hangs straighter only where it holds or reads worse.
    const name = ['name: {text: Nina, font: Pacifico, x_height: 9, overlap: 0.6, grow: 0.5}'];
    const chosen = only(
      await make(
        specOf(name, 'body: [name], hanger: {ring: {at: left, diameter: 4}}', [
          'stock: {material: birch plywood, thickness: 3}',
        ]),
      ),
      'hangs-askew',
    );
    assert.match(chosen.message, /: the ring is \d\.\d\d mm too high on the drawing, where it holds and reads best\.$/);
  });

  it('is left open by a corner, by a place toward one, and by a hole at the balance', async () => {
    const corners = ['top-left', 'bottom-right', '{left: 26, up: 16}'];
    for (const place of corners) assertSilent(await tag(`{hole: {diameter: 2, at: ${place}}}`), 'hangs-askew', place);
    assertSilent(await tag('{ring: {at: top-right}}'), 'hangs-askew');
    // Toward a corner from 20° on.
    const off = (degrees: number) => at(15 * Math.tan((degrees * Math.PI) / 180));
    only(await tag(off(19.9)), 'hangs-askew');
    assertSilent(await tag(off(20.1)), 'hangs-askew');
    // Less than a millimetre from the balance.
    assertSilent(await tag(at(0.3, 0.9)), 'hangs-askew');
    only(await tag(at(0.3, 1.1)), 'hangs-askew');
  });

  it('is none that a ribbon in its slot would show', async () => {
    const slot = (x: number) => `{slot: {width: 3, length: 11, at: {up: 14, right: ${x}}}}`;
    // The ribbon carries 4 mm to either side of the middle.
    for (const tie of ['tie: {ribbon: 10}', 'units: mm']) {
      assertSilent(await tag(slot(3.5), plate, [tie]), 'hangs-askew', tie);
      assertSilent(await tag(slot(4.6), plate, [tie]), 'hangs-askew', tie);
      only(await tag(slot(5), plate, [tie]), 'hangs-askew');
    }
    only(await tag(slot(2), plate, ['tie: {twine: 1.5}']), 'hangs-askew');
  });
});

describe('A tag that hangs between two openings', () => {
  const two = (left: string, right: string) =>
    `[{hole: {diameter: 2, at: {${left}}}}, {hole: {diameter: 2, at: {${right}}}}]`;

  it('hangs level where they are level and it balances between them', async () => {
    for (const [left, right] of [
      ['left: 20, up: 15', 'right: 20, up: 15'],
      ['left: 5, up: 15', 'right: 24, up: 15'],
      ['left: 25, up: 0', 'right: 25, up: 0'],
      ['left: 25, up: 14', 'left: 25, down: 14'],
      ['right: 25, down: 14', 'right: 25, up: 14'],
      // A chain: the next tag hangs on the lower one.
      ['up: 15', 'down: 15'],
    ] as const) {
      assertSilent(await tag(two(left, right)), 'hangs-askew', `${left}; ${right}`);
    }
    assertSilent(await tag('[{hole: {at: top-left}}, {hole: {at: top-right}}]'), 'hangs-askew');
  });

  it('is told how far they are off level, from one degree on', async () => {
    const rise = (up: number) => tag(two('left: 20, up: 12', `right: 20, up: ${12 + up}`));
    // Exact: 40·tan 1° = 0.698.
    assertSilent(await rise(0.69), 'hangs-askew');
    const issue = only(await rise(0.71), 'hangs-askew');
    assert.equal(issue.message, 'Hangs askew, turned 1° clockwise: its two openings are 0.71 mm off level.');
    assert.deepEqual(issue.path, ['pieces', 'tag', 'hanger', 1, 'hole']);
    assert.match(only(await rise(-4), 'hangs-askew').message, /turned 6° counter-clockwise/);
  });

  it('is told where it balances beside both', async () => {
    const issue = only(await tag(two('left: 22, up: 15', 'left: 3, up: 15')), 'hangs-askew');
    assert.match(issue.message, /turned 11° clockwise: it balances 3\.\d\d mm right of the hole/);
    assert.deepEqual(issue.path, ['pieces', 'tag', 'hanger', 1, 'hole']);
  });
});

describe('Layers with a hole at the same place', () => {
  it('hang as one, and are told once', async () => {
    const text = (x: number) => `tagwright: 1
shapes:
  plate: {rectangle: [60, 40]}
hangers: {hung: {hole: {diameter: 2, at: {up: 15, right: ${x}}}}}
pieces:
  back: {body: [plate], hanger: hung}
  front: {body: [{from: plate}], hanger: hung, glue_to: back}
`;
    assert.equal(found(await make(text(4)), 'hangs-askew').length, 1);
    assertSilent(await make(text(0)), 'hangs-askew');
  });
});
