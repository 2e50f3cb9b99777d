import assert from 'node:assert/strict';
import type { Ring } from '../../../src/geometry/types.ts';
import { tearOut, walls } from '../../../src/strength/opening.ts';
import type { Pull } from '../../../src/strength/section.ts';
import { assertNear } from '../support/engine.ts';
import { box, polygon } from '../support/shapes.ts';
import { drilled, movedPiece } from './pieces.ts';

/** A plate with a hole of 4 mm about the origin, pulled upwards, all of it turned. */
function pullOf(outline: Ring, turn = 0): Pull {
  const { region, hangers } = movedPiece(drilled([outline], { x: 0, y: 0 }, 4), turn);
  return {
    island: region,
    outlines: region,
    hanger: hangers[0]!,
    centre: { x: 0, y: 0 },
    up: { x: -Math.sin(turn), y: Math.cos(turn) },
    right: { x: Math.cos(turn), y: Math.sin(turn) },
    lengthMm: 20,
  };
}

describe('The least material beside an opening', () => {
  // Exact: above a circle of radius r about the origin, a straight edge y = h − k·x is least far off, straight up, where the
  // circle is as steep, x = r·k/√(1 + k²), and there by h − r·√(1 + k²).
  for (const share of [-0.9, -0.75, -0.6, -0.45, -0.3, -0.15, 0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9]) {
    it(`is found where a slanting edge comes nearest, ${share} of the radius off the middle`, () => {
      const k = share / Math.sqrt(1 - share ** 2);
      const outline = polygon([-2.2, -20], [2.2, -20], [2.2, 9 - 2.2 * k], [-2.2, 9 + 2.2 * k]);
      for (const turn of [0, 1.1, -2.3]) {
        const pull = pullOf(outline, turn);
        const { widthMm, totalMm, effectiveMm, ends } = tearOut(pull);
        assertNear(widthMm, 9 - 2 * Math.sqrt(1 + k ** 2), 1e-3);
        // Two planes of shear.
        assertNear(totalMm, 2 * widthMm, 1e-12);
        assert.equal(effectiveMm, totalMm);
        const [x, rim, edge] = [2 * share, 2 * Math.sqrt(1 - share ** 2), 9 - k * 2 * share];
        ends.forEach((end, i) => {
          assertNear(end.x * pull.right.x + end.y * pull.right.y, x, 1e-3, 'beside the middle');
          assertNear(end.x * pull.up.x + end.y * pull.up.y, i === 0 ? rim : edge, 1e-3, 'along the pull');
        });
      }
    });
  }

  it('ends where the material does, not beyond a gap', () => {
    // A slit 1 mm high, 3 mm above the hole.
    const pull = pullOf(box(-10, -20, 10, 9));
    const slit = { ...pull, island: [...pull.island, [...box(-9, 5, 9, 6)].reverse()] };
    assertNear(tearOut(slit).widthMm, 3, 1e-3);
  });

  it('is the thinner wall of both, whichever side it is on', () => {
    for (const [left, right] of [
      [10, 5],
      [5, 10],
    ] as const) {
      const { widthMm, totalMm, ends, what, count } = walls(pullOf(box(-left, -20, right, 9)));
      assertNear(widthMm, 3, 1e-3);
      assertNear(totalMm, 6, 2e-3);
      const side = left < right ? -1 : 1;
      assertNear(ends[0].x, 2 * side, 1e-3);
      assertNear(ends[1].x, 5 * side, 1e-3);
      assert.deepEqual([what, count], ['wall', 2]);
    }
  });

  it('makes the wall as wide as its stress says, turned or not', () => {
    // x = 4/10: Ktn 12.882 − 21.0856 + 14.3619 − 3.3067 = 2.8516 (Peterson's chart, from memory), · .4/.6 = 1.9011; the end
    // 9/4 diameters off: 1 + .5·.75/2 = 1.1875; loose 1.5.
    for (const turn of [0, 0.7])
      assertNear(walls(pullOf(box(-5, -20, 10, 9), turn)).effectiveMm, 4 / (1.9011 * 1.1875 * 1.5), 2e-3);
  });
});
