/** Fills the unintended slits that joining letters leaves between them. */

import { offset } from '../../geometry/clipper.ts';
import { contains, perimeter, ringArea } from '../../geometry/measure.ts';
import { poleOf } from '../../geometry/pole.ts';
import type { Region, Ring } from '../../geometry/types.ts';
import { coarseMm } from './bodies.ts';
import type { Measures } from './measures.ts';

/** Slits between letters narrower than this, in mm, are filled: no eye needs them, and soot closes them. */
const slitMm = 1;

/**
 * Letters are joined by outlines within `coarseMm` of theirs, so a slit that is closed there may really be a hole, and
 * one not quite closed leaves its end as a hole. Both are searched for within this width, in mm: twice the most that
 * two outlines may be off.
 */
const nearlyClosedMm = 4 * coarseMm;

/** A letter's own hole that keeps this share is still that hole; less is a slit that another letter has left of it. */
const ownShare = 0.4;

/** Narrow holes that do not belong to a letter; `whole` and `letters` as grown. */
export function slitsOf(whole: Region, letters: readonly Region[], { grow }: Measures): Region {
  const slits = fills(whole, letters, grow > 0 ? coarseMm : 2 * coarseMm);
  const closed = fills(offset(whole, nearlyClosedMm / 2, 'round', coarseMm), letters, nearlyClosedMm, true);
  // What opens lies round a slit that is open already.
  const opened =
    slits.length > 0 ? fills(offset(whole, -nearlyClosedMm / 2, 'round', coarseMm), letters, nearlyClosedMm) : [];
  return [...slits, ...opened, ...closed];
}

function fills(whole: Region, letters: readonly Region[], by: number, isClosed = false): Region {
  return whole.flatMap((ring): Region => {
    if (ringArea(ring) >= 0) return [];
    // Its largest disc has a radius of at least its area over the length of its outline.
    if (-ringArea(ring) > (slitMm / 2) * perimeter([ring])) return [];
    const hole = [[...ring].reverse()];
    if (offset(hole, -slitMm / 2, 'round', coarseMm).length > 0 || isLettersOwn(ring, letters, isClosed)) return [];
    return offset(hole, by, 'miter');
  });
}

/** Whether a hole is one of a letter, or most of it; when nearly closed, it is smaller all round. */
function isLettersOwn(hole: Ring, letters: readonly Region[], isClosed: boolean): boolean {
  const lost = isClosed ? (perimeter([hole]) * nearlyClosedMm) / 2 : 0;
  const middle = poleOf([[...hole].reverse()], 0.05);
  if (!middle) return false;
  return letters.some((letter) =>
    letter.some(
      (each) => ringArea(each) < 0 && ringArea(hole) - lost < ownShare * ringArea(each) && contains([each], middle),
    ),
  );
}
