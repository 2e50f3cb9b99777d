/** Fixes for slips in the text and for names that do not exist, tried on the whole spec like all other fixes. */

import { valueAt } from '../core/values.ts';
import { removeKey } from '../edits/remove-key.ts';
import { nearestWords } from '../spec/schema/suggest.ts';
import type { ComputeOptions, Engine, Report } from '../engine/engine.ts';
import { withEdits, causeOf } from '../core/issue.ts';
import type { Fix, Issue, TextChange, TextRange } from '../core/issue.ts';
import { issueKinds } from '../core/issue-kinds.ts';
import { solves } from './no-worse.ts';
import { styledFont } from './styled-font.ts';

/** Whether an issue arises before anything is made, so that its fix is not judged by the look of the tag. */
export function isSlip({ code }: Issue): boolean {
  return issueKinds[code].about !== 'making';
}

/** The changes suggested by an issue that actually correct it. */
export async function slipFixes(engine: Engine, report: Report, issue: Issue, options: ComputeOptions): Promise<Fix[]> {
  const fixes: Fix[] = [];
  for (const change of [...changesOf(issue), ...styledFont(report, issue), ...withoutSecond(report, issue)]) {
    const after = await engine.compute(withEdits(report.source.text, change.edits), options);
    if (isSlip(issue) ? putsRight(issue, report, after) : solves(issue, report, after))
      fixes.push({ ...change, look: 0 });
  }
  return fixes;
}

/** Takes out a key that is a slip away from one that is there already; which of the two values was meant, only the writer knows. */
function withoutSecond(
  { source }: Report,
  { code, path, suggestions = [] }: Issue,
): Pick<Fix, 'title' | 'edits' | 'isChoice'>[] {
  const key = path.at(-1);
  const beside = valueAt(source.value, path.slice(0, -1));
  if (code !== 'unknown-key' || suggestions.length > 0 || typeof beside !== 'object' || beside === null) return [];
  const others = Object.keys(beside).filter((other) => other !== key);
  const edit = nearestWords(String(key), others).length > 0 ? removeKey(source, path, others.length) : undefined;
  return edit ? [{ title: `Take out “${String(key)}”`, edits: [edit], isChoice: true }] : [];
}

/** The closest known words first. */
export function changesOf({ suggestions = [], repairs = [], range }: Issue): TextChange[] {
  const words = suggestions.map((text) => ({ title: `Change to “${text}”`, edits: [{ range, text }] }));
  return [...words, ...repairs];
}

/** One slip can hide later ones, so only issues of its own stage or earlier are counted: there must be fewer. */
function putsRight(issue: Issue, before: Report, after: Report): boolean {
  if (before.source.issues.length > 0) return after.source.issues.length < before.source.issues.length;
  if (after.source.issues.length > 0) return false;
  const stages = issueKinds[issue.code].about === 'text' ? ['text'] : ['text', 'resources'];
  const counted = ({ issues }: Report) => issues.filter(({ code }) => stages.includes(issueKinds[code].about));
  const wasUnread = unreadBy(issue, before);
  const [was, is] = [counted(before), counted(after).filter(({ range }) => !wasUnread(after, range))];
  return (
    is.length < was.length && !is.some((other) => causeOf(other) === causeOf(issue) && other.message === issue.message)
  );
}

/** Whether a place in the changed text lies in what a misspelt key stands before: its slips were there, but nobody looked. */
function unreadBy({ code, path }: Issue, before: Report): (after: Report, range: TextRange) => boolean {
  if (code !== 'unknown-key') return () => false;
  const { text } = before.source;
  const value = before.source.range(path);
  return (after, { start, end }) => {
    const shift = after.source.text.length - text.length;
    return start - shift >= value.start && end - shift <= value.end;
  };
}
