/** Whether lettering can still be read, from geometry alone: what is made of it, compared with what its font draws. */

import { boundsOf } from '../geometry/measure.ts';
import type { Letter, Lettering } from '../tag/letters.ts';
import { alongside, clearance } from './clearance.ts';
import { letterLosses } from './letter-loss.ts';

/** How a letter comes out of the machine, in mm. */
export interface Making {
  /** What no gap, counter or bay stays open that is narrower: the kerf of what is cut, the width of an engraved line. */
  readonly beam: number;
  /** By how much what comes out is larger all round than the outline, where the beam is not compensated for. */
  readonly over?: number;
}

export interface Readability {
  readonly letters: number;
  readonly counters: { readonly drawn: number; readonly open: number };
  /** Letters side by side that the font keeps apart, and how many of them are joined. */
  readonly neighbours: { readonly apart: number; readonly merged: number };
  /** Share of the white in and round a letter that fills in, and of its ink that goes; the mean of all letters, 0 to 1. */
  readonly filled: number;
  readonly gone: number;
  /** Length over which a letter comes too near the next, in x-heights, at most 1; the mean. Joins that the font draws are none. */
  readonly crowded: number;
  /** Growth times the thickness of the strokes, both in x-heights: of heavy letters, growth takes more. */
  readonly heavier: number;
  /** Into how many parts more than drawn the letters fall. */
  readonly fallen: number;
  /** Of the small letters in mm, or of the highest where all are capitals. */
  readonly height: number;
  /** Above `doubtful` it may be hard to read, above `unlikely` most readers fail. */
  readonly doubt: number;
}

/**
 * How much each figure tells against reading: logistic regression on what an independent reader made of 168 words in six
 * fonts, readable and unreadable words weighing alike, so that 0 is where both are as likely. See
 * `test/calibration/legibility.md`.
 */
const weights = {
  filled: 2.43,
  closed: 0.555,
  crowded: 1.956,
  gone: 38.855,
  heavier: 63.642,
  letters: -1.172,
} as const;
const atNothing = -3.065;

/** Beyond so many letters, more of them no longer help the reader to guess the word. */
const mostHelpful = 8;

export const doubtful = 0;
export const unlikely = 1;

/** Outlines this near, in x-heights, are joined as the font draws them. */
const touchingShare = 0.005;
/** So much of letters side by side, in x-heights, is where their joint is. */
const jointShare = 0.03;
/** Steps along an outline, in x-heights. */
const stepShare = 0.1;

/** Letters and digits only: a heart or a star is no text. `undefined` where there are none. */
export function readability(lettering: Lettering, { beam, over = 0 }: Making): Readability | undefined {
  const { xHeight } = lettering;
  const letters = lettering.letters.filter(({ text }) => /[\p{L}\p{N}]/u.test(text));
  if (letters.length === 0 || !(xHeight > 0)) return undefined;
  const by = lettering.grow + over;
  const grow = Math.max(0, by + beam / 2);
  const losses = letterLosses(letters, xHeight, { grow, thin: Math.max(0, -by) });
  const n = letters.length;
  const mean = (of: (loss: (typeof losses)[number]) => number) => losses.reduce((all, loss) => all + of(loss), 0) / n;
  const { neighbours, crowded } = closeness(
    losses.map(({ outline }) => outline),
    xHeight,
    2 * grow,
  );
  const counters = { drawn: mean((loss) => loss.counters.drawn) * n, open: mean((loss) => loss.counters.open) * n };
  const figures = {
    filled: mean(({ filled }) => Math.min(1, filled)),
    closed: counters.drawn > 0 ? 1 - counters.open / counters.drawn : 0,
    crowded,
    gone: mean(({ gone }) => gone),
    heavier: (grow / xHeight) * mean(({ stem }) => stem / xHeight),
    letters: Math.log(Math.min(n, mostHelpful)),
  };
  return {
    letters: n,
    counters: { drawn: Math.round(counters.drawn), open: Math.round(counters.open) },
    neighbours,
    filled: figures.filled,
    gone: figures.gone,
    crowded,
    heavier: figures.heavier,
    fallen: Math.round(mean(({ fallen }) => fallen) * n),
    height: heightOf(letters, xHeight),
    doubt: (Object.keys(weights) as (keyof typeof weights)[]).reduce(
      (sum, key) => sum + weights[key] * figures[key],
      atNothing,
    ),
  };
}

/** Of letters one beside the next, where whatever is nearer than `reach` is joined. */
function closeness(
  outlines: readonly Letter['region'][],
  xHeight: number,
  reach: number,
): Pick<Readability, 'neighbours' | 'crowded'> {
  let [apart, merged, length] = [0, 0, 0];
  for (const [index, next] of outlines.entries()) {
    const letter = outlines[index - 1];
    if (!letter) continue;
    const gap = clearance(letter, next, Math.max(reach, touchingShare * xHeight));
    if (gap >= touchingShare * xHeight) apart++;
    if (gap >= reach) continue;
    if (gap >= touchingShare * xHeight) merged++;
    const step = stepShare * xHeight;
    const joint = alongside(letter, next, Math.min(reach, jointShare * xHeight), step);
    length += Math.min(1, (alongside(letter, next, reach, step) - joint) / xHeight);
  }
  return { neighbours: { apart, merged }, crowded: length / Math.max(1, outlines.length - 1) };
}

function heightOf(letters: readonly Letter[], xHeight: number): number {
  if (letters.some(({ text }) => /\p{Ll}/u.test(text))) return xHeight;
  return letters.reduce((most, { region }) => {
    const { minY, maxY } = boundsOf(region)!;
    return Math.max(most, maxY - minY);
  }, 0);
}
