/** Moves a shape that lies apart until it overlaps the rest of its piece. */

import { contains } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { gapBetween } from '../../geometry/straps.ts';
import { wholeShapesOf } from '../../tag/whole-shapes.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle } from '../candidate.ts';
import { movedBy } from './moving.ts';

/** How far the shape reaches into the rest, in webs. */
const depths = [0.25, 0.5, 0.75, 1, 1.5, 2, 3];

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
    const gaps = parts.filter((other) => other !== part).map((other) => gapBetween(part, other));
    const gap = gaps.reduce((a, b) => (b.length < a.length ? b : a));
    const [x, y] = [gap.to.x - gap.from.x, gap.to.y - gap.from.y];
    const times = depths.map((depth) => 1 + (depth * at.tag.stock.minWeb) / gap.length);
    const ways = gap.length > 0 ? times.map((each) => ({ x: each * x, y: each * y })) : [];
    return { words: `Move ${shapeTitle(shape)} until it joins the rest`, candidates: movedBy(at, shape, ways) };
  });
}
