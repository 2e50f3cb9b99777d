/** How near to another a shape is put beside it: their outlines count, not the boxes round them. */

import { transform } from '../../geometry/affine.ts';
import { offset } from '../../geometry/clipper.ts';
import { Levels, touchingMm, wayToEdges } from '../../geometry/free-way.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Affine, Point, Region } from '../../geometry/types.ts';
import type { Beside } from '../../spec/model/shape-model.ts';
import type { MadeShape } from '../made-shape.ts';

/** Tolerance of outlines, in mm. */
const toleranceMm = 0.002;

/**
 * Of its own depth: as far as a shape goes into a bay of the other, such as a small dot above an H. Its middle stays beyond
 * (our own judgement).
 */
const deepestShare = 0.5;

const towards: Readonly<Record<Beside, Point>> = {
  above: { x: 0, y: -1 },
  below: { x: 0, y: 1 },
  'left of': { x: 1, y: 0 },
  'right of': { x: -1, y: 0 },
};

/** Whether it is put by its box all the same: a code by its quiet zone, a line below another whatever letters they have. */
function isByBox(made: MadeShape, target: MadeShape, at: Beside): boolean {
  const areWords = made.lettering !== undefined && target.lettering !== undefined;
  return [made, target].some(({ codes }) => codes !== undefined) || (areWords && (at === 'above' || at === 'below'));
}

/**
 * The further move from where the boxes are `gap` apart to where the outlines are; a negative gap is how far they overlap.
 * @param move To where the boxes are that far apart.
 */
export function furtherMove(made: MadeShape, target: MadeShape, at: Beside, gap: number, move: Affine): Point {
  if (isByBox(made, target, at)) return { x: 0, y: 0 };
  const way = Math.min(wayBetween(made.region, target.region, at, gap, move), deepest(made.region, at));
  return { x: way * towards[at].x, y: way * towards[at].y };
}

function wayBetween(region: Region, target: Region, at: Beside, gap: number, { e, f }: Affine): number {
  const { x, y } = towards[at];
  // From where they touch if they are to overlap.
  const back = Math.min(0, gap);
  const own = transform(simplified(region, toleranceMm), {
    a: 1,
    b: 0,
    c: 0,
    d: 1,
    e: e + back * x,
    f: f + back * y,
  });
  const outline = simplified(target, toleranceMm);
  const around = gap > 0 ? offset(outline, gap) : outline;
  const [along, across] = x === 0 ? (['y', 'x'] as const) : (['x', 'y'] as const);
  const still = { along: 0, across: 0 };
  const ofOwn = wayToEdges(new Levels(own.flat(), along, across), around, false, along, across, still);
  const ofOther = wayToEdges(new Levels(around.flat(), along, across), own, false, along, across, still);
  const isAhead = x + y > 0;
  const way = isAhead ? Math.min(ofOwn.ahead, ofOther.back) : Math.min(ofOwn.back, ofOther.ahead);
  if (!Number.isFinite(way)) return 0;
  return way > 0 ? way + touchingMm : 0;
}

function deepest(region: Region, at: Beside): number {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  return deepestShare * (towards[at].x === 0 ? maxY - minY : maxX - minX);
}
