/** Decides whether fitted lettering stays where it was when something else is changed. */

import { samePath, valueAt } from '../core/values.ts';
import type { Report } from '../engine/engine.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Bounds, Point, Region } from '../geometry/types.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Piece } from '../tag/tag.ts';

/**
 * How far fitted lettering may go along with another change, as a share of its width and of its height: beyond that it has
 * jumped to another place (our own judgement).
 */
const goesAlong = 0.5;

/** Whether no fitted shape, itself written as it was, has jumped to another place of its piece. */
export function staysPut(before: Report, after: Report): boolean {
  return (before.tag?.pieces ?? []).every((was) => {
    const is = after.tag?.pieces.find(({ id }) => id === was.id);
    if (!is) return true;
    const now = fittedOn(is);
    return fittedOn(was).every(({ shape, region }) => {
      const same = now.find((each) => samePath(each.shape.path, shape.path));
      if (
        !same ||
        (now.length > 1 && isAside(before, shape)) ||
        writtenAt(before, shape) !== writtenAt(after, same.shape)
      )
        return true;
      const [from, to] = [placeIn(region, was), placeIn(same.region, is)];
      if (!from || !to) return true;
      return (
        Math.abs(to.at.x - from.at.x) <= goesAlong * (from.box.maxX - from.box.minX) &&
        Math.abs(to.at.y - from.at.y) <= goesAlong * (from.box.maxY - from.box.minY)
      );
    });
  });
}

/** Whether it is said to stand beside others, from where it should go. */
function isAside({ issues }: Report, { path }: Shape): boolean {
  return issues.some((issue) => issue.code === 'squeezed' && samePath(issue.path, [...path, 'fit']));
}

interface Fitted {
  readonly shape: Shape;
  readonly region: Region;
}

function fittedOn({ marks, sources }: Piece): Fitted[] {
  return [...marks, ...sources.filter(({ use }) => use === 'cut')].filter(({ area }) => area?.room);
}

function writtenAt({ source }: Report, { path }: Shape): string {
  return JSON.stringify(valueAt(source.value, path));
}

/** The box of a region, and its middle as seen from the middle of the body. */
function placeIn(region: Region, { body }: Piece): { readonly at: Point; readonly box: Bounds } | undefined {
  const [box, whole] = [boundsOf(region), boundsOf(body)];
  if (!box || !whole) return undefined;
  const [own, middle] = [boxCentre(box), boxCentre(whole)];
  return { at: { x: own.x - middle.x, y: own.y - middle.y }, box };
}
