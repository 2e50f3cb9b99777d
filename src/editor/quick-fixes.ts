/**
 * Fixes of the engine as the editor's quick fixes. They are computed when they are asked for, and only ever offered against
 * the version of the text they were computed for.
 */

import * as vscode from 'vscode';
import type { Engine } from '../engine.ts';
import { findFixes } from '../fixes/find-fixes.ts';
import type { Fix, Issue } from '../issue.ts';
import { tagSpecSelector } from './documents.ts';
import { locateBeside } from './font-files.ts';
import { toRange } from './problems.ts';
import type { Checked, TagService } from './service.ts';

export function registerQuickFixes(service: TagService, engine: Engine): vscode.Disposable {
  return vscode.languages.registerCodeActionsProvider(tagSpecSelector, new QuickFixes(service, engine), {
    providedCodeActionKinds: [vscode.CodeActionKind.QuickFix],
  });
}

class QuickFixes implements vscode.CodeActionProvider {
  readonly #service: TagService;
  readonly #engine: Engine;
  /** Found once for each issue; an issue is a new object at every computation. */
  readonly #found = new WeakMap<Issue, readonly Fix[]>();

  constructor(service: TagService, engine: Engine) {
    this.#service = service;
    this.#engine = engine;
  }

  async provideCodeActions(
    document: vscode.TextDocument,
    range: vscode.Range,
    context: vscode.CodeActionContext,
    token: vscode.CancellationToken,
  ): Promise<vscode.CodeAction[]> {
    const result = this.#service.get(document.uri);
    if (!result || result.version !== document.version) return [];
    const position = result.report.source.position.bind(result.report.source);
    const actions: vscode.CodeAction[] = [];
    for (const issue of result.issues) {
      const place = toRange(issue.range, position);
      if (!place.intersection(range)) continue;
      const fixes = await this.#fixesOf(issue, result, token);
      if (token.isCancellationRequested || document.version !== result.version) return [];
      const diagnostics = context.diagnostics.filter(
        ({ code, message, range: shown }) => code === issue.code && message === issue.message && shown.isEqual(place),
      );
      actions.push(...fixes.map((fix, index) => toAction(fix, index === 0, diagnostics, result)));
    }
    return actions;
  }

  async #fixesOf(issue: Issue, result: Checked, token: vscode.CancellationToken): Promise<readonly Fix[]> {
    const known = this.#found.get(issue);
    if (known) return known;
    const controller = new AbortController();
    const cancelling = token.onCancellationRequested(() => {
      controller.abort();
    });
    try {
      const options = { locate: locateBeside(result.uri), signal: controller.signal };
      const fixes = [...(await findFixes(this.#engine, result.report, issue, options)), ...replacements(issue)];
      this.#found.set(issue, fixes);
      return fixes;
    } catch (error) {
      if (controller.signal.aborted) return [];
      throw error;
    } finally {
      cancelling.dispose();
    }
  }
}

function toAction(
  fix: Fix,
  preferred: boolean,
  diagnostics: vscode.Diagnostic[],
  { uri, report }: Checked,
): vscode.CodeAction {
  const action = new vscode.CodeAction(fix.title, vscode.CodeActionKind.QuickFix);
  action.diagnostics = diagnostics;
  action.isPreferred = preferred;
  action.edit = new vscode.WorkspaceEdit();
  for (const { range, text } of fix.edits) {
    action.edit.replace(uri, toRange(range, report.source.position.bind(report.source)), text);
  }
  return action;
}

/** The nearest known words for one that is not known. */
function replacements({ suggestions, range }: Issue): Fix[] {
  return (suggestions ?? []).map((text) => ({ title: `Change to “${text}”`, edits: [{ range, text }] }));
}
