import assert from 'node:assert/strict';
import type { Region } from '../../../src/geometry/types.ts';
import { orient } from '../../../src/nesting/orientation.ts';
import type { Orientation, Turn } from '../../../src/nesting/orientation.ts';
import { outlineOf } from '../../../src/nesting/part-outline.ts';
import { noFitBoundary } from '../../../src/nesting/separation/no-fit-boundary.ts';
import { last, PenetrationField } from '../../../src/nesting/separation/penetration-field.ts';
import { unionAreaByJts } from '../support/reference.ts';
import { boxOf, moved } from '../support/sheets.ts';
import { box, seededRandom, shapesOfEachKind, subtract } from '../support/shapes.ts';
import type { Between } from '../support/shapes.ts';

/** An orientation and its material, the middle of its box at the origin. */
function posed(region: Region, turn: Turn, shape: number): { orientation: Orientation; region: Region } {
  const orientation = orient(outlineOf(region, 0)!, turn, shape);
  const { minX, minY } = boxOf([region]);
  const { toOrigin, width, height } = orientation;
  const atOrigin = moved(region, { a: 1, b: 0, c: 0, d: 1, e: -minX, f: -minY });
  const middle = { ...toOrigin, e: toOrigin.e - width / 2, f: toOrigin.f - height / 2 };
  return { orientation, region: moved(atOrigin, middle) };
}

/** mm², by jsts. */
function overlapOf(a: Region, b: Region): number {
  return unionAreaByJts([a]) + unionAreaByJts([b]) - unionAreaByJts([a, b]);
}

const at = (region: Region, e: number, f: number): Region => moved(region, { a: 1, b: 0, c: 0, d: 1, e, f });

describe('How deep a part is in another', () => {
  it('is nothing where jsts finds no overlap, and the way out leads to where there is none, and not less far', () => {
    const random = seededRandom(11);
    const between: Between = (low, high) => low + (high - low) * random();
    const pick = () => Math.floor(between(0, 1e6));
    let [apart, together] = [0, 0];
    for (let round = 0; round < 16; round += 1) {
      const [a, b] = [0, 1].map((shape) =>
        posed(shapesOfEachKind[pick() % shapesOfEachKind.length]!(between), (pick() % 4) as Turn, shape),
      ) as [ReturnType<typeof posed>, ReturnType<typeof posed>];
      const field = new PenetrationField(noFitBoundary(a.orientation, b.orientation));
      for (let k = 0; k < 5; k += 1) {
        const [x, y] = [between(field.minX - 1, field.maxX + 1), between(field.minY - 1, field.maxY + 1)];
        const overlap = overlapOf(a.region, at(b.region, x, y));
        const depth = field.depth(x, y);
        if (depth === 0) {
          assert.ok(overlap < 1e-3, `no depth, but an overlap of ${overlap} mm²`);
          apart += 1;
          continue;
        }
        const { exitX, exitY } = last;
        assert.ok(Math.abs(Math.hypot(exitX, exitY) - depth) < 1e-9);
        if (depth > 1e-3) assert.ok(overlap > 1e-9, `${depth} mm deep, but no overlap`);
        const [outX, outY] = [x + exitX * (1 + 1e-5), y + exitY * (1 + 1e-5)];
        assert.ok(overlapOf(a.region, at(b.region, outX, outY)) < 2e-3);
        // Any shorter way in a direction of chance leaves an overlap.
        const angle = between(0, 2 * Math.PI);
        const short = Math.max(0, depth - 1e-3);
        const near = at(b.region, x + short * Math.cos(angle), y + short * Math.sin(angle));
        if (depth > 0.01) assert.ok(overlapOf(a.region, near) > 1e-9, 'there is a shorter way');
        together += 1;
      }
    }
    assert.ok(apart > 12 && together > 12, `${apart} ${together}`);
  });

  it('is half the sum of the sides for two boxes on one another', () => {
    const [large, small] = [posed([box(0, 0, 20, 10)], 0, 0), posed([box(0, 0, 6, 4)], 0, 1)];
    const field = new PenetrationField(noFitBoundary(large.orientation, small.orientation));
    assert.ok(Math.abs(field.depth(0, 0) - 7) < 1e-4);
    assert.ok(Math.abs(field.depth(11, 0) - 2) < 1e-4);
    assert.equal(field.depth(13.001, 0), 0);
    // Roughly: to within what a cell measures.
    assert.ok(Math.abs(field.roughDepth(0, 0) - 7) < 1);
  });

  it('knows that a part in the opening of a frame is in nothing', () => {
    const frame = subtract([box(0, 0, 30, 30)], [box(5, 5, 25, 25)]);
    const plate = posed([box(0, 0, 19, 19)], 0, 1);
    const field = new PenetrationField(noFitBoundary(posed(frame, 0, 0).orientation, plate.orientation));
    assert.equal(field.depth(0, 0), 0);
    assert.ok(Math.abs(field.depth(1.5, 0) - 1) < 1e-4);
  });
});
