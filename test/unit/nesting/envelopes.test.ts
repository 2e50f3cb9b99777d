import assert from 'node:assert/strict';
import type { Region } from '../../../src/geometry/types.ts';
import { envelopeBoundary } from '../../../src/nesting/envelopes/envelope-boundary.ts';
import {
  envelopesApart,
  envelopeArea,
  envelopeOf,
  envelopeStep,
  halfTurned,
} from '../../../src/nesting/envelopes/envelope.ts';
import type { Envelope } from '../../../src/nesting/envelopes/envelope.ts';
import { nest } from '../../../src/nesting/nest.ts';
import { orient, turnedOutline } from '../../../src/nesting/orientation.ts';
import type { Turn } from '../../../src/nesting/orientation.ts';
import { outlineOf } from '../../../src/nesting/part-outline.ts';
import { PenetrationField } from '../../../src/nesting/separation/penetration-field.ts';
import { firstNames } from '../../names/names.ts';
import { differenceAreaByJts, intersectionAreaByJts } from '../support/reference.ts';
import { assertKept, boxOf, moved, never, sheetsOf } from '../support/sheets.ts';
import { box, disc, ellipse, seededRandom, shapesOfEachKind } from '../support/shapes.ts';
import type { Between } from '../support/shapes.ts';
import { word } from '../support/words.ts';

/** Envelope of a region in a turn, and the region's material about the middle of its box. */
function posed(region: Region, turn: Turn): { envelope: Envelope; region: Region } {
  const outline = outlineOf(region, 0)!;
  const orientation = orient(outline, turn, 0);
  const { minX, minY } = boxOf([region]);
  const { toOrigin, width, height } = orientation;
  const atOrigin = moved(region, { a: 1, b: 0, c: 0, d: 1, e: -minX, f: -minY });
  const middle = { ...toOrigin, e: toOrigin.e - width / 2, f: toOrigin.f - height / 2 };
  return { envelope: envelopeOf(turnedOutline(outline, turn)), region: moved(atOrigin, middle) };
}

/** What lies between the two lines. */
function between({ upper, lower }: Envelope): Region {
  const x = (knot: number) => (knot - (upper.length - 1) / 2) * envelopeStep;
  const below = [...lower].map((y, knot) => ({ x: x(knot), y }));
  return [[...below, ...[...upper].map((y, knot) => ({ x: x(knot), y })).reverse()]];
}

const shifted = (region: Region, e: number, f: number): Region => moved(region, { a: 1, b: 0, c: 0, d: 1, e, f });

const random = seededRandom(31);
const amid: Between = (low, high) => low + (high - low) * random();
const kinds = shapesOfEachKind.length;
const someShape = (round: number): Region => shapesOfEachKind[round % kinds]!(amid);

