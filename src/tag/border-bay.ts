/** The bay in which a border passes an opening. */

import { transform, translation } from '../geometry/affine.ts';
import { difference, intersection, offset, union } from '../geometry/clipper.ts';
import { hullOf } from '../geometry/hull.ts';
import { boundsOf, centroid } from '../geometry/measure.ts';
import { nearestOn } from '../geometry/nearest-on.ts';
import type { Point, Region } from '../geometry/types.ts';

/** What comes no nearer than this merely touches, in mm. */
const touchingMm = 0.05;

/** Depth below the edge, in mm, from which a bay opens towards it (our own judgement). */
const mouthMm = 6;

/**
 * What is kept clear round an opening, and all between that and the edge that it is nearest to. Its sides meet the edge
 * at right angles: at a sharp one, the border would curl back on itself.
 *
 * @param reach Distance from the edge, in mm, within which an opening is in the way.
 */
export function bayOf(kept: Region, within: Region, reach: number): Region {
  const beyond = difference(offset(kept, reach), [within]);
  const [from, to] = [centroid(kept), centroid(beyond)];
  const box = boundsOf(within);
  if (!from || !to || !box) return kept;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // All round it is the outside: it lies beside the border.
  if (length < touchingMm) return kept;
  const far = (box.maxX - box.minX + box.maxY - box.minY) / length;
  const shift = translation((to.x - from.x) * far, (to.y - from.y) * far);
  const straight: Region = [hullOf([...kept, ...transform(kept, shift)].flat())];
  return union([straight, mouthOf(straight, within, reach)]);
}

/** The end of a bay, opened so far that each side of it leaves by the shortest way. */
function mouthOf(straight: Region, within: Region, reach: number): Region {
  const inner = intersection(straight, difference(within, [offset(within, -mouthMm)])).flat();
  const left = inner.flatMap((point): Point[] => {
    const nearest = within.map((ring) => nearestOn(ring, point)).reduce((a, b) => (b.length < a.length ? b : a));
    if (nearest.length < touchingMm) return [];
    const share = reach / nearest.length;
    const { to } = nearest;
    return [{ x: to.x + (to.x - point.x) * share, y: to.y + (to.y - point.y) * share }];
  });
  return [hullOf([...inner, ...left])];
}
