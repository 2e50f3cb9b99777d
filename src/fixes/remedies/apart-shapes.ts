/** A shape that lies apart: it is moved until it overlaps the rest of its piece or, within a frame, joined to that by straps. */

import { listedQuoted } from '../../core/names.ts';
import { boundsOf, contains, distance } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { gapBetween } from '../../geometry/straps.ts';
import type { Region } from '../../geometry/types.ts';
import { wholeShapesOf } from '../../tag/whole-shapes.ts';
import type { Case, Candidate, Remedy } from '../candidate.ts';
import { replacing, setting, settingLengths, shapeTitle, specLength, valueAt } from '../candidate.ts';
import { movedBy } from './moving.ts';

/** How far the shape reaches into the rest, in webs. */
const depths = [0.25, 0.5, 0.75, 1, 1.5, 2, 3];

/** Nearer to its outline than this, in mm, a point is on it. */
const outlineMm = 0.01;

/** Width of a strap, in webs: a frame is held by few (our own judgement). */
const strapWebs = 2;

/** The issue is of a part that falls out. */
export function movedTogether(at: Case): Remedy[] {
  const { piece } = at;
  const found = looseOf(at);
  if (!piece || !found) return [];
  const { loose, others } = found;
  const parts = [loose, ...others];
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

/** The shapes of a body as one with straps, where one of them stands within the others. */
export function strappedInFrame(at: Case): Remedy[] {
  const found = looseOf(at);
  const model = at.model.pieces.find(({ id }) => id === at.piece?.id);
  if (!found || !model) return [];
  const [own, frame] = [boundsOf(found.loose)!, boundsOf(found.others.flat())!];
  const isWithin = own.minX > frame.minX && own.maxX < frame.maxX && own.minY > frame.minY && own.maxY < frame.maxY;
  const path = [...model.path, 'body'];
  const names = valueAt(at, path);
  if (!isWithin || !Array.isArray(names) || !names.every((name) => typeof name === 'string')) return [];
  const width = specLength(strapWebs * at.tag.stock.minWeb, at.tag.units);
  const candidates = (['left-right', 'top-bottom'] as const).map((side): Candidate => {
    const body = `{union: [${names.join(', ')}], straps: {width: ${width}, at: ${side}}}`;
    return { description: `${width} wide, ${sidesInWords[side]}`, edits: [replacing(at, path, body)] };
  });
  return [{ words: `Join ${listedQuoted(names)} with straps`, candidates }];
}

/** Margins at which a word that is fitted into a frame reaches it, in mm: those of thin rims and of wide ones. */
const reachingMm = [1.5, 1, 0.5, 0];

/** A word fitted into a frame that ends before it, and perhaps in letters of its own. */
export function reachingFrame(at: Case): Remedy[] {
  const fitted = (at.piece?.sources ?? []).filter(({ use, shape }) => use === 'body' && shape.modifiers.fit);
  return fitted.map(({ shape }) => {
    const { margin } = shape.modifiers.fit!;
    const margins = reachingMm.filter((mm) => mm < margin);
    const alone = settingLengths(at, [...shape.path, 'fit'], 'margin', margins);
    const [lapped] = shape.generator.kind === 'text' ? setting(at, shape.path, 'overlap', 'auto') : [];
    const together = lapped
      ? alone.map(({ description, edits }) => ({
          description: `${description}, ${lapped.description}`,
          edits: [...edits, ...lapped.edits],
        }))
      : [];
    return { words: `Let ${shapeTitle(shape)} reach its frame`, candidates: [...alone, ...together] };
  });
}

const sidesInWords = { 'left-right': 'at the left and the right', 'top-bottom': 'at the top and the bottom' } as const;

/** The part that the problem is shown at, within it or on its outline, and the others; `undefined` if there are none. */
function looseOf({ piece, issue }: Case): { readonly loose: Region; readonly others: readonly Region[] } | undefined {
  const seen = issue.points?.[0];
  if (!piece || !seen) return undefined;
  const parts = partsOf(piece.region);
  const loose = parts.find(
    (part) => contains(part, seen) || part.some((ring) => ring.some((point) => distance(point, seen) < outlineMm)),
  );
  const others = parts.filter((part) => part !== loose);
  return loose && others.length > 0 ? { loose, others } : undefined;
}
