/** Fixes all problems in a spec, or all of one kind, as far as that leaves the look of the tag. */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { fixAll } from '../../fixes/fix-all.ts';
import type { FixAllResult } from '../../fixes/fix-all.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { workspaceEdit } from '../common/apply-edits.ts';
import { computeOptions, whileWanted } from '../service/compute-options.ts';
import type { Checked } from '../service/checked.ts';
import type { TagService } from '../service/service.ts';
import { editsBetween } from '../common/text-edits.ts';
import { stepDone } from './walkthrough.ts';

export type AllFixes = Pick<FixAllResult, 'made' | 'left'> & { readonly edit: vscode.WorkspaceEdit };

/** `undefined` once it is cancelled. */
export async function allFixes(
  engine: Engine,
  { uri, report }: Checked,
  token: vscode.CancellationToken,
  only?: IssueCode,
): Promise<AllFixes | undefined> {
  const { source, row } = report;
  const fixed = await whileWanted(token, (signal) =>
    fixAll(engine, source.text, computeOptions(uri, signal, row), only),
  );
  if (!fixed) return undefined;
  const { text, made, left } = fixed;
  return { edit: workspaceEdit(uri, source, editsBetween(source.text, text)), made, left };
}

/** The command: one undo step, and a message on what was fixed and what was left. */
export async function fixAllProblems(uri: vscode.Uri, service: TagService, engine: Engine): Promise<void> {
  const result = service.get(uri);
  if (!result) return;
  const options = { location: vscode.ProgressLocation.Window, title: 'Trying fixes', cancellable: true };
  const found = await vscode.window.withProgress(options, (_, token) => allFixes(engine, result, token));
  const document = vscode.workspace.textDocuments.find((each) => each.uri.toString() === uri.toString());
  // Text typed meanwhile takes precedence over fixes for an earlier version.
  if (document && result.version !== document.version) return;
  if (!found) return;
  if (found.made.length > 0) {
    await vscode.workspace.applyEdit(found.edit);
    stepDone('fixed');
  }
  void vscode.window.showInformationMessage(summaryOf(found));
}

/** Further unfixed problems are given as a count. */
const mostListed = 3;

/** Names each unfixed problem with its kind, its line and the reason. */
function summaryOf({ made, left }: AllFixes): string {
  const done = made.length === 1 ? made[0]! : `${made.length} problems fixed.`;
  const kept = left.slice(0, mostListed).map(({ issue, why }) => `${issue.code}: ${why}`);
  const more = left.length > mostListed ? [`and ${left.length - mostListed} more.`] : [];
  if (left.length === 0) return made.length === 0 ? 'No problems found.' : done;
  return [
    ...(made.length === 0 ? [] : [done]),
    `Left as ${left.length === 1 ? 'it is' : 'they are'}:`,
    ...kept,
    ...more,
  ].join(' ');
}
