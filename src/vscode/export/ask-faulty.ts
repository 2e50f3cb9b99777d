/**
 * Asks what to do with tags that have errors: the same question for every kind of export, with the safe answer as
 * default.
 */

import { listed } from '../../core/names.ts';
import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import { isError, type Issue } from '../../core/issue.ts';
import { mostInQuestion } from '../../core/in-words.ts';
import { putCursor, showText } from '../common/tabs.ts';

export interface Faulty {
  readonly spec: vscode.Uri;
  /** Base name of its files. */
  readonly name: string;
  readonly report: Report;
}

const markings = 'If you export anyway, cut files say “DO NOT CUT”, and proofs are drafts that nobody can sign.';

/** `undefined`: export nothing; the user chose to see the problem or closed the question. */
export async function askFaulty(
  faulty: readonly Faulty[],
  others: boolean,
): Promise<'include' | 'leave out' | undefined> {
  const [first] = faulty;
  const errors = faulty.flatMap(({ report }) => report.issues.filter(isError));
  if (!first || !errors[0]) return undefined;
  const names = listed(
    faulty.map(({ name }) => name),
    mostInQuestion,
  );
  const count = errors.length === 1 ? 'an error' : `${errors.length} errors`;
  const show = { title: 'Show the Problem' };
  const leaveOut = { title: faulty.length === 1 ? 'Leave It Out' : 'Leave Them Out' };
  const include = { title: 'Export Anyway' };
  const answer = await vscode.window.showWarningMessage(
    `${names} ${faulty.length === 1 ? 'has' : 'have'} ${count}`,
    { modal: true, detail: `${errors[0].message}\n\n${markings}` },
    ...(others ? [show, leaveOut, include] : [show, include]),
  );
  if (answer === include) return 'include';
  if (answer === leaveOut) return 'leave out';
  if (answer === show) await showIssue(first.spec, first.report, errors[0]);
  return undefined;
}

/** Says why nothing can be made of a spec, and offers to show the problem. */
export async function sayNothingToCut(spec: vscode.Uri, report: Report): Promise<void> {
  const error = report.issues.find(isError);
  const show = 'Show the Problem';
  const answer = await vscode.window.showErrorMessage(
    `Nothing to export yet. ${error?.message ?? 'The spec has no piece.'}`,
    ...(error ? [show] : []),
  );
  if (answer === show) await showIssue(spec, report, error!);
}

export async function showIssue(spec: vscode.Uri, { source }: Report, { range }: Issue): Promise<void> {
  const editor = await showText(spec);
  if (editor.document.getText() !== source.text) return;
  putCursor(editor, range.start);
}
