/** Words that fill a plate leave a line below them for those that come later. */

import { samePath } from '../../core/values.ts';
import type { Report } from '../../engine/engine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds } from '../../geometry/types.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import { isLine } from '../../tag/fit/line-order.ts';
import { replacing, setting, shapeAt, shapeTitle, specLength, valueAt } from '../candidate.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';

/** Of the letters that fill the plate: smaller ones leave it half empty (our own judgement, by looking). */
const factors = [0.9, 0.8, 0.7];

/** What the later words keep of their size at least, and how large they are at least beside the others (our own judgement, by looking). */
const leastKept = 0.5;
const leastBeside = 0.3;

/** How far the later words may stand off the middle of the others, as a share of the width of the wider (our own judgement, by looking). */
const offShare = 0.08;

/** For the writer to choose: a name made smaller may be what is least wanted. */
export function lineLeftBelow(at: Case): Remedy[] {
  const later = shapeAt(at, at.issue.path.slice(0, -1));
  const into = later?.modifiers.fit;
  if (!into || !isLine(later.generator)) return [];
  return [...at.tag.made].flatMap(([shape, { lettering }]): Remedy[] => {
    const { fit } = shape.modifiers;
    const high = Math.max(0, ...(lettering ?? []).map(({ xHeight }) => xHeight));
    if (shape === later || fit?.shape !== into.shape || fit.part !== into.part || high === 0) return [];
    const candidates = factors.flatMap((factor) =>
      atMost(at, [...shape.path, 'fit'], specLength(factor * high, at.tag.units)),
    );
    const isWorth = (was: Report, is: Report): boolean => isLineBelow(was, is, shape, later);
    return [{ words: `Leave a line below ${shapeTitle(shape)}`, candidates, isChoice: true, isWorth }];
  });
}

function atMost(at: Case, path: readonly (string | number)[], height: string): Candidate[] {
  const written = valueAt(at, path);
  const description = `letters at most ${height}`;
  if (typeof written === 'string')
    return [{ description, edits: [replacing(at, path, `{in: ${written}, at_most: {x_height: ${height}}}`)] }];
  return setting(at, path, 'at_most', `{x_height: ${height}}`).map(({ edits }) => ({ description, edits }));
}

/** Whether the later words are a line of their own, below all the ink of the others, under their middle and not much smaller than they were. */
function isLineBelow(was: Report, is: Report, others: Shape, later: Shape): boolean {
  const [above, below] = [wordsOf(is, others), wordsOf(is, later)];
  const before = wordsOf(was, later);
  if (!above || !below || !before) return false;
  const off = (below.box.minX + below.box.maxX - above.box.minX - above.box.maxX) / 2;
  return (
    below.box.maxY <= above.box.minY &&
    Math.abs(off) <= offShare * Math.max(widthOf(below.box), widthOf(above.box)) &&
    below.xHeight >= leastKept * before.xHeight &&
    below.xHeight >= leastBeside * above.xHeight
  );
}

interface Words {
  readonly box: Bounds;
  readonly xHeight: number;
}

function wordsOf({ tag }: Report, { path }: Shape): Words | undefined {
  for (const { marks, sources } of tag?.pieces ?? [])
    for (const { shape, region, lettering = [] } of [...marks, ...sources]) {
      const box = samePath(shape.path, path) ? boundsOf(region) : undefined;
      if (box && lettering.length > 0) return { box, xHeight: Math.max(...lettering.map(({ xHeight }) => xHeight)) };
    }
  return undefined;
}

function widthOf({ minX, maxX }: Bounds): number {
  return maxX - minX;
}
