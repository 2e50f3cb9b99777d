/** Inserts the comment that accepts a finding, at a place where it counts; the reason is left for the writer. */

import { lineStart, newLineOf } from '../core/lines.ts';
import { reportOf } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine/engine.ts';
import type { Issue } from '../core/issue.ts';
import { canBeSilenced } from '../engine/severity.ts';
import { withEdits } from './find-fixes.ts';
import { solves } from './no-worse.ts';

/** An insertion of `before`, the reason and `after`. */
export interface Acceptance {
  readonly at: number;
  readonly before: string;
  readonly after: string;
}

/** `undefined` if the finding cannot be accepted, or not by a comment there. */
export async function acceptanceOf(
  engine: Engine,
  shown: Report,
  issue: Issue,
  options: ComputeOptions,
): Promise<Acceptance | undefined> {
  const report = await reportOf(engine, shown, issue, options);
  const { source, row } = report;
  // Accepting a problem of a comment by a comment would never end.
  if (!canBeSilenced(issue.code) || issue.code === 'odd-comment') return undefined;
  const acceptance = commentFor(issue, source.text);
  const { at, before, after } = acceptance;
  const edit = { range: { start: at, end: at }, text: `${before}because${after}` };
  const accepted = await engine.compute(withEdits(source.text, [edit]), { ...options, row });
  return solves(issue, report, accepted) ? acceptance : undefined;
}

/** At the end of the line, or above it if the line has a comment already. */
function commentFor({ code, range }: Issue, text: string): Acceptance {
  const start = lineStart(text, range.start);
  const line = /[^\r\n]*/.exec(text.slice(start))![0];
  const comment = `# accept ${code}: `;
  if (!line.includes('#')) return { at: start + line.trimEnd().length, before: `  ${comment}`, after: '' };
  const indent = /^\s*/.exec(line)![0];
  return { at: start, before: indent + comment, after: newLineOf(text) };
}
