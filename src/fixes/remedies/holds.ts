/** Widens the straps and bridges that hold a shape together. */

import type { HoldWidth } from '../../spec/model/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, setting, shapeAt, specLength } from '../candidate.ts';

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
      candidates: straps ? widths(straps.width).flatMap((width) => settingHold(at, shape.path, 'straps', width)) : [],
    },
    {
      words: `Widen the bridges of ${shapeTitle(shape)}`,
      candidates: bridges
        ? widths(bridges.width).flatMap((width) => settingHold(at, shape.path, 'bridges', width))
        : [],
    },
  ];
}

/** They are written as a width, or as a map of width and sides. */
function settingHold(at: Case, path: Case['issue']['path'], key: 'straps' | 'bridges', width: number) {
  const text = specLength(width, at.tag.units);
  const inGroup = setting(at, [...path, key], 'width', text);
  return inGroup.length > 0 ? inGroup : setting(at, path, key, text);
}
