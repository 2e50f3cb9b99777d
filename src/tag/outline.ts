/** A shape before it has its size. */

import { scaling } from '../geometry/affine.ts';
import { curveBounds, flatten } from '../geometry/curves.ts';
import type { CurvePath } from '../geometry/curves.ts';
import { normalise } from '../geometry/clipper.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Bounds, Point } from '../geometry/types.ts';
import { mapSolid } from './solid.ts';
import type { LetterBand, Solid } from './solid.ts';

export interface Outline {
  /** At its natural size; `undefined` where there is nothing. */
  readonly bounds: Bounds | undefined;
  /** At so many times its natural size. Curves are flattened only now, so that every size is equally smooth. */
  at(scaleX: number, scaleY: number): Solid;
}

/** A polygon; it grows about the middle of its box, which stays where it is. */
export function solidOutline(solid: Solid): Outline {
  const bounds = boundsOf(solid.region);
  return {
    bounds,
    at: (x, y) => (bounds && (x !== 1 || y !== 1) ? mapSolid(solid, scaling(x, y, boxCentre(bounds))) : solid),
  };
}

/** Curves that stay where they were drawn. */
export function drawnOutline(curves: CurvePath): Outline {
  return curveOutline(curves, (centre) => centre);
}

/** Curves with the middle of their box on the origin; `band` is in the curves' own coordinates. */
export function centredOutline(curves: CurvePath, band: LetterBand): Outline {
  return curveOutline(curves, () => ({ x: 0, y: 0 }), band);
}

function curveOutline(curves: CurvePath, goal: (centre: Point) => Point, band?: LetterBand): Outline {
  const bounds = curveBounds(curves);
  const centre = bounds ? boxCentre(bounds) : { x: 0, y: 0 };
  const to = goal(centre);
  return {
    bounds,
    at: (scaleX, scaleY) => {
      const affine = { a: scaleX, b: 0, c: 0, d: scaleY, e: to.x - centre.x * scaleX, f: to.y - centre.y * scaleY };
      const region = normalise(flatten(curves, { affine }));
      const height = (y: number) => y * scaleY + affine.f;
      return { region, ...(band ? { band: { baseline: height(band.baseline), top: height(band.top) } } : {}) };
    },
  };
}
