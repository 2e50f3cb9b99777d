/** Mending everything that can be mended in a spec, or everything of one kind. */

import * as vscode from 'vscode';
import type { Engine } from '../engine.ts';
import { fixAll } from '../fixes/fix-all.ts';
import type { IssueCode } from '../issue-kinds.ts';
import { workspaceEdit } from './apply-edits.ts';
import { computeOptions, whileWanted } from './compute-options.ts';
import { targetSpec } from './documents.ts';
import type { Checked, TagService } from './service.ts';
import { editsBetween } from './text-edits.ts';

/** `undefined` when it is no longer wanted, or there is nothing to mend. */
export async function allFixes(
  engine: Engine,
  { uri, report }: Checked,
  token: vscode.CancellationToken,
  only?: IssueCode,
): Promise<{ edit: vscode.WorkspaceEdit; made: readonly string[] } | undefined> {
  const { source, row } = report;
  const fixed = await whileWanted(token, (signal) =>
    fixAll(engine, source.text, computeOptions(uri, signal, row), only),
  );
  if (!fixed || fixed.made.length === 0) return undefined;
  return { edit: workspaceEdit(uri, source, editsBetween(source.text, fixed.text)), made: fixed.made };
}

/** The command: one undo step, and a word on what was done. */
export async function fixAllProblems(target: unknown, service: TagService, engine: Engine): Promise<void> {
  const uri = targetSpec(target);
  const result = uri && service.get(uri);
  if (!result) return;
  const options = { location: vscode.ProgressLocation.Window, title: 'Trying fixes', cancellable: true };
  const found = await vscode.window.withProgress(options, (_, token) => allFixes(engine, result, token));
  const document = vscode.workspace.textDocuments.find((each) => each.uri.toString() === uri.toString());
  // What was typed meanwhile is worth more than the fixes for what was there before.
  if (document && result.version !== document.version) return;
  if (!found) {
    void vscode.window.showInformationMessage('There is nothing here that a change of a figure would mend.');
    return;
  }
  await vscode.workspace.applyEdit(found.edit);
  void vscode.window.showInformationMessage(
    found.made.length === 1 ? found.made[0]! : `${found.made.length} fixes made.`,
  );
}