describe('The envelope of a part', () => {
  it('has all of it between its lines, by jsts, in each turn', () => {
    for (let round = 0; round < 2 * kinds; round += 1) {
      const { envelope, region } = posed(someShape(round), (round % 4) as Turn);
      const outside = differenceAreaByJts(region, between(envelope));
      assert.ok(outside < 1e-3, `${outside} mm² of shape ${round % kinds} outside`);
    }
  });

  it('lies close to a round part, and upon a box as wide as its steps', () => {
    // Half a step at either end, and what a curve rises between two knots (by the area of a circle and an ellipse).
    for (const [ring, area] of [
      [disc(0, 0, 10), Math.PI * 100],
      [ellipse(3, 4, 30, 6), Math.PI * 180],
    ] as const) {
      const found = envelopeArea(posed([ring], 0).envelope);
      assert.ok(found >= area - 0.1 && found < 1.02 * area, `${found} of ${area} mm²`);
    }
    assert.ok(Math.abs(envelopeArea(posed([box(0, 0, 20, 7)], 0).envelope) - 140) < 1e-3);
  });

  it('turned by half a turn is that of the part turned', () => {
    for (let round = 0; round < kinds; round += 1) {
      const shape = someShape(round);
      const [turned, again] = [halfTurned(posed(shape, 0).envelope), posed(shape, 2).envelope];
      for (const [knot, height] of again.upper.entries()) {
        assert.ok(Math.abs(height - turned.upper[knot]!) < 1e-6);
        assert.ok(Math.abs(again.lower[knot]! - turned.lower[knot]!) < 1e-6);
      }
    }
  });

  it('says of two parts that they are apart only where jsts finds that they do not overlap, and of envelopes exactly', () => {
    let [apart, together] = [0, 0];
    for (let round = 0; round < 6 * kinds; round += 1) {
      const [a, b] = [posed(someShape(round), 0), posed(someShape(round + 1 + (round % 3)), round % 2 === 0 ? 0 : 2)];
      const [one, other] = [boxOf([a.region]), boxOf([b.region])];
      const [x, y] = [amid(-1, 1) * (one.maxX + other.maxX), amid(-1, 1) * (one.maxY + other.maxY)];
      const overlap = intersectionAreaByJts(
        between(a.envelope),
        between({ ...b.envelope }).map((ring) => shifted([ring], x, y)[0]!),
      );
      if (envelopesApart(a.envelope, b.envelope, x, y)) {
        assert.ok(overlap < 1e-3, `apart, with ${overlap} mm² of envelopes in one another`);
        const own = intersectionAreaByJts(a.region, shifted(b.region, x, y));
        assert.ok(own < 1e-3, `apart, with ${own} mm² in one another`);
        apart += 1;
      } else {
        // Two that only touch may be said to overlap.
        assert.ok(overlap > 0, 'together, without an overlap');
        together += 1;
      }
    }
    assert.ok(apart > kinds && together > kinds, `${apart} ${together}`);
  });

  it('leads two parts out of one another, by jsts', () => {
    let [outside, inside] = [0, 0];
    for (let round = 0; round < 3 * kinds; round += 1) {
      const [a, b] = [posed(someShape(round), 0), posed(someShape(round + 2), 0)];
      const field = new PenetrationField(envelopeBoundary(a.envelope, b.envelope));
      for (let k = 0; k < 4; k += 1) {
        const [x, y] = [amid(field.minX - 1, field.maxX + 1), amid(field.minY - 1, field.maxY + 1)];
        const overlap = intersectionAreaByJts(between(a.envelope), shifted(between(b.envelope), x, y));
        const depth = field.depth(x, y);
        if (depth === 0) assert.ok(overlap < 1e-3, `no depth, but an overlap of ${overlap} mm²`);
        // The boundary has fewer corners, and lies up to 0.04 mm further out for that.
        else if (depth > 0.1) assert.ok(overlap > 0, `${depth} mm deep, but no overlap`);
        if (depth > 0) inside += 1;
        else outside += 1;
      }
    }
    assert.ok(outside > kinds && inside > kinds, `${outside} ${inside}`);
  });
});

describe('Names, all different', () => {
  it('lie closer than boxes ever could, and keep what a layout promises', async () => {
    const parts = await Promise.all(
      firstNames.slice(0, 64).map(async (name) => {
        return { region: await word('pacifico', name, 7 * name.length + 4, 0.02), turns: 'half' as const };
      }),
    );
    const room = { width: 300, height: 200, margin: 3, gap: 1.5 };
    const layout = await nest(parts, room, never, 2_000_000);
    assertKept(parts, room, layout);
    assert.deepEqual(layout.unplaced, []);
    // Boxes with the gap between them, touching on all sides, would take more than this.
    let boxes = 0;
    for (const { region } of parts) {
      const { minX, minY, maxX, maxY } = boxOf([region]);
      boxes += (maxX - minX + room.gap) * (maxY - minY + room.gap);
    }
    const last = boxOf(sheetsOf(parts, layout).at(-1)!);
    const side = Math.min(last.maxX / room.width, last.maxY / room.height);
    const taken = (layout.sheets - 1 + side) * room.width * room.height;
    assert.ok(taken < boxes, `${Math.round(taken)} mm², boxes ${Math.round(boxes)} mm²`);
  });
});
