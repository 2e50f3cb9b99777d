/** Places a shape on another. */

import { translation } from '../geometry/affine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Affine, Point } from '../geometry/types.ts';
import type { Anchor, Beside, CentreRule, Place } from '../spec/shape-model.ts';
import { quietZoneOf } from './code.ts';
import { centreOf } from './made-shape.ts';
import type { MadeShape } from './made-shape.ts';

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

/**
 * The move that places `made` on `target`. At `center`, their centres under the rule coincide. At a side or corner,
 * the box of the solid touches that side from within, `margin` away; beside the target it is `margin` away outside, and
 * centred along that side under the rule. `middle` replaces the centre of the target.
 */
export function placingMove(
  made: MadeShape,
  target: MadeShape,
  at: Anchor | Beside,
  margin: number,
  by: CentreRule,
  middle?: Point,
): Affine {
  const box = boundsOf(made.region);
  const frame = boundsOf(target.region);
  const from = centreOf(made, by);
  // A plate has no letters, so the rules for letters fall back to the plate's own middle.
  const to = middle ?? centreOf({ region: target.region }, by);
  if (!box || !frame || !from || !to) return translation(0, 0);
  const centred = { x: to.x - from.x, y: to.y - from.y };
  // Lettering on a line is placed by that line, whatever its letters.
  const { band } = made;
  const [foot, head] = band?.even ? [band.baseline, band.even.head] : [box.minY, box.maxY];
  if (at === 'above') return translation(centred.x, frame.maxY + margin - foot);
  if (at === 'below') return translation(centred.x, frame.minY - margin - head);
  if (at === 'left of') return translation(frame.minX - margin - box.maxX, centred.y);
  if (at === 'right of') return translation(frame.maxX + margin - box.minX, centred.y);
  let { x, y } = centred;
  if (at.includes('left')) x = frame.minX + margin - box.minX;
  if (at.includes('right')) x = frame.maxX - margin - box.maxX;
  if (at.includes('bottom')) y = frame.minY + margin - foot;
  if (at.includes('top')) y = frame.maxY - margin - head;
  return translation(x, y);
}
