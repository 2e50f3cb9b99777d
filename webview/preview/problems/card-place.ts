/**
 * Placement of a card that is opened at an anchor: near it, covering as little as possible of the area to keep visible.
 * Pure; px.
 */

import { overlap } from '../measure/edge-grid.ts';
import type { Box, Size, XY } from '../../common/camera/viewport.ts';

const gapPx = 4;

/** Weight of a covered square pixel, in pixels of distance from the anchor: our own judgement. */
const coveredWeight = 1 / 150;

/**
 * Top left corner of the card: below the anchor, above or beside it, or in a corner of the window; over the anchor only
 * if unavoidable.
 */
export function cardPlace(anchor: Box, card: Size, window: Size, watched: Box | undefined): XY {
  const [left, top, right, bottom] = anchor;
  const [farX, farY] = [window.width - card.width - gapPx, window.height - card.height - gapPx];
  const inWindow = ([x, y]: XY): XY => [Math.max(gapPx, Math.min(x, farX)), Math.max(gapPx, Math.min(y, farY))];
  const places: XY[] = [
    [left, bottom + gapPx],
    [left, top - gapPx - card.height],
    [right - card.width, bottom + gapPx],
    [right - card.width, top - gapPx - card.height],
    [right + gapPx, top],
    [left - gapPx - card.width, top],
    [gapPx, farY],
    [farX, farY],
  ];
  let best: { readonly at: XY; readonly cost: number } | undefined;
  for (const place of places) {
    const at = inWindow(place);
    const box: Box = [at[0], at[1], at[0] + card.width, at[1] + card.height];
    const away = Math.hypot(intervalGap(left, right, box[0], box[2]), intervalGap(top, bottom, box[1], box[3]));
    const onAnchor = overlap(box, anchor) ? 1e6 : 0;
    const cost = onAnchor + away + (watched ? coveredWeight * shared(box, watched) : 0);
    if (!best || cost < best.cost) best = { at, cost };
  }
  return best!.at;
}

/** Gap between two intervals. */
function intervalGap(a: number, b: number, c: number, d: number): number {
  return Math.max(c - b, a - d, 0);
}

function shared(a: Box, b: Box): number {
  const width = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
  const height = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
  return Math.max(width, 0) * Math.max(height, 0);
}
