/** How gentle a fix is: which may be made unasked, and which comes first. */

import type { Fix, Issue } from '../core/issue.ts';

/**
 * Share of the lettering beyond which a change makes another tag: such a fix is offered but never applied
 * automatically, nor may any fix change that much on a tag of a batch that does not need it (our own judgement).
 */
export const keptLookShare = 0.15;

/**
 * Fixes that change less than this share keep the look; among them, the remedy that a maker would try first comes
 * first.
 */
export const sameLookShare = 0.12;

/** A fix that suits all comes before one that sets some aside or is for the writer to decide, also where it changes more. */
const choiceCost = 2 * keptLookShare;

/** So much more may change before one takes words off the middle instead, or close to an edge (our own judgement). */
const untidyCost = keptLookShare;

/** Whether a fix may be made unasked: it keeps the look and the letters, and no tag without the problem hangs elsewhere. */
export function isGentle({ look, rehangs, isChoice, redraws }: Fix): boolean {
  return look <= keptLookShare && rehangs === undefined && !isChoice && !redraws;
}

/**
 * Whether a single key applies it, and the editor lists it first: the first fix of a problem, never one that makes another tag, and none for a
 * problem beside a worse one.
 */
export function isPreferred(fix: Fix, nth: number, issue: Issue, worst: Issue): boolean {
  return nth === 0 && isGentle(fix) && issue.severity === worst.severity;
}

/** By this, the least first; the order of the remedies decides among equals. */
export function rankOf({ look, rehangs, aside, isChoice, isUntidy }: Fix): number {
  const untidy = isUntidy ? untidyCost : 0;
  return Math.max(look, sameLookShare) + untidy + (rehangs ? keptLookShare : 0) + (aside || isChoice ? choiceCost : 0);
}
