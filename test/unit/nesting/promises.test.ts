import assert from 'node:assert/strict';
import fc from 'fast-check';
import { nest } from '../../../src/nesting/nest.ts';
import type { PartToNest, SheetRoom } from '../../../src/nesting/layout.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertKept, boxOf, never } from '../support/sheets.ts';
import { box, disc, polygon, seededRandom, star, subtract, unite } from '../support/shapes.ts';

/** So many edges are enough for a few changes, and little enough for many cases. */
const effort = 200_000;

type Random = (low: number, high: number) => number;

function jagged(between: Random): Region {
  const corners = Math.floor(between(3, 14));
  const points = Array.from({ length: corners }, (_, i) => {
    const radius = between(3, 16);
    const angle = (2 * Math.PI * (i + between(0, 0.8))) / corners;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
  return unite(points);
}

const families: Readonly<Record<string, (between: Random) => Region>> = {
  'jagged rings': jagged,
  boxes: (between) => [box(0, 0, between(2, 30), between(2, 30))],
  rings: (between) => {
    const radius = between(6, 18);
    return subtract([disc(3, 4, radius, 0.05)], [disc(3, 4, between(0.5, radius - 1), 0.05)]);
  },
  'corners of frames': (between) => {
    const [w, h, arm] = [between(10, 30), between(10, 30), between(2, 8)];
    return [polygon([0, 0], [w, 0], [w, arm], [arm, arm], [arm, h], [0, h])];
  },
  stars: (between) => [star(Math.floor(between(3, 9)), between(2, 8), between(8, 16))],
  'blots, many corners each': (between) =>
    unite(...Array.from({ length: 5 }, () => disc(between(-9, 9), between(-9, 9), between(2, 6), 0.01))),
};

const turns = ['none', 'half', 'quarter'] as const;

describe('A layout keeps what it promises', () => {
  for (const [name, family] of Object.entries(families)) {
    it(`with ${name}`, async () => {
      await fc.assert(
        fc.asyncProperty(fc.integer(), async (seed) => {
          const random = seededRandom(seed);
          const between: Random = (low, high) => low + (high - low) * random();
          const shapes = Array.from({ length: 4 }, () => family(between));
          const parts = Array.from({ length: 9 }, (): PartToNest => {
            return { region: shapes[Math.floor(between(0, 4))]!, turns: turns[Math.floor(between(0, 3))]! };
          });
          const room: SheetRoom = {
            width: between(30, 90),
            height: between(30, 90),
            margin: between(0, 1) < 0.3 ? 0 : between(0, 6),
            gap: between(0, 1) < 0.3 ? 0 : between(0.1, 4),
          };
          const layout = await nest(parts, room, never, effort);
          assertKept(parts, room, layout);
          for (const part of layout.unplaced) assert.ok(!goesOn(parts[part]!, room), 'it would have gone on a sheet');
        }),
        // In the example two parts touch by less than nothing, and one must not be pushed through the other.
        { numRuns: 15, examples: [[5]] },
      );
    });
  }

  it('with parts of each kind on one sheet', async () => {
    const random = seededRandom(7);
    const between: Random = (low, high) => low + (high - low) * random();
    const parts = Object.values(families).flatMap((family) =>
      turns.map((turn): PartToNest => ({ region: family(between), turns: turn })),
    );
    const room = { width: 200, height: 120, margin: 3, gap: 1.5 };
    const layout = await nest(parts, room, never, effort);
    assertKept(parts, room, layout);
    assert.equal(layout.unplaced.length, 0);
    assert.equal(layout.sheets, 1);
  });
});

/** By the sides of its box, turned as it may be. */
function goesOn({ region, turns: turn }: PartToNest, { width, height, margin }: SheetRoom): boolean {
  const { minX, minY, maxX, maxY } = boxOf([region]);
  const [w, h] = [maxX - minX, maxY - minY];
  const fits = (across: number, up: number) => across <= width - 2 * margin && up <= height - 2 * margin;
  return fits(w, h) || (turn === 'quarter' && fits(h, w));
}
