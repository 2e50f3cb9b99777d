/** “More fixes…”: those that the menu has no room for, each with all that it does. */

import * as vscode from 'vscode';
import type { TextChange } from '../../core/issue.ts';
import { partsOfTitle } from '../../fixes/offered.ts';
import { applyEdits } from '../common/apply-edits.ts';
import type { Checked } from '../service/checked.ts';

export const moreFixesCommand = 'tagwright.moreFixes';

export function registerMoreFixes(): vscode.Disposable {
  return vscode.commands.registerCommand(moreFixesCommand, choose);
}

/** An action for fixes of the text of a result; without the problems that they are for it would stand below all others. */
export function moreFixes(
  fixes: readonly TextChange[],
  result: Checked,
  diagnostics: readonly vscode.Diagnostic[],
): vscode.CodeAction {
  const title = `More fixes (${fixes.length})…`;
  const action = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
  action.diagnostics = [...diagnostics];
  action.command = { title, command: moreFixesCommand, arguments: [fixes, result] };
  return action;
}

async function choose(fixes: readonly TextChange[], { uri, report }: Checked): Promise<void> {
  const items = fixes.map((fix) => {
    const { label, effects: detail } = partsOfTitle(fix.title);
    return { label, ...(detail === undefined ? {} : { detail }), fix };
  });
  const chosen = await vscode.window.showQuickPick(items, { placeHolder: 'Which fix?', matchOnDetail: true });
  if (!chosen || (await applyEdits(uri, report.source, chosen.fix.edits))) return;
  void vscode.window.showInformationMessage('The spec has changed in the meantime; try again.');
}
