/** Rounds the corners where bars run into letters, as the strokes of a pen run into each other. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, intersection, normalise, offset, union } from '../../geometry/clipper.ts';
import { area, boundsOf, boxRing, widened } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';
import { coarseMm } from './bodies.ts';
import type { Joint } from './foot-joint.ts';
import type { Measures } from './measures.ts';
import type { Profile } from './profile.ts';

/**
 * Radius in webs, in x-heights, and in widths of the gap above the bar, which half of it would close. A larger one fills the
 * bays of an s or an e, which then read as a c or an o. Our own judgement, by eye.
 */
const radius = { webs: 0.35, xHeights: 0.06, gaps: 0.4 } as const;

/** Radius of the fillets between two letters, in mm, once the right one has moved closer by `shift`. */
export function filletFor({ gaps, first, pitch }: Profile, shift: number, { web, xHeight }: Measures): number {
  const [from, to] = [web, xHeight / 2].map((y) => Math.max(0, Math.round(y / pitch) - first));
  const open = gaps.slice(from, to).map((gap) => gap - shift);
  const narrowest = open.reduce((least, gap) => (gap > 0 ? Math.min(least, gap) : least), Infinity);
  return Math.min(radius.webs * web, radius.xHeights * xHeight, radius.gaps * narrowest);
}

/**
 * The fillets of a joint with what they lie on; `whole` holds all that is joined. Empty if there is nothing to round.
 * `counters` of letters stay open.
 */
export function filletsOf(whole: Region, { region, fillet }: Joint, counters: Region): Region {
  const box = boundsOf(region);
  if (!box || fillet < 2 * coarseMm) return [];
  const place = widened(box, 2 * fillet);
  const within = [boxRing(place)];
  const near = normalise(clippedToBox(whole, widened(place, 2 * fillet)));
  const closed = offset(offset(near, fillet, 'round', coarseMm), -fillet, 'round', coarseMm);
  const reached = offset(region, coarseMm, 'miter');
  const own = partsOf(intersection(difference(closed, [near, counters]), within))
    .filter((part) => area(part) > coarseMm * fillet)
    .map((part) => offset(part, coarseMm, 'miter'))
    .filter((part) => intersection(part, reached).length > 0);
  return own.length === 0 ? [] : intersection(union([near, ...own]), within);
}
