/** Rounds the corners where bars run into letters, as the strokes of a pen run into each other. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, intersection, normalise, offset, union } from '../../geometry/clipper.ts';
import { area, boundsOf, widened } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';
import { coarseMm } from './bodies.ts';
import type { Joint } from './foot-joint.ts';
import type { Measures } from './measures.ts';
import type { Profile } from './profile.ts';

/** Radius in webs, and in widths of the gap above the bar, which half of it would close. Our own judgement. */
const radius = { webs: 0.6, gaps: 0.4 } as const;

/** Radius of the fillets between two letters, in mm, once the right one has moved closer by `shift`. */
export function filletFor({ gaps, first, pitch }: Profile, shift: number, { web, xHeight }: Measures): number {
  const [from, to] = [web, xHeight / 2].map((y) => Math.max(0, Math.round(y / pitch) - first));
  const open = gaps.slice(from, to).map((gap) => gap - shift);
  const narrowest = open.reduce((least, gap) => (gap > 0 ? Math.min(least, gap) : least), Infinity);
  return Math.min(radius.webs * web, radius.gaps * narrowest);
}

/** The fillets of a joint with what they lie on; `whole` holds all that is joined. Empty if there is nothing to round. */
export function filletsOf(whole: Region, { region, fillet }: Joint): Region {
  const box = boundsOf(region);
  if (!box || fillet < 2 * coarseMm) return [];
  const place = widened(box, 2 * fillet);
  const near = normalise(clippedToBox(whole, widened(place, 2 * fillet)));
  const closed = offset(offset(near, fillet, 'round', coarseMm), -fillet, 'round', coarseMm);
  const reached = offset(region, coarseMm, 'miter');
  const own = partsOf(normalise(clippedToBox(difference(closed, [near]), place)))
    .filter((part) => area(part) > coarseMm * fillet)
    .map((part) => offset(part, coarseMm, 'miter'))
    .filter((part) => intersection(part, reached).length > 0);
  return own.length === 0 ? [] : normalise(clippedToBox(union([near, ...own]), place));
}
