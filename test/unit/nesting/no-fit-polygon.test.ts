import assert from 'node:assert/strict';
import type { Region } from '../../../src/geometry/types.ts';
import { NoFitPolygon } from '../../../src/nesting/no-fit-polygon.ts';
import { NoFitPolygons, sectionsSeen } from '../../../src/nesting/no-fit-polygons.ts';
import { outlineOf } from '../../../src/nesting/part-outline.ts';
import { WorkBudget } from '../../../src/nesting/work-budget.ts';
import type { Orientation, Turn } from '../../../src/nesting/orientation.ts';
import { orient } from '../../../src/nesting/orientation.ts';
import { distanceByJts, unionAreaByJts } from '../support/reference.ts';
import { boxOf, moved, never } from '../support/sheets.ts';
import { box, seededRandom, shapesOfEachKind } from '../support/shapes.ts';
import type { Between } from '../support/shapes.ts';

/** mm², 0 for what rounding makes. */
function overlapOf(a: Region, b: Region): number {
  const overlap = unionAreaByJts([a]) + unionAreaByJts([b]) - unionAreaByJts([a, b]);
  return overlap < 1e-9 ? 0 : overlap;
}

/** A orientation and its material, the lower left corner at the origin. */
function posed(region: Region, turn: Turn, shape: number): { orientation: Orientation; region: Region } {
  const orientation = orient(outlineOf(region, 0)!, turn, shape);
  const { minX, minY } = boxOf([region]);
  const atOrigin = moved(region, { a: 1, b: 0, c: 0, d: 1, e: -minX, f: -minY });
  return { orientation, region: moved(atOrigin, orientation.toOrigin) };
}

function isIn(sections: Float64Array, count: number, x: number): boolean {
  for (let i = 0; i < count; i += 2) if (x > sections[i]! && x < sections[i + 1]!) return true;
  return false;
}

/** Without the ends between sections that touch. */
function merged(sections: Float64Array, count: number): number[] {
  const ends = [...sections.subarray(0, count)];
  return ends.filter((x, i) => {
    const beside = ends[i % 2 === 0 ? i - 1 : i + 1];
    return beside === undefined || Math.abs(beside - x) > 1e-9;
  });
}

describe('The no-fit polygon of two parts', () => {
  it('is where jsts finds that they overlap', () => {
    const random = seededRandom(3);
    const between: Between = (low, high) => low + (high - low) * random();
    const sections = new Float64Array(1000);
    let [apart, together, inside] = [0, 0, 0];
    for (let round = 0; round < 120; round += 1) {
      const [a, b] = [0, 1].map((shape) =>
        posed(
          shapesOfEachKind[Math.floor(between(0, shapesOfEachKind.length))]!(between),
          Math.floor(between(0, 4)) as Turn,
          shape,
        ),
      ) as [ReturnType<typeof posed>, ReturnType<typeof posed>];
      const noFit = new NoFitPolygon(a.orientation, b.orientation);
      for (let i = 0; i < 6; i += 1) {
        // Anywhere, or within the box of the resting part where the moving one is small enough.
        const [w, h] = [a.orientation.width - b.orientation.width, a.orientation.height - b.orientation.height];
        const isWithin = i > 2 && w > 0 && h > 0;
        const x = isWithin ? between(0, w) : between(-b.orientation.width, a.orientation.width);
        const y = isWithin ? between(0, h) : between(-b.orientation.height, a.orientation.height);
        const count = noFit.sectionsAt(y, 0, sections, 0);
        const there = moved(b.region, { a: 1, b: 0, c: 0, d: 1, e: x, f: y });
        const overlap = overlapOf(a.region, there);
        // Outlines may stray by 0.015 mm; so near to touching, either answer is right.
        if (overlap < 0.5 && distanceByJts(a.region, there) < 0.05) continue;
        assert.equal(isIn(sections, count, x), overlap > 0, `round ${round}: ${x}, ${y} overlap by ${overlap} mm²`);
        if (overlap > 0) together += 1;
        else apart += 1;
        if (overlap === 0 && isWithin) inside += 1;
      }
    }
    assert.ok(apart > 100 && together > 100 && inside > 2, `${apart} ${together} ${inside}`);
  });

  it('is the same whether it is made or seen from the other part, or turned', () => {
    const random = seededRandom(8);
    const between: Between = (low, high) => low + (high - low) * random();
    const [one, other] = [new Float64Array(1000), new Float64Array(1000)];
    const orientations = [shapesOfEachKind[0]!(between), shapesOfEachKind[3]!(between)].flatMap((region, shape) =>
      ([0, 1, 2, 3] as const).map((turn) => posed(region, turn, shape).orientation),
    );
    const noFits = new NoFitPolygons(new Map(orientations.map((orientation) => [orientation.id, orientation])));
    let flipped = 0;
    for (const resting of orientations) {
      for (const moving of orientations) {
        const made = new NoFitPolygon(resting, moving);
        const seen = noFits.of(resting, moving);
        if (seen.flip) flipped += 1;
        const noFit = noFits.make(seen, new WorkBudget(1, never));
        for (let i = 0; i < 5; i += 1) {
          const y = between(made.minY, made.maxY);
          const expected = merged(one, made.sectionsAt(y, 3, one, 0));
          const found = merged(other, sectionsSeen(noFit, seen.flip, y, 3, other, 0));
          assert.equal(found.length, expected.length);
          for (const [k, x] of expected.entries()) assert.ok(Math.abs(x - found[k]!) < 1e-9);
        }
      }
    }
    assert.ok(flipped > 20, String(flipped));
  });

  it('of two squares is a square of twice the side, less what outlines are thinned by', () => {
    const { orientation } = posed([box(0, 0, 10, 10)], 0, 0);
    const sections = new Float64Array(10);
    const noFit = new NoFitPolygon(orientation, orientation);
    for (const y of [-9.9, 0, 9.9]) {
      assert.equal(noFit.sectionsAt(y, 0, sections, 0), 2);
      assert.ok(Math.abs(sections[0]! + 10) < 1e-5 && Math.abs(sections[1]! - 10) < 1e-5);
    }
    for (const y of [-10, 10]) assert.equal(noFit.sectionsAt(y, 0, sections, 0), 0);
  });
});
