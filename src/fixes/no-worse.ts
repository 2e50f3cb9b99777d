/** Decides whether a change of a spec solves a problem, and whether everything else stays at least as good. */

import { isWithin, samePath } from '../core/values.ts';
import type { Judged } from '../engine/engine.ts';
import { causeOf, isError, severityRank } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { groupedBy } from '../core/grouped.ts';

/** Widths that shrink by less than this, in mm, count as unchanged. */
const sameWidthMm = 0.02;

/** Amounts that grow by less than this share of what they were count as unchanged. */
const sameAmount = 0.05;

/** Nor is so little more, of a share, a length in mm or an area in mm². */
const leastAmount = 0.005;

/** A further tilt of less than this counts as unchanged. */
const sameAngleDegrees = 1.5;

/** Kinds that get worse as their `width` gets smaller. */
const narrowKinds: ReadonlySet<IssueCode> = new Set([
  'weak-bridge',
  'thin-stroke',
  'hanger-weak',
  'hole-near-edge',
  'hole-too-small',
  'gap-closes',
  'fine-mark',
]);

/** Kinds that get worse as their `width`, by which something is beyond an edge, gets larger. */
const wideKinds: ReadonlySet<IssueCode> = new Set(['off-backing']);

/**
 * Whether the problem is gone from its line and its piece, and nothing else has become worse. A no stays one, whatever else is
 * found: so it can be asked before everything has been checked.
 */
export function solves(issue: Issue, before: Judged, after: Judged): boolean {
  if (!after.tag) return false;
  const cause = causeIn(issue);
  // To a reader, several of a kind at one line are one problem: all of them must be gone.
  return after.issues.every((other) => causeIn(other) !== cause) && isNoWorse(before, after);
}

/**
 * Whether nothing has come, of whatever severity, that was not there, and nothing that was there has become worse. What the
 * spec accepts counts as it is accepted, no worse.
 */
export function isNoWorse(before: Judged, after: Judged): boolean {
  return after.tag !== undefined && newOrWorse(before, after) === undefined;
}

/** The first of what has come or become worse. */
export function newOrWorse(before: Judged, after: Judged): Issue | undefined {
  const known = groupedBy([...before.issues, ...before.accepted], causeIn);
  const left = new Set(after.issues.map(causeIn));
  const mends = before.issues.some((issue) => isError(issue) && !left.has(causeIn(issue)));
  const worse = [...groupedBy([...after.issues, ...after.accepted], causeIn)].find(([cause, group]) => {
    const was = known.get(cause);
    return was
      ? !isGroupNoWorse(was, group, mends)
      : group.some(
          (issue) => !isHarmless(issue) && ![isOfMissing, isOfUnhung, isOfLost].some((isOf) => isOf(issue, before)),
        );
  });
  return worse?.[1][0];
}

/** The note that letters come from another font, where they were missing before. */
function isOfMissing({ code, path }: Issue, before: Judged): boolean {
  if (code !== 'other-style' || path.at(-1) !== 'font') return false;
  const shape = path.slice(0, -1);
  return before.issues.some((was) => was.code === 'missing-glyph' && samePath(was.path.slice(0, -1), shape));
}

/** How a tag hangs that had no room for what it was to hang by, or was in parts while its hanger was where it still is. */
function isOfUnhung({ code, path, piece }: Issue, before: Judged): boolean {
  const at = path.lastIndexOf('hanger');
  if (code !== 'hangs-askew' || at < 0) return false;
  const hanger = path.slice(0, at + 1);
  const placed = before.tag?.pieces.find(({ id }) => id === piece)?.hangers ?? [];
  const isGiven = placed.some((each) => samePath(each.path, path) && each.at.kind !== 'auto');
  return before.issues.some(
    (was) =>
      (was.code === 'empty-shape' && isWithin(was.path, hanger)) ||
      (isGiven && was.code === 'loose-part' && was.piece === piece),
  );
}

/** How a hole stands beside lettering most of which was beyond the edge. */
function isOfLost({ code, piece, severity }: Issue, before: Judged): boolean {
  if (code !== 'hole-blocked' || severity !== 'info') return false;
  return before.issues.some((was) => was.code === 'mark-off-body' && isError(was) && was.piece === piece);
}

/**
 * A comment becomes idle when what it accepts is solved; what is just wide enough depends on a width that nobody has measured,
 * which is said of the stock once nothing is too narrow any more; and whatever is mended is not as it was approved.
 */
function isHarmless({ code }: Issue): boolean {
  return code === 'odd-comment' || code === 'not-measured' || code === 'not-as-approved';
}

/** Lettering is as hard to read as before, whether its growth or the shape as a whole is blamed for it. */
function causeIn(issue: Issue): string {
  const { code, path } = issue;
  return causeOf(code === 'hard-to-read' && path.at(-1) === 'grow' ? { ...issue, path: path.slice(0, -1) } : issue);
}

/** @param mends Whether an error is gone: what was loose, and did not count, may then be weak in one place more. */
function isGroupNoWorse(was: readonly Issue[], is: readonly Issue[], mends: boolean): boolean {
  if (is.length > was.length || highestSeverity(is) > highestSeverity(was)) return false;
  if (highestSeverity(is) === highestSeverity(was) && isMore(amountOf(is), amountOf(was))) return false;
  if (steepest(is) > steepest(was) + sameAngleDegrees) return false;
  if (wideKinds.has(is[0]!.code)) return widest(is) <= widest(was) + sameWidthMm;
  if (!narrowKinds.has(is[0]!.code)) return true;
  if (narrowest(is) < narrowest(was) - sameWidthMm) return false;
  return mends || placesOf(is) <= placesOf(was);
}

/** One problem may be of many places. */
function placesOf(issues: readonly Issue[]): number {
  return issues.reduce((sum, { places }) => sum + (places?.length ?? 1), 0);
}

function highestSeverity(issues: readonly Issue[]): number {
  return Math.max(...issues.map(({ severity }) => severityRank[severity]));
}

/** In all; `undefined` unless each has one. */
function amountOf(issues: readonly Issue[]): number | undefined {
  return issues.reduce<number | undefined>(
    (sum, { amount }) => (sum === undefined || amount === undefined ? undefined : sum + amount),
    0,
  );
}

function isMore(is: number | undefined, was: number | undefined): boolean {
  return is !== undefined && was !== undefined && is > was * (1 + sameAmount) + leastAmount;
}

function steepest(issues: readonly Issue[]): number {
  return Math.max(...issues.map(({ angle = 0 }) => Math.abs(angle)));
}

function widest(issues: readonly Issue[]): number {
  return Math.max(...issues.map(({ width = 0 }) => width));
}

function narrowest(issues: readonly Issue[]): number {
  return Math.min(...issues.map(({ width = Infinity }) => width));
}
