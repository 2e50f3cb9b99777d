/** How far a width may fall short of its limit. */

/**
 * In mm, and our own judgement: 1 % of the limit, which is less than wood and beam vary; of limits under 1 mm a hundredth of
 * a millimetre, or 2 % if that is less, as outlines are no more exact.
 */
export function slackOf(limit: number): number {
  return Math.max(limit / 100, Math.min(0.01, limit / 50));
}
