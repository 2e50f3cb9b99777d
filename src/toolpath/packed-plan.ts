/** Cut plans that wait: those of some hundred sheets are held until their files appear together. */

import { keptPackedContours } from '../geometry/packed-contours.ts';
import type { CutPlan, PlannedPath } from './cut-plan.ts';

/** The same plan, but the contours of a path are made whenever they are asked for. */
export function withPackedContours({ steps, bounds }: CutPlan): CutPlan {
  return { steps: steps.map((step) => ({ ...step, paths: step.paths.map(packedPath) })), bounds };
}

function packedPath({ contours, ...path }: PlannedPath): PlannedPath {
  return Object.defineProperties(
    { ...path } as PlannedPath,
    Object.getOwnPropertyDescriptors(keptPackedContours(contours)),
  );
}
