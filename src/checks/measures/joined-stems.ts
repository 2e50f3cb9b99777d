/** Bare stems side by side on bars at their feet, which read as other letters: “Illinois” as “Hinols”, “2011” as “201”. */

import { translation, transform } from '../../geometry/affine.ts';
import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { normalise } from '../../geometry/clipper.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { isBareStem, isSingleStem } from '../../tag/overlap/reading.ts';
import { movedRuns, rowAt, rowsOf } from '../../tag/overlap/runs.ts';
import type { Runs } from '../../tag/overlap/runs.ts';

/** Rows to an x-height. */
const fine = 60;

/** In x-heights: how high a bar at the feet ends, and one above the foot of a capital; how far above that and in how wide a strip it is looked for. */
const bar = { below: 0.5, lifted: 0.8, seen: 0.1, strip: 0.02 } as const;

/**
 * So many stems read otherwise, so many at the end of a word that are this share of it, and two ones; not where they are this much wider than the bar is high. By OCR of eight words: of the
 * readings without bars 0.34 are left of “Hill” and “Gill” in five light faces, 0.79 in a heavier one, and nine in ten of “Milla”.
 */
const run = { stems: 4, last: 3, share: 0.5, ones: 2, heavy: 1.7 } as const;

/** From this height up, in x-heights, an l with a tail is a stem as well. */
const tail = 0.3;

/** An l with a tail is read among other letters, and not at the end of a word. */
type Kind = 'stem' | 'tailed' | 'one';

/** The letters of the first such run; `undefined` if there is none. */
export function joinedStems({ letters, xHeight, grow }: Lettering, shape: Region): string | undefined {
  const known = new Map<Letter, Kind | undefined>();
  const kindOf = (letter: Letter): Kind | undefined => {
    if (!known.has(letter)) known.set(letter, kindOfStem(letter, xHeight));
    return known.get(letter);
  };
  let found: Letter[] = [];
  // How many letters the word has so far.
  let word = 0;
  const isLong = (isLast: boolean): boolean => {
    const ones = found.filter((each) => kindOf(each) === 'one').length;
    if (ones > 0) return ones >= run.ones;
    const stems = found.filter((each) => kindOf(each) === 'stem').length;
    return stems >= run.stems || (isLast && found.length >= Math.max(run.last, run.share * word));
  };
  for (const [index, letter] of letters.entries()) {
    const before = found.at(-1);
    const opens = letter.opens || letter.line !== letters[index - 1]?.line;
    const isJoined =
      before !== undefined &&
      letter.line === before.line &&
      !letter.opens &&
      areAlike(kindOf(letter), kindOf(before)) &&
      isOnBar(before, letter, shape, { xHeight, grow });
    if (!isJoined && isLong(opens)) break;
    word = opens ? 1 : word + 1;
    if (isJoined) found.push(letter);
    else found = kindOf(letter) && letter.text !== 'L' ? [letter] : [];
  }
  return isLong(found.at(-1) === letters.at(-1)) ? found.map(({ text }) => text).join('') : undefined;
}

function areAlike(kind: Kind | undefined, other: Kind | undefined): boolean {
  return kind !== undefined && other !== undefined && (kind === 'one') === (other === 'one');
}

function kindOfStem({ text, region, asSet, baseline }: Letter, xHeight: number): Kind | undefined {
  if (!asSet || baseline === undefined || !/^[\p{L}1]$/u.test(text)) return undefined;
  const [base = []] = partsOf(region);
  const rows = rowsOf(transform(base, translation(0, -baseline)), xHeight / fine);
  if (text === '1') return isSingleStem(rows, xHeight) ? 'one' : undefined;
  return isBareStem(rows, xHeight) ? 'stem' : text === 'l' && isTailed(rows, xHeight) ? 'tailed' : undefined;
}

/** Whether an l is a stem but for its foot, which is drawn on to the right. */
function isTailed(rows: Runs, xHeight: number): boolean {
  const upper = { ...rows, first: Math.max(rows.first, rowAt(rows, tail * xHeight)) };
  const raised = { ...upper, lines: rows.lines.slice(upper.first - rows.first) };
  const moved = movedRuns(raised, -rowAt(rows, tail * xHeight), 0);
  return isSingleStem(rows, xHeight) && isBareStem(moved, xHeight);
}

/** Whether there is nothing between two stems but a bar at their feet, and they are not much heavier than that. */
function isOnBar(
  left: Letter,
  right: Letter,
  shape: Region,
  { xHeight, grow }: Pick<Lettering, 'xHeight' | 'grow'>,
): boolean {
  const baseline = left.baseline!;
  const highest = /\p{Lu}/u.test(left.text) ? bar.lifted : bar.below;
  const stems = [left, right].map(({ region }) =>
    boundsOf(
      clippedToBox(region, {
        minX: -Infinity,
        maxX: Infinity,
        minY: baseline + bar.below * xHeight,
        maxY: baseline + (bar.below + bar.seen) * xHeight,
      }),
    )!,
  );
  const [one, other] = stems;
  const middle = (one!.maxX + other!.minX) / 2;
  const half = (bar.strip / 2) * xHeight;
  const strip = {
    minX: middle - half,
    maxX: middle + half,
    minY: baseline - xHeight,
    maxY: baseline + (highest + bar.seen) * xHeight,
  };
  const [between] = partsOf(normalise(clippedToBox(shape, strip)))
    .map((part) => boundsOf(part)!)
    .toSorted((a, b) => a.minY - b.minY);
  if (!between || between.maxY > baseline + highest * xHeight) return false;
  const wide = Math.min(...stems.map(({ minX, maxX }) => maxX - minX)) + 2 * grow;
  return wide < run.heavy * (between.maxY - between.minY);
}
