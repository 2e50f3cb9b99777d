/** Moves a shape that lies apart until it overlaps the rest of its piece. */

import { contains } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { simplified } from '../../geometry/simplify.ts';
import { shortestBetween } from '../../geometry/straps.ts';
import type { Region, Ring } from '../../geometry/types.ts';
import { wholeShapesOf } from '../../tag/whole-shapes.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle } from '../candidate.ts';
import { movedBy } from './moving.ts';

/** How far the shape reaches into the rest, in webs. */
const depths = [0.25, 0.5, 0.75, 1, 1.5, 2, 3];

/** Outlines are simplified to this tolerance, in mm. */
const toleranceMm = 0.02;

/** The issue is of a part that falls out. */
export function movedTogether(at: Case): Remedy[] {
  const { piece, issue } = at;
  const seen = issue.points?.[0];
  if (!piece || !seen) return [];
  const parts = partsOf(piece.region);
  const loose = parts.find((part) => contains(part, seen));
  const others = parts.filter((part) => part !== loose);
  if (!loose || others.length === 0) return [];
  // Of two that are apart, either may be the one to move.
  const alone = [loose, ...(others.length === 1 ? others : [])].flatMap((part) => {
    const [shape, ...more] = wholeShapesOf(part, piece);
    return shape && more.length === 0 ? [{ part, shape: shape.shape }] : [];
  });
  return alone.slice(0, 1).map(({ part, shape }) => {
    const from = outlineOf(part);
    const gaps = parts.filter((other) => other !== part).map((other) => shortestBetween(from, outlineOf(other)));
    const gap = gaps.reduce((a, b) => (b.length < a.length ? b : a));
    const [x, y] = [gap.to.x - gap.from.x, gap.to.y - gap.from.y];
    const ways = depths.map((depth) => (gap.length + depth * at.tag.stock.minWeb) / gap.length);
    return {
      words: `Move ${shapeTitle(shape)} until it joins the rest`,
      candidates:
        gap.length > 0
          ? movedBy(
              at,
              shape,
              ways.map((times) => ({ x: x * times, y: y * times })),
            )
          : [],
    };
  });
}

const outlineOf = ([outer]: Region): Ring => simplified([outer!], toleranceMm)[0] ?? outer!;
