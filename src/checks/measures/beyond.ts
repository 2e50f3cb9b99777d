/** Distances by which lines on one piece lie outside another that is glued over them. */

import { EdgeIndex } from '../../geometry/edge-index.ts';
import { contains, distanceToSegment } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point } from '../../geometry/types.ts';
import { pointsAlong } from './points-along.ts';
import { perRegionPair } from './per-region-pair.ts';

/**
 * A line is meant for a glued piece if no point of it is farther outside than this, in mm; other lines are decoration
 * (our own judgement).
 */
export const meantMm = 1;

/**
 * A line must lie this far inside the edge to be hidden, in mm: the beam has a width, and glueing by hand is not exact.
 */
export const hiddenMm = 0.1;

/** Distances are measured up to these limits: enough to decide what is meant, and what is hidden. */
const reachMm = 1.25 * meantMm;
const hiddenReachMm = 1.25 * hiddenMm;

/** A point this near to an outline is on it, in mm. */
const onLineMm = 0.001;

/** Tolerance for simplifying outlines, in mm, which halves the work. */
const toleranceMm = 0.002;

/**
 * For each outline of a score line, the distance of points along it outside a glued piece (negative inside), exact
 * where the line shows.
 */
export const distancesBeyond = perRegionPair((score, on) => {
  const outline = simplified(on, toleranceMm);
  const edges = new EdgeIndex(outline);
  return score.map((ring) => {
    let previous: { readonly point: Point; readonly isInside: boolean } | undefined;
    return pointsAlong(simplified([ring], toleranceMm)[0] ?? ring, 0).map((point) => {
      let distance = distanceWithin(hiddenReachMm, edges, point);
      if (distance < onLineMm) {
        previous = undefined;
        return { point, beyond: 0 };
      }
      const isInside: boolean = previous
        ? previous.isInside !== isCrossed(edges, previous.point, point)
        : contains(outline, point);
      previous = { point, isInside };
      if (isInside) return { point, beyond: -distance };
      if (distance === hiddenReachMm) distance = distanceWithin(reachMm, edges, point);
      return { point, beyond: distance };
    });
  });
});

/** Distance to the nearest edge, at most `reach`. */
function distanceWithin(reach: number, edges: EdgeIndex, point: Point): number {
  return edges
    .near(point, reach)
    .reduce((least, [from, to]) => Math.min(least, distanceToSegment(point, from, to)), reach);
}

/** Whether a step along the line, with neither end on an edge, crosses the outline an odd number of times. */
function isCrossed(edges: EdgeIndex, from: Point, to: Point): boolean {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const reach = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) / 2;
  return (
    edges.near(middle, reach).filter(([a, b]) => {
      // An edge counts without its end, so that a crossing at a corner is found once.
      if (leftOf(from, to, a) === leftOf(from, to, b)) return false;
      return leftOf(a, b, from) !== leftOf(a, b, to);
    }).length %
      2 ===
    1
  );
}

function leftOf(from: Point, to: Point, { x, y }: Point): boolean {
  return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) > 0;
}
