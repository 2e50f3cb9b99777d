/** Places a shape on another. */

import { chain, translation } from '../../geometry/affine.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Affine, Bounds, Point } from '../../geometry/types.ts';
import type { Anchor, Beside, CentreRule, Place } from '../../spec/model/shape-model.ts';
import { furtherMove } from './beside.ts';
import { movedWithin } from './within.ts';
import { quietZoneOf } from './code.ts';
import { middleFor } from './seat.ts';
import { centreOf } from '../made-shape.ts';
import type { MadeShape } from '../made-shape.ts';

/** Whether the place is outside the target rather than on it. */
export function isBeside(at: Anchor | Beside): at is Beside {
  return at === 'above' || at === 'below' || at === 'left of' || at === 'right of';
}

/**
 * The distance that a shape keeps where it is placed. What was not asked for gives way to the quiet zone of a code: the
 * gap to what it is beside, and the margin of a code that is as large as will go.
 */
export function placeMargin(
  { at, margin, isUsualGap }: Place,
  made: MadeShape,
  target: MadeShape,
  isFitted: boolean,
): number {
  if (isBeside(at)) return isUsualGap ? Math.max(margin, quietZoneOf(made), quietZoneOf(target)) : margin;
  return isFitted ? Math.max(margin, quietZoneOf(made)) : margin;
}

/** How many times the smaller of two margins the other is at most, where something is centred for the eye (our own judgement). */
const mostUneven = 2;

/**
 * The move that places `made` on `target`. At `center`, their centres under the rule coincide, but for margins that would
 * be very uneven. At a side or corner, the box of the solid touches that side from within, `margin` away, or is as much
 * further in as its outline needs to keep that from the target's; beside the target its outline is `margin` away outside,
 * and it is centred along that side under the rule.
 * @param isFitted It was made as large as goes with those centres, and has no room to move.
 */
export function placingMove(
  made: MadeShape,
  target: MadeShape,
  at: Anchor | Beside,
  margin: number,
  by: CentreRule,
  isFitted: boolean,
): Affine {
  const box = boundsOf(made.region);
  const frame = boundsOf(target.region);
  const from = centreOf(made, by);
  const to = isBeside(at) ? centreOf({ region: target.region }, by) : middleFor(made, target, by);
  if (!box || !frame || !from || !to) return translation(0, 0);
  // Lettering on an arc or on a line of its own is placed by that, whatever its letters.
  const isByInk = by === 'eye' && !made.arcCentre && made.band?.even === undefined;
  const isFree = isByInk && !isFitted && !isBeside(at);
  const centred = isFree ? evened(from, to, box, frame) : { x: to.x - from.x, y: to.y - from.y };
  // Lettering on a line is placed by that line, whatever its letters.
  const { band } = made;
  const [foot, head] = band?.even ? [band.baseline, band.even.head] : [box.minY, box.maxY];
  if (isBeside(at)) {
    const byBox = {
      above: translation(centred.x, frame.maxY + margin - foot),
      below: translation(centred.x, frame.minY - margin - head),
      'left of': translation(frame.minX - margin - box.maxX, centred.y),
      'right of': translation(frame.maxX + margin - box.minX, centred.y),
    }[at];
    const further = isFitted ? { x: 0, y: 0 } : furtherMove(made, target, at, margin, byBox);
    return chain(byBox, translation(further.x, further.y));
  }
  let { x, y } = centred;
  if (at.includes('left')) x = frame.minX + margin - box.minX;
  if (at.includes('right')) x = frame.maxX - margin - box.maxX;
  if (at.includes('bottom')) y = frame.minY + margin - foot;
  if (at.includes('top')) y = frame.maxY - margin - head;
  const asked = { x, y };
  // What stands on a line of its own stays on it.
  const isFixed = isFitted || at === 'center' || margin <= 0 || band?.even !== undefined;
  const found = isFixed ? asked : movedWithin(made, target, margin, asked, centred);
  return translation(found.x, found.y);
}

/** The move of `from` to `to`, or less far off the middle of the frame; as far as the middle of the target itself is off, always. */
function evened(from: Point, to: Point, box: Bounds, frame: Bounds): Point {
  const [own, middle] = [boxCentre(box), boxCentre(frame)];
  const along = (axis: 'x' | 'y', spare: number): number => {
    const most = Math.max((spare / 2) * ((mostUneven - 1) / (mostUneven + 1)), Math.abs(to[axis] - middle[axis]));
    const home = middle[axis] - own[axis];
    return home + Math.min(most, Math.max(-most, to[axis] - from[axis] - home));
  };
  return {
    x: along('x', Math.abs(frame.maxX - frame.minX - (box.maxX - box.minX))),
    y: along('y', Math.abs(frame.maxY - frame.minY - (box.maxY - box.minY))),
  };
}
