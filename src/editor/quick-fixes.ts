/** Fixes of the engine as the editor's quick fixes, only ever against the version of the text they were computed for. */

import * as vscode from 'vscode';
import type { Fix, Issue } from '../issue.ts';
import { toRange } from './problems.ts';
import { tagSpecSelector } from './documents.ts';
import type { Checked, TagService } from './service.ts';

export function registerQuickFixes(service: TagService): vscode.Disposable {
  return vscode.languages.registerCodeActionsProvider(tagSpecSelector, new QuickFixes(service), {
    providedCodeActionKinds: [vscode.CodeActionKind.QuickFix],
  });
}

class QuickFixes implements vscode.CodeActionProvider {
  readonly #service: TagService;

  constructor(service: TagService) {
    this.#service = service;
  }

  provideCodeActions(
    document: vscode.TextDocument,
    range: vscode.Range,
    context: vscode.CodeActionContext,
  ): vscode.CodeAction[] {
    const result = this.#service.get(document.uri);
    if (!result || result.version !== document.version) return [];
    const position = result.report.source.position.bind(result.report.source);
    return result.issues
      .filter((issue) => toRange(issue.range, position).intersection(range))
      .flatMap((issue) => this.#actionsFor(issue, result, context));
  }

  #actionsFor(issue: Issue, result: Checked, context: vscode.CodeActionContext): vscode.CodeAction[] {
    const position = result.report.source.position.bind(result.report.source);
    const diagnostics = context.diagnostics.filter(
      ({ code, range, message }) =>
        code === issue.code && message === issue.message && range.isEqual(toRange(issue.range, position)),
    );
    return fixesOf(issue).map((fix, index) => {
      const action = new vscode.CodeAction(fix.title, vscode.CodeActionKind.QuickFix);
      action.diagnostics = diagnostics;
      action.isPreferred = index === 0;
      action.edit = new vscode.WorkspaceEdit();
      for (const edit of fix.edits) action.edit.replace(result.uri, toRange(edit.range, position), edit.text);
      return action;
    });
  }
}

/** Verified fixes, and the nearest known words for one that is not known. */
function fixesOf(issue: Issue): Fix[] {
  const replacements = (issue.suggestions ?? []).map((text) => ({
    title: `Change to “${text}”`,
    edits: [{ range: issue.range, text }],
  }));
  return [...(issue.fixes ?? []), ...replacements];
}
