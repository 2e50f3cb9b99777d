/**
 * Slips that leave the text valid YAML but change its meaning: `text:Sorrel` is a key to YAML, and `5,8 cm` two
 * entries. One such slip causes several problems. The change that repairs it is tried; the problems that vanish with it
 * were one slip, and are reported once, at its place.
 */

import { withEdits, inOrder } from '../../core/issue.ts';
import type { Issue, TextChange } from '../../core/issue.ts';
import type { SpecSource } from '../yaml/source.ts';
import { bracketRepairs } from './brackets.ts';
import { colonRepairs } from './colons.ts';
import { dashedGroupRepairs, dashRepairs } from './dashes.ts';
import { triesFor } from './find-slip.ts';
import { idleKeyRepairs } from './idle-keys.ts';
import { indentRepairs } from './indents.ts';
import { isByHand, linesOf } from './spec-lines.ts';
import type { SpecLine } from './spec-lines.ts';
import { commaRepairs } from './quotes.ts';
import { missingKeyRepairs } from './missing-keys.ts';
import { movedKeyRepairs } from './moved-keys.ts';
import type { Repair } from './repair.ts';
import { shapeRepairs } from './natural-shapes.ts';
import { wordRepairs } from './natural-words.ts';
import { valueRepairs } from './value-forms.ts';

/** Most changes tried for all issues together; a spec of usual length is read in a millisecond. */
const mostTried = 40;

/** With more problems than this a spec is half written, and what is missing is not a slip. */
const mostIssues = 8;

/** Most changes offered for one slip. */
const mostOffered = 3;

/** A change for an issue: one of its own, which keeps the issue's message, or a repair with a message of its own. */
interface Change {
  readonly change: TextChange;
  readonly repair?: Repair;
}

interface TriedChange extends Change {
  readonly issue: Issue;
  /** Number of issues left, and those that are gone. */
  readonly left: number;
  readonly gone: ReadonlySet<Issue>;
}

/**
 * The issues, with those that one slip causes combined into one. `read` returns the issues of a changed text, or
 * `undefined` if it is not valid YAML.
 */
export function oneForEachSlip(
  source: SpecSource,
  issues: readonly Issue[],
  read: (text: string) => readonly Issue[] | undefined,
): Issue[] {
  const cures = triedChanges(source, issues, read);
  const reported = new Map<Issue, Issue>();
  const covered = new Set<Issue>();
  // The change that solves most at once shows the slip; among equals, the one tried first.
  for (const cure of [...cures].sort((a, b) => a.left - b.left)) {
    if (covered.has(cure.issue)) continue;
    reported.set(cure.issue, inWords(cure, cures, issues.length));
    for (const each of cure.gone) covered.add(each);
  }
  return issues.flatMap((issue) => reported.get(issue) ?? (covered.has(issue) ? [] : issue));
}

function triedChanges(
  source: SpecSource,
  issues: readonly Issue[],
  read: (text: string) => readonly Issue[] | undefined,
): TriedChange[] {
  let budget = issues.length > mostIssues ? 0 : triesFor(source.text, mostTried);
  if (budget === 0) return [];
  const lines = linesOf(source.text);
  const cures: TriedChange[] = [];
  for (const issue of inOrder(issues)) {
    const before = cures.length;
    const isWhole = () => cures.slice(before).some(({ left }) => left === 0);
    for (const attempt of attemptsFor(issue, source, lines)) {
      // Nothing beats a spec without problems.
      if (isWhole() && (attempt.repair !== undefined || cures.length - before >= mostOffered)) break;
      if (budget-- <= 0) return cures;
      const after = read(withEdits(source.text, attempt.change.edits));
      if (!after || after.length > issues.length) continue;
      if (after.length === issues.length && !explains(attempt.repair, issue, issues, after)) continue;
      const gone = solvedIssues(issues, after);
      const brings = after.length - (issues.length - gone.size);
      // A moved line is in the right place only if the result has no new problems; other repairs may reveal hidden
      // ones.
      if (!gone.has(issue) || (brings > 0 && (attempt.repair?.rarity ?? 0) >= 2)) continue;
      cures.push({ ...attempt, issue, left: after.length, gone });
    }
  }
  return cures;
}

/** Whether a change that leaves as many problems has at least found where the key belongs. */
function explains(
  repair: Repair | undefined,
  issue: Issue,
  before: readonly Issue[],
  after: readonly Issue[],
): boolean {
  if (repair?.explains !== true) return false;
  const key = issue.path.at(-1);
  const homeOf = ({ path }: Issue) => path.slice(0, -1).join('/');
  const known = new Set(before.map(issueKey));
  // Another key that is not known there either is no better.
  return !after.some(
    (other) =>
      other.code === issue.code &&
      (other.path.at(-1) === key || (homeOf(other) === homeOf(issue) && !known.has(issueKey(other)))),
  );
}

function inWords({ issue, repair, left }: TriedChange, cures: readonly TriedChange[], before: number): Issue {
  if (!repair) return issue;
  const repairs = cures
    .filter(
      (cure) =>
        cure.left < before && cure.issue === issue && cure.left === left && cure.repair?.message === repair.message,
    )
    .slice(0, mostOffered)
    .map(({ change }) => change);
  return { ...issue, range: repair.slip, message: repair.message, suggestions: [], repairs };
}

/** Issues that are gone from the changed text, compared by code and message since places move. */
function solvedIssues(before: readonly Issue[], after: readonly Issue[]): Set<Issue> {
  const left = after.map(issueKey);
  return new Set(
    before.filter((issue) => {
      const at = left.indexOf(issueKey(issue));
      if (at >= 0) left.splice(at, 1);
      return at < 0;
    }),
  );
}

function issueKey({ code, message }: Issue): string {
  return `${code} ${message}`;
}

function attemptsFor(issue: Issue, source: SpecSource, lines: readonly SpecLine[]): Change[] {
  const own = (issue.suggestions ?? []).map((text) => ({ title: '', edits: [{ range: issue.range, text }] }));
  return [
    ...[...own, ...(issue.repairs ?? [])].map((change) => ({ change })),
    ...repairsFor(issue, source, lines).map((repair) => ({
      change: { title: repair.title, edits: repair.edits },
      repair,
    })),
  ];
}

/** Whether a key is a known one but for its capitals, so that nothing else can be wrong with it. */
function isInCapitals({ code, path, suggestions = [] }: Issue): boolean {
  return code === 'unknown-key' && suggestions[0]?.toLowerCase() === String(path.at(-1)).toLowerCase();
}

function repairsFor(issue: Issue, source: SpecSource, lines: readonly SpecLine[]): Repair[] {
  const line = lines.findLast(({ start }) => start <= issue.range.start);
  if (!line || !isByHand(line) || isInCapitals(issue)) return [];
  const next = lines.slice(line.number + 1).find(({ content }) => content !== '');
  return [
    ...valueRepairs(issue, source, line),
    ...commaRepairs(issue, source.text, line),
    ...wordRepairs(issue, source),
    ...shapeRepairs(issue, source),
    ...missingKeyRepairs(issue, source),
    ...movedKeyRepairs(issue, source),
    ...idleKeyRepairs(issue, source),
    ...colonRepairs(source.text, line, next),
    ...dashedGroupRepairs(issue, lines),
    ...dashRepairs(lines, line),
    ...(line.signs.stray.length > 0 ? bracketRepairs(source.text, line, line) : []),
    ...indentRepairs(lines, line),
  ];
}
