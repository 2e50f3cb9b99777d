/** What keeps part of a job from being cut, and the way to its place, which may be in a file that the job reads. */

import * as vscode from 'vscode';
import { isError } from '../../core/issue.ts';
import type { Issue } from '../../core/issue.ts';
import type { CheckedJob } from '../../jobs/job.ts';
import type { FileIssues } from '../../jobs/read/model.ts';
import type { SheetProblem } from '../../protocol/sheets.ts';
import { putCursor, showText } from '../common/tabs.ts';

/** Problems that keep part of the job from being cut. */
export function problemsOf({ issues, inFiles, source }: CheckedJob): SheetProblem[] {
  const problem = ({ message, range: { start } }: Issue, position: FileIssues['position']) => {
    return { labels: [], message, line: position(start).line, offset: start, row: 0 };
  };
  return [
    ...issues.filter(isError).map((issue) => problem(issue, (offset) => source.position(offset))),
    ...inFiles.flatMap(({ name, issues: found, position }) =>
      found.filter(isError).map((issue) => ({ file: name, ...problem(issue, position) })),
    ),
  ];
}

/** What keeps everything from being cut, if anything is wrong. */
export function whyNothing(job: CheckedJob): string | undefined {
  const [first] = problemsOf(job);
  return first && (first.file === undefined ? first.message : `${first.file}, line ${first.line}: ${first.message}`);
}

export async function showProblem(
  job: vscode.Uri,
  { source, inFiles }: CheckedJob,
  { file, offset }: Pick<SheetProblem, 'file' | 'offset'>,
): Promise<void> {
  if (file === undefined) {
    const editor = await showText(job);
    if (editor.document.getText() === source.text) putCursor(editor, offset);
    return;
  }
  const found = inFiles.find(({ name }) => name === file);
  if (!found) return;
  const { line, column } = found.position(offset);
  const editor = await showText(vscode.Uri.parse(found.file));
  putCursor(editor, editor.document.offsetAt(new vscode.Position(line - 1, column - 1)));
}
