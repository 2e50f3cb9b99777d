import assert from 'node:assert/strict';
import fc from 'fast-check';
import { simplified } from '../../../src/geometry/simplify.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { crosses, EdgeGrid } from '../../../webview/preview/measure/edge-grid.ts';
import type { Box } from '../../../webview/common/camera/viewport.ts';
import { make, specOf } from '../support/engine.ts';
import { intersectionAreaByJts } from '../support/reference.ts';

const hair = 1e-3;

const ringOf = ([minX, minY, maxX, maxY]: Box): Region => [
  [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ],
];

describe('Edges in cells', () => {
  it('meet a box, or enclose it, where jsts finds that it lies in part, or wholly, on a script', async function () {
    this.timeout(180_000);
    const { region: fine, bounds } = await make(
      specOf(['body: {text: Sorrel, font: Pacifico, width: 60 mm}'], 'body: [body]'),
    );
    // With fewer points, for the sake of the library: what is compared is one outline all the same.
    const region = simplified(fine, 0.1);
    const grid = new EdgeGrid(region.map((ring) => ring.map(({ x, y }) => [x, y] as const)));
    const thousandths = (min: number, max: number) =>
      fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((each) => each / 1000);
    const seen = { beside: 0, across: 0, within: 0 };
    fc.assert(
      fc.property(
        thousandths(bounds.minX, bounds.maxX),
        thousandths(bounds.minY, bounds.maxY),
        thousandths(0.2, 2),
        thousandths(0.2, 1),
        (x, y, width, height) => {
          const box: Box = [x, y, x + width, y + height];
          const share = intersectionAreaByJts(region, ringOf(box)) / (width * height);
          const isMet = share > 1e-6 && share < 1 - 1e-6;
          // What touches by a hair is a matter of rounding.
          const least: Box = [x + hair, y + hair, x + width - hair, y + height - hair];
          if (isMet) assert.ok(grid.meets(box), `${share} of ${box.join(' ')}`);
          else {
            assert.ok(!grid.meets(least), `${share} of ${box.join(' ')}`);
            assert.equal(grid.encloses([x + width / 2, y + height / 2]), share > 0.5);
          }
          seen[isMet ? 'across' : share > 0.5 ? 'within' : 'beside']++;
        },
      ),
      { numRuns: 50, seed: 7 },
    );
    assert.ok(Math.min(...Object.values(seen)) > 2, JSON.stringify(seen));
  });

  it('are none where there are no outlines', () => {
    const grid = new EdgeGrid([]);
    assert.equal(grid.meets([-1e3, -1e3, 1e3, 1e3]), false);
    assert.equal(grid.encloses([0, 0]), false);
  });

  it('run through a box, touch it or pass by', () => {
    const box: Box = [0, 0, 4, 2];
    assert.equal(crosses([-1, 1], [5, 1], box), true);
    assert.equal(crosses([1, 1], [2, 1.5], box), true, 'within it');
    assert.equal(crosses([-1, 2], [1, 4], box), false, 'past its corner');
    assert.equal(crosses([5, 0], [5, 2], box), false);
  });
});
