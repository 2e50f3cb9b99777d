/** Words that fill a plate leave a line below them for those that come later. */

import { isLine } from '../../tag/fit/line-order.ts';
import { replacing, setting, shapeAt, shapeTitle, specLength, valueAt } from '../candidate.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';

/** Of the letters that fill the plate. */
const factors = [0.9, 0.8, 0.7, 0.6, 0.5];

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
    return [{ words: `Leave a line below ${shapeTitle(shape)}`, candidates }];
  });
}

function atMost(at: Case, path: readonly (string | number)[], height: string): Candidate[] {
  const written = valueAt(at, path);
  const description = `letters at most ${height}`;
  if (typeof written === 'string')
    return [{ description, edits: [replacing(at, path, `{in: ${written}, at_most: {x_height: ${height}}}`)] }];
  return setting(at, path, 'at_most', `{x_height: ${height}}`).map(({ edits }) => ({ description, edits }));
}
