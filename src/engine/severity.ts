/** Severity of findings: the writer of the spec may accept one, and the user may raise, lower or switch off a kind. */

import { inOrder, severityRank } from '../core/issue.ts';
import type { Issue, TextRange } from '../core/issue.ts';
import type { Severity } from '../core/issue-kinds.ts';
import { currentCode, isIssueCode, issueCodes, issueKinds } from '../core/issue-kinds.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import type { AcceptComment } from '../spec/accept-comments.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { didYouMean, nearestWords } from '../spec/schema/suggest.ts';

/** Severities that replace the usual one of each kind. */
export type Severities = Readonly<Partial<Record<IssueCode, Severity | 'off'>>>;

/** A finding that the spec accepts, with the reason it gives. */
export interface AcceptedIssue extends Issue {
  readonly reason: string;
}

export interface JudgedIssues {
  readonly issues: readonly Issue[];
  readonly accepted: readonly AcceptedIssue[];
}

/**
 * Whether a kind may be accepted or switched off. A problem that keeps a tag, or part of it, from being made can be
 * shown at a lower severity but not hidden: it would be cut without that part.
 */
export function canBeSilenced(code: IssueCode): boolean {
  return issueKinds[code].about === 'making';
}

/**
 * The issues that count, in text order, and those that the spec accepts.
 * @param complete Whether everything was checked; only then is a comment that accepts nothing known to be idle.
 */
export function judgeIssues(
  found: readonly Issue[],
  source: SpecSource,
  comments: readonly AcceptComment[],
  severities: Severities,
  complete: boolean,
): JudgedIssues {
  const accepted: AcceptedIssue[] = [];
  const rest: Issue[] = [];
  const used = new Set<string>();
  for (const issue of found) {
    const comment = canBeSilenced(issue.code) ? acceptedBy(issue, source, comments) : undefined;
    if (comment) {
      used.add(useKey(comment, issue.code));
      accepted.push({ ...issue, reason: comment.reason });
    } else rest.push(issue);
  }
  const odd = comments.flatMap((comment) =>
    commentIssues(comment, (code) => complete && !used.has(useKey(comment, code))),
  );
  return { issues: inOrder([...rest, ...odd].flatMap((issue) => withSeverity(issue, severities))), accepted };
}

function acceptedBy(issue: Issue, source: SpecSource, comments: readonly AcceptComment[]): AcceptComment | undefined {
  if (comments.length === 0) return undefined;
  // Both the line of its key and the line on which its value begins count.
  const lines = [source.range(issue.path).start, source.keyRange(issue.path).start, issue.range.start].map(
    (offset) => source.position(offset).line,
  );
  return comments.find(
    ({ codes, reason, line }) =>
      reason !== '' &&
      codes.some(({ code }) => currentCode(code) === issue.code) &&
      lines.includes(source.position(line).line),
  );
}

function useKey({ range }: AcceptComment, code: string): string {
  return `${range.start} ${currentCode(code)}`;
}

/** Problems of an accepting comment itself. */
function commentIssues({ codes, reason, range }: AcceptComment, isIdle: (code: string) => boolean): Issue[] {
  const odd = (at: TextRange, message: string, extra: Partial<Issue> = {}): Issue => {
    return {
      code: 'odd-comment',
      severity: issueKinds['odd-comment'].severity,
      path: [],
      range: at,
      message,
      ...extra,
    };
  };
  const issues: Issue[] = [];
  if (codes.length === 0)
    issues.push(odd(range, 'Name the problem to accept, as in “# accept weak-bridge: it lies flat”.'));
  for (const { code: written, range: at } of codes) {
    const code = currentCode(written);
    if (code !== written) issues.push(odd(at, `“${written}” is now called “${code}”.`, { suggestions: [code] }));
    if (!isIssueCode(code)) {
      const suggestions = nearestWords(code, issueCodes);
      issues.push(odd(at, `There is no problem called “${code}”.${didYouMean(suggestions)}`, { suggestions }));
    } else if (!canBeSilenced(code))
      issues.push(odd(at, `“${code}” cannot be accepted: the tag, or part of it, cannot be made.`));
    else if (reason !== '' && isIdle(code))
      issues.push(odd(at, `“${code}” no longer occurs on this line; remove the comment.`));
  }
  if (codes.length > 0 && reason === '')
    issues.push(odd(range, 'Add a reason after a colon; until then the problem still counts.'));
  return issues;
}

function withSeverity(issue: Issue, severities: Severities): Issue[] {
  const severity = severities[issue.code];
  // Some kinds have a graver form, such as a hole that is open to the edge; a setting only lowers the usual form.
  const isGrave = severityRank[issue.severity] > severityRank[issueKinds[issue.code].severity];
  if (severity === undefined || (isGrave && severity !== 'error')) return [issue];
  if (severity === 'off') return canBeSilenced(issue.code) ? [] : [issue];
  return [{ ...issue, severity }];
}
