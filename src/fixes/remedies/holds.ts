/** Widens the straps and bridges that hold a shape together. */

import type { HoldWidth } from '../../spec/model/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, setting, settingLengths, shapeAt, specLength } from '../candidate.ts';

/** Multiples of the minimum; slightly more is needed where a strap ends on a curve. */
const shares = [1, 1.1, 1.25];

/** Straps and bridges of the shape that are too narrow. */
export function widerHolds(at: Case): Remedy[] {
  const shape = shapeAt(at, at.issue.path);
  const { minimum } = at.issue;
  if (!shape || minimum === undefined) return [];
  const { straps, bridges } = shape.modifiers;
  const least = (now: HoldWidth) => (now === 'auto' ? at.model.stock.minWeb : now);
  const widths = (now: HoldWidth) =>
    shares.map((share) => share * minimum).filter((width) => width > least(now) + 0.005);
  return [
    {
      words: `Widen the straps of ${shapeTitle(shape)}`,
      candidates: straps === undefined ? [] : settingLengths(at, shape.path, 'straps', widths(straps)),
    },
    {
      words: `Widen the bridges of ${shapeTitle(shape)}`,
      candidates: bridges ? widths(bridges.width).flatMap((width) => settingBridges(at, shape.path, width)) : [],
    },
  ];
}

/** Bridges are written as a width, or as a map of width and sides. */
function settingBridges(at: Case, path: Case['issue']['path'], width: number) {
  const text = specLength(width, at.tag.units);
  const inGroup = setting(at, [...path, 'bridges'], 'width', text);
  return inGroup.length > 0 ? inGroup : setting(at, path, 'bridges', text);
}
