/** Size of the opening that a tie needs. Rule of thumb, no source: a tag hangs by a loop, so two strands go through. */

import type { Tie } from './workshop-model.ts';

/** A disc of 6.35 mm with a hole of 2.79 mm, wall 1.78 mm, suits thin twine (rule of thumb, no source). */
export const leastOpeningMm = 2.8;
export const leastRingWallMm = 1.78;

/** Short side of a slot: a folded ribbon slips through it, and the beam does not char a narrower one shut. */
export const slotOpeningMm = 3;

/** Length of a slot beyond the width of its ribbon. */
export const slotEaseMm = 1;

/** A screw of 3.5 mm with its head of 7 mm goes in and slides up; rule of thumb, no source. */
export const keyholeHeadMm = 8;
export const keyholeSlotMm = 4;

/** Through its hole go both turns of a split ring, in shares of its diameter: easily, and just so (common practice, no source). */
const splitRing = { easy: 0.16, tight: 0.12 } as const;

/** How the size of a tie is meant. */
export const sizeWords = { twine: 'thick', ribbon: 'wide', 'split ring': 'across' } as const;

/**
 * The measured value, if there is one. Otherwise: two round strands of diameter d side by side go through a circle of
 * 2·d; a ribbon gathers to about half its width.
 */
export function comfortableOpening(tie: Tie | undefined): number {
  if (!tie) return leastOpeningMm;
  if (tie.opening !== undefined) return tie.opening;
  const shares = { twine: 2, ribbon: 1 / 2, 'split ring': splitRing.easy } as const;
  return Math.max(leastOpeningMm, shares[tie.kind] * tie.size);
}

/** Smallest opening that the doubled tie goes through: twine packs to about 1.5·d, ribbon to about 0.4 of its width. */
export function tightestOpening(tie: Tie): number {
  if (tie.opening !== undefined) return tie.opening;
  return { twine: 1.5, ribbon: 0.4, 'split ring': splitRing.tight }[tie.kind] * tie.size;
}

/** Twine assumed for a hole if the spec names no tie, in mm; rule of thumb, no source: 1 to 3.5 mm are used. */
const usualTwineMm = 1.5;

/** Thickness of a ribbon that lies flat in a slot: two layers, and room for the hand (our own judgement). */
const flatRibbonMm = 1;

/** Thickness of the tie beside its opening, in mm: one strand, or half of what fills the hole for a gathered ribbon and a split ring. */
export function strandOf(tie: Tie | undefined, isSlot: boolean): number {
  if (!tie) return usualTwineMm;
  if (tie.kind === 'twine') return tie.size;
  return isSlot && tie.kind === 'ribbon' ? flatRibbonMm : tightestOpening(tie) / 2;
}
