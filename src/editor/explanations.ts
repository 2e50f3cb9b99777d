/** The pages of documentation: of each kind of problem, reached from the code in Problems, and of what else needs explaining. */

import * as vscode from 'vscode';
import { topics } from '../explanation-topics.ts';
import { isIssueCode, issueCodes, issueKinds } from '../issue-kinds.ts';
import type { IssueCode } from '../issue-kinds.ts';

export const explainCommand = 'tagwright.explain';

export function registerExplanations(extensionUri: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand(explainCommand, async (asked?: string) => {
    const page =
      asked !== undefined && (isIssueCode(asked) || Object.hasOwn(topics, asked)) ? asked : await choosePage();
    if (page !== undefined) await vscode.commands.executeCommand('markdown.showPreview', pageOf(extensionUri, page));
  });
}

/** What a problem's code leads to. */
export function explanationLink(code: IssueCode): vscode.Uri {
  return vscode.Uri.parse(`command:${explainCommand}?${encodeURIComponent(JSON.stringify([code]))}`);
}

function pageOf(extensionUri: vscode.Uri, page: string): vscode.Uri {
  return vscode.Uri.joinPath(extensionUri, 'dist', 'explanations', `${page}.md`);
}

async function choosePage(): Promise<string | undefined> {
  const items = [
    ...issueCodes.map((label) => ({ label: label, detail: issueKinds[label].summary })),
    ...Object.entries(topics).map(([label, detail]) => ({ label, detail })),
  ];
  const chosen = await vscode.window.showQuickPick(items, {
    placeHolder: 'What should be explained?',
    matchOnDetail: true,
  });
  return chosen?.label;
}
