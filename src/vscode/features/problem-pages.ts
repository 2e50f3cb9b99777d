/** Documentation pages for each kind of problem, opened from the code in the Problems view. */

import * as vscode from 'vscode';
import { isIssueCode, issueCodes, issueKinds } from '../../core/issue-kinds.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { guidePage, showGuide } from './guide.ts';

export const explainCommand = 'tagwright.explain';

export function registerProblemPages(extensionUri: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand(explainCommand, async (asked?: string) => {
    const code = asked !== undefined && isIssueCode(asked) ? asked : await chooseCode();
    if (code) await showGuide(guidePage(extensionUri, `problems/${code}`));
  });
}

/** Link behind a problem's code. */
export function problemPageLink(code: IssueCode): vscode.Uri {
  return vscode.Uri.parse(`command:${explainCommand}?${encodeURIComponent(JSON.stringify([code]))}`);
}

async function chooseCode(): Promise<IssueCode | undefined> {
  const items = issueCodes.map((label) => ({ label, detail: issueKinds[label].summary }));
  const chosen = await vscode.window.showQuickPick(items, { placeHolder: 'Which problem?', matchOnDetail: true });
  return chosen?.label;
}
