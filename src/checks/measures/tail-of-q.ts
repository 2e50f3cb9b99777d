/** The tail of a Q, which is all that tells it from an O: what one side of it has and the other has not. */

import { transform } from '../../geometry/affine.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { area, boundsOf, boxCentre, ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';

const letterQ = /^Q$/u;

/** In x-heights: what is narrower than this is no more than an O that is not quite even. */
const least = 0.06;

/** A counter that lacks more than this share on one side has the tail within it too, where nothing outside hides it. */
const withinShare = 0.04;

/** The tail, if all of it lies outside the counter. */
export function tailOfQ({ text, region }: { readonly text: string; readonly region: Region }, xHeight: number): Region {
  if (!letterQ.test(text)) return [];
  const counter = region.filter((ring) => ringArea(ring) < 0).map((ring) => ring.toReversed());
  const box = boundsOf(counter);
  if (!box) return [];
  const { x } = boxCentre(box);
  const mirrored = (each: Region): Region =>
    transform(each, { a: -1, b: 0, c: 0, d: 1, e: 2 * x, f: 0 }).map((ring) => ring.toReversed());
  if (area(difference(mirrored(counter), [counter])) > withinShare * area(counter)) return [];
  const outer = region.filter((ring) => ringArea(ring) > 0);
  const half = (least / 2) * xHeight;
  const uneven = offset(offset(difference(outer, [mirrored(outer)]), -half), half);
  return partsOf(uneven).toSorted((a, b) => area(b) - area(a))[0] ?? [];
}
