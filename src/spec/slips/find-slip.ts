/**
 * Finds the one slip that makes a text invalid YAML. A parser stumbles where a slip can no longer be overlooked, often
 * lines further on and many times. So the changes that repair common slips are tried one by one, near the place where
 * it stumbled, and the change that makes sense of the whole text shows where the slip is.
 */

import { withEdits } from '../../core/issue.ts';
import type { Issue, TextChange } from '../../core/issue.ts';
import type { SpecSource } from '../yaml/source.ts';
import { backslashRepairs, quoteRepairs } from './quotes.ts';
import { blankRepairs, indentRepairs } from './indents.ts';
import { bracketRepairs } from './brackets.ts';
import { brokenLineRepairs } from './broken-lines.ts';
import { colonRepairs } from './colons.ts';
import { dashRepairs } from './dashes.ts';
import { duplicateRepairs } from './duplicates.ts';
import { isByHand, linesOf } from './spec-lines.ts';
import type { SpecLine } from './spec-lines.ts';
import type { Repair } from './repair.ts';

/**
 * Quality of a reading: the number of YAML faults, the offset of the first, and, without faults, the number of problems
 * in the spec.
 */
export interface TrialReading {
  readonly faults: number;
  readonly firstFault: number;
  readonly problems: number;
}

/** Most characters read while searching; a spec has two thousand, and is read in a millisecond. */
const mostRead = 100_000;
const mostTried = 36;
const mostGroups = 400;

/** Once a change makes the text valid YAML, this many more are tried to find one that makes it a sound spec. */
const mostBetter = 22;

/** Lines searched above and below the place where the parser stumbles. */
const linesAbove = 6;
const linesBelow = 2;

/** Lines that leave something open are searched this far above. */
const mostOpenLines = 8;

/** The issues of a source that is not valid YAML, combined into one. `read` reads a changed text. */
export function slipOf(source: SpecSource, read: (text: string) => TrialReading): Issue {
  const [stumble] = source.issues as [Issue, ...Issue[]];
  const now = { faults: source.issues.length, firstFault: stumble.range.start, problems: 0 };
  const found = bestRepairs(source, stumble, now, read);
  const [best] = found;
  if (!best) return stumble;
  const repairs: TextChange[] = found.map(({ title, edits }) => ({ title, edits }));
  return { ...stumble, range: best.slip, message: best.message, repairs };
}

function bestRepairs(
  source: SpecSource,
  stumble: Issue,
  now: TrialReading,
  read: (text: string) => TrialReading,
): Repair[] {
  const { text } = source;
  const tried = (repair: Repair) => read(withEdits(text, repair.edits));
  const lines = linesOf(text);
  if (source.hasKeyTwice) {
    // Only the writer can know which of the two is meant.
    return duplicateRepairs(text, lines, stumble.range.start).filter((repair) => isBetter(tried(repair), now));
  }
  let budget = triesFor(text, mostTried);
  if (budget === 0) return [];
  let best: { repair: Repair; reading: TrialReading } | undefined;
  for (const repair of candidatesFor(text, lines, stumble)) {
    if (budget-- <= 0) break;
    const reading = tried(repair);
    if (!isBetter(reading, best?.reading ?? now)) continue;
    if (reading.faults === 0 && best?.reading.faults !== 0) budget = Math.min(budget, mostBetter);
    best = { repair, reading };
    if (reading.faults === 0 && reading.problems === 0) break;
  }
  return best ? [best.repair] : [];
}

/** Number of changed texts that can be read without slowing down typing. */
export function triesFor(text: string, most: number): number {
  // Hundreds of nested groups take a parser long, and are not a spec.
  if ((text.match(/[{[]/g)?.length ?? 0) > mostGroups) return 0;
  return Math.min(most, Math.floor(mostRead / Math.max(text.length, 1)));
}

/** Whether `a` has fewer faults and its first is no earlier; without faults, fewer problems. */
function isBetter(a: TrialReading, b: TrialReading): boolean {
  if ((a.faults === 0) !== (b.faults === 0)) return a.faults === 0;
  if (a.faults === 0) return a.problems < b.problems;
  return a.faults < b.faults && a.firstFault >= b.firstFault;
}

/** Repairs to try, the likeliest first: the usual slips, on the lines nearest to where the parser stumbled. */
function candidatesFor(text: string, lines: readonly SpecLine[], stumble: Issue): Repair[] {
  const at = Math.min(stumble.range.start, text.length);
  const number = Math.max(
    0,
    lines.findLastIndex(({ start }) => start <= at),
  );
  const near = nearLines(lines, number);
  const repairs = near.flatMap((line, distance) =>
    repairsOf(text, lines, line).map((repair) => ({
      repair,
      order: repair.rarity + distance / 100 - (isAt(repair, at) ? atStumble : 0),
    })),
  );
  const sorted = repairs.sort((a, b) => a.order - b.order).map(({ repair }) => repair);
  return [...blankRepairs(text, lines), ...sorted];
}

/** Head start, in rarity, for a slip right where the parser stumbles. */
const atStumble = 1.6;

function isAt({ slip }: Repair, offset: number): boolean {
  return slip.start === offset || (slip.end - slip.start === 1 && slip.end === offset);
}

/** The lines to search, nearest first. */
function nearLines(lines: readonly SpecLine[], number: number): SpecLine[] {
  const filled = lines.filter((line) => line.content !== '' && isByHand(line));
  const above = filled
    .filter((line) => line.number <= number)
    .slice(-linesAbove)
    .reverse();
  const below = filled.filter((line) => line.number > number).slice(0, linesBelow);
  const open = filled
    .filter(({ number: other, signs }) => other <= number && (signs.quote !== undefined || signs.open.length > 0))
    .slice(-mostOpenLines)
    .reverse();
  return [...new Set([...above.slice(0, 2), ...open, ...above, ...below])];
}

function repairsOf(text: string, lines: readonly SpecLine[], line: SpecLine): Repair[] {
  const rest = lines.slice(line.number + 1);
  const next = rest.find(({ content }) => content !== '');
  const foreign = rest.findIndex(({ content, indent }) => content !== '' && indent <= line.indent);
  const inside = rest.slice(0, foreign < 0 ? rest.length : foreign).filter(({ content }) => content !== '');
  return [
    ...colonRepairs(text, line, next),
    ...brokenLineRepairs(line, next),
    ...backslashRepairs(text, line),
    ...bracketRepairs(text, line, inside.at(-1) ?? line),
    ...quoteRepairs(text, line),
    ...dashRepairs(lines, line),
    ...indentRepairs(lines, line),
  ];
}
