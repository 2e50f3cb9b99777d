/** Letters that another shape of their piece runs over: it fills what parts them from what is round them, or their counters. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, intersection, offset } from '../../geometry/clipper.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { area, boundsOf, boxesOverlap, ringArea, widened } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { extentOf, speckMm } from '../../tag/size.ts';
import { perRegionPair } from './per-region-pair.ts';
import { losesLeg } from './swallowed-leg.ts';
import { tailOfQ } from './tail-of-q.ts';

/** Something of the body that may lie over letters. */
export interface Cover {
  /** Its name in the spec, if it has one of its own. */
  readonly name?: string;
  readonly region: Region;
}

export interface CoveredLetters {
  /** Letters that can no longer be made out. */
  readonly gone: readonly Letter[];
  /** Letters that are covered in part, or have lost a leg. */
  readonly partly: readonly Letter[];
  /** Other letters of which a counter is filled. */
  readonly filled: readonly Letter[];
  /** Other letters whose tail, below the line, is hidden: a “g” that reads as an “a”. */
  readonly tailless: readonly Letter[];
}

/** Width of the seam examined round a letter, and its tolerance, in x-heights. */
const seamShare = 0.12;
const toleranceShare = 0.01;

/**
 * Shares of its free seam from which a letter is gone, or covered in part, and share from which a counter is filled: a
 * bar along the baseline takes a quarter of the seam at most. Our own judgement.
 */
const goneShare = 0.4;
const partShare = 0.3;
const filledShare = 0.6;

/**
 * A tail begins and ends so far below the baseline at least, in x-heights, and is hidden from this share of its seam on; what is no larger than so many tails
 * of a Q, as a leaf may be, is its tail itself. Our own judgement.
 */
const tail = { from: 0.12, to: 0.25, hidden: 0.7, asLarge: 2 } as const;

/**
 * Of what lies over a lettering the shape that covers most of its letters; `undefined` if all can be made out.
 * @param shape Its present form, if that is not all of the shape that covers it.
 */
export function coveringMost(
  lettering: Lettering,
  shape: Region | undefined,
  covers: readonly Cover[] = [],
): (Cover & CoveredLetters) | undefined {
  const [worst] = covers
    .map((cover) => ({ ...cover, ...coveredLetters(lettering, shape ?? cover.region, cover.region) }))
    .filter(({ gone, partly, filled, tailless }) => gone.length + partly.length + filled.length + tailless.length > 0)
    .sort((a, b) => b.gone.length - a.gone.length || b.filled.length - a.filled.length);
  return worst;
}

/** Of a lettering in its present form, `shape`, what a region that it is united with covers. */
export function coveredLetters(lettering: Lettering, shape: Region, region: Region): CoveredLetters {
  return covering(shape, region)(lettering);
}

/** One result per pair of regions and lettering of the shape: its letters and x-height only change with the shape. */
const covering = perRegionPair((shape, region) => {
  const known = new Map<string, CoveredLetters>();
  return (lettering: Lettering) => {
    const key = JSON.stringify([lettering.path, lettering.letters.map(({ text }) => text)]);
    const found = known.get(key) ?? coveredBy(lettering, shape, region);
    known.set(key, found);
    return found;
  };
});

function coveredBy({ letters, xHeight }: Lettering, shape: Region, region: Region): CoveredLetters {
  const box = boundsOf(region);
  const seamMm = seamShare * xHeight;
  const near = letters.filter((letter) => box && boxesOverlap(widened(boundsOf(letter.region)!, seamMm), box));
  const gone: Letter[] = [];
  const partly: Letter[] = [];
  const filled: Letter[] = [];
  const tailless: Letter[] = [];
  if (near.length === 0) return { gone, partly, filled, tailless };
  const tolerance = toleranceShare * xHeight;
  const others = simplified(difference(region, [shape]), tolerance);
  let index: EdgeIndex | undefined;
  const edges = (): EdgeIndex => (index ??= new EdgeIndex(others));
  for (const letter of near) {
    const seam = difference(offset(simplified(letter.region, tolerance), seamMm, 'round', tolerance), [shape]);
    const covered = area(intersection(seam, others));
    if (covered > goneShare * area(seam)) gone.push(letter);
    else if (isFilled(letter.region, others)) filled.push(letter);
    else if (covered > partShare * area(seam) || (covered > 0 && losesLeg(letter, edges(), xHeight)))
      partly.push(letter);
    else if (isTailHidden(letter, seam, others, xHeight)) tailless.push(letter);
  }
  return { gone, partly, filled, tailless };
}

function isTailHidden(letter: Letter, seam: Region, others: Region, xHeight: number): boolean {
  const { region, baseline } = letter;
  const ofQ = tailOfQ(letter, xHeight);
  if (ofQ.length > 0) {
    const round = intersection(seam, offset(ofQ, seamShare * xHeight));
    if (area(others) < tail.asLarge * area(ofQ)) return false;
    return area(intersection(round, others)) > tail.hidden * area(round);
  }
  const box = boundsOf(region)!;
  if (baseline === undefined || box.minY > baseline - tail.to * xHeight) return false;
  const below = { ...widened(box, xHeight), maxY: baseline - tail.from * xHeight };
  const round = clippedToBox(seam, below);
  return area(intersection(round, others)) > tail.hidden * area(round);
}

function isFilled(ink: Region, others: Region): boolean {
  const counters = ink.filter((ring) => ringArea(ring) < 0 && extentOf(ring) > speckMm);
  return counters.some((ring) => {
    const counter = [ring.toReversed()];
    return area(intersection(counter, others)) > filledShare * area(counter);
  });
}
