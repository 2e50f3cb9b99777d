import assert from 'node:assert/strict';
import type { Contour } from '../../../src/geometry/contour.ts';
import { keptPackedContours } from '../../../src/geometry/packed-contours.ts';
import { planCuts } from '../../../src/toolpath/cut-plan.ts';
import type { CutPlan } from '../../../src/toolpath/cut-plan.ts';
import { withPackedContours } from '../../../src/toolpath/packed-plan.ts';
import { report } from '../support/engine.ts';
import { nameAndPlate } from '../support/tags.ts';

/** Every operation, outlines with tabs. */
const spec = nameAndPlate('output: {engrave_layers: each, tabs: 2}\n');

const pathsOf = ({ steps }: CutPlan) => steps.flatMap(({ paths }) => paths);

describe('A cut plan that waits for its files', () => {
  it('has the same paths, and holds none of their points', async () => {
    const plan = planCuts((await report(spec)).tag!)!;
    assert.deepEqual(
      plan.steps.map(({ operation }) => operation),
      ['engrave', 'score', 'cut-inner', 'cut-outer'],
    );
    const waiting = withPackedContours(plan);
    assert.deepEqual(waiting, plan);
    for (const path of pathsOf(waiting)) assert.notEqual(path.contours, path.contours, path.piece);
  });

  it('keeps every number as it is', () => {
    const to = { x: -0, y: 0.1 + 0.2 };
    const contours: Contour[] = [
      { start: { x: 5e-324, y: -1e300 }, segments: [{ type: 'line', to }], closed: false },
      {
        start: to,
        segments: [
          { type: 'arc', to: { x: 1 / 3, y: -0 }, centre: { x: 2 / 3, y: Math.PI }, sweep: -Math.SQRT2 },
          { type: 'cubic', to, c1: { x: 1e-9, y: -7 }, c2: { x: 0, y: -0 } },
        ],
        closed: true,
      },
      { start: to, segments: [], closed: true },
    ];
    // Strict: −0 is not 0.
    assert.deepStrictEqual(keptPackedContours(contours).contours, contours);
  });
});
