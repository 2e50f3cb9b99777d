/** Judges from geometry alone whether lettering can still be read: what is made of it, compared with its font. */

import { boundsOf, perimeter } from '../../geometry/measure.ts';
import { unionPerimeter } from '../../geometry/union-perimeter.ts';
import { hasSmallLetters } from '../../spec/read/evenly.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { closeness } from './closeness.ts';
import type { Closeness } from './closeness.ts';
import { fusedMarks } from './fused-marks.ts';
import { letterLosses } from './letter-loss.ts';

/** Changes to a letter in the machine, in mm. */
export interface BeamEffect {
  /** Gaps, counters and bays narrower than this close: the kerf of a cut, the width of an engraved line. */
  readonly beam: number;
  /** Excess of the result over the outline all round, if the beam is not compensated for. */
  readonly over?: number;
}

export interface Readability extends Closeness {
  readonly letters: number;
  readonly counters: { readonly drawn: number; readonly open: number };
  /** Number of dots and accents of letters that were slid, and of those that run into another letter. */
  readonly marks: { readonly drawn: number; readonly fused: number };
  /** Share of a letter's ink in strokes too thin to survive; the mean over all letters, 0 to 1. */
  readonly gone: number;
  /** Number of parts by which the letters exceed what the font draws. */
  readonly fallen: number;
  /** The x-height in mm or, for capitals only, the height of the highest letter. */
  readonly height: number;
  /** The figures behind `doubt`, by the names of their weights. */
  readonly figures: Readonly<Record<LetterMeasure, number>>;
  /** Above `doubtful` it may be hard to read; above `unlikely` most readers fail. */
  readonly doubt: number;
}

/**
 * Weight of each figure against legibility: logistic regression on what an independent reader made of words in twelve
 * fonts, with equal total weight for readable and unreadable words, so that 0 is where both are equally likely. See
 * `test/calibration/legibility.md`; `npm run calibrate -- --fit` finds the weights again.
 */
const weights = {
  /** Share of the ink that is lost. */
  gone: 32.02,
  /** Thickness of the strokes as made, over the x-height as made. */
  bold: 9.59,
  /**
   * Length of the remaining outline over that of the letters by themselves, times the logarithm of their number: more
   * letters help the reader to guess a word as long as each has an outline of its own.
   */
  outline: -4.47,
  /** Growth beyond `farShare`, in x-heights: by then every letter looks like a disc, however thin its strokes were. */
  far: 11.07,
} as const;
const atNothing = 0.665;

export type LetterMeasure = keyof typeof weights;

/** Range of the number of letters in the words of the calibration; other numbers are clamped to it. */
const [fewest, most] = [3, 7];
const farShare = 0.2;

/**
 * Letters that keep this share of their outline, and all of their ink, are as the font draws them: however well they
 * read, it is not due to how they are made. Our own judgement.
 */
const wholeShare = 0.97;

export const doubtful = 0;
export const unlikely = 1;

/** Letters crowded by this much are one lump. */
const lumpCrowded = 0.99;

/** Lost ink above this share is more than the ends of hairlines. */
const muchGone = 0.12;

type LossCounts = Pick<Readability, 'counters' | 'crowded' | 'marks'>;

/** Below this, every word of the calibration was read whose counters were all closed: in thin letters they are loops of the pen. */
const readsAllTheSame = -2;

/** Seen at once, and said whatever the sum is: a reader of pictures guesses many such words all the same, a buyer leaves them. */
export function isPlainlySpoiled(read: LossCounts & Pick<Readability, 'gone' | 'doubt'>): boolean {
  const isClosed = areAllClosed(read) && read.doubt > readsAllTheSame;
  return isClosed || isLump(read) || read.gone >= muchGone || read.marks.fused > 0;
}

/** Both faults together: with the sum in doubt, most readers fail. */
export function isBlob(read: Omit<LossCounts, 'marks'>): boolean {
  return areAllClosed(read) && isLump(read);
}

/** A single closed counter, of an A or an e, is often no loss. */
export function areAllClosed({ counters }: Pick<LossCounts, 'counters'>): boolean {
  return counters.drawn >= 2 && counters.open === 0;
}

function isLump({ crowded }: Pick<LossCounts, 'crowded'>): boolean {
  return crowded >= lumpCrowded;
}

/** The readability of letters and digits; a heart or a star is not text. `undefined` if there are none. */
export function readability(
  lettering: Pick<Lettering, 'letters' | 'xHeight' | 'grow' | 'slid' | 'hairline'>,
  { beam, over = 0 }: BeamEffect,
): Readability | undefined {
  const { xHeight, slid, hairline } = lettering;
  const letters = lettering.letters.filter(({ text }) => /[\p{L}\p{N}]/u.test(text));
  if (letters.length === 0 || !(xHeight > 0)) return undefined;
  const by = lettering.grow + over;
  const grow = Math.max(0, by + beam / 2);
  const losses = letterLosses(letters, xHeight, { grow, thin: Math.max(0, -by), hairline });
  const n = letters.length;
  const sum = (of: (loss: (typeof losses)[number]) => number) => losses.reduce((all, loss) => all + of(loss), 0);
  const left = unionPerimeter(losses.map(({ grown }) => grown));
  const outlineLeft = left / sum(({ outline }) => perimeter(outline));
  const figures = {
    gone: sum(({ gone }) => gone) / n,
    bold: (sum(({ stem }) => stem) / n + 2 * grow) / (xHeight + 2 * grow),
    outline: outlineLeft * Math.log(Math.min(Math.max(n, fewest), most)),
    far: Math.max(0, grow / xHeight - farShare),
  };
  const doubt = (Object.keys(weights) as LetterMeasure[]).reduce(
    (all, key) => all + weights[key] * figures[key],
    atNothing,
  );
  const isWhole = outlineLeft > wholeShare && figures.gone < 0.005 && figures.far === 0;
  const standing = losses.map(({ like, at, outline }, index) => {
    const { spaced, opens = false } = letters[index]!;
    return { like, at, outline, spaced, opens };
  });
  return {
    ...closeness(standing, { xHeight, reach: 2 * grow, slid }),
    letters: n,
    counters: { drawn: sum(({ counters }) => counters.drawn), open: sum(({ counters }) => counters.open) },
    marks: fusedMarks(letters, { xHeight, reach: 2 * grow }),
    gone: figures.gone,
    fallen: sum(({ fallen }) => fallen),
    height: heightOf(letters, xHeight),
    figures,
    doubt: isWhole ? Math.min(doubt, doubtful) : doubt,
  };
}

function heightOf(letters: readonly Letter[], xHeight: number): number {
  if (letters.some(({ text }) => hasSmallLetters(text))) return xHeight;
  return letters.reduce((most, { region }) => {
    const { minY, maxY } = boundsOf(region)!;
    return Math.max(most, maxY - minY);
  }, 0);
}
