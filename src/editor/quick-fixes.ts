/**
 * Fixes of the engine as the editor's quick fixes. They are computed when they are asked for, and only ever offered against
 * the version of the text they were computed for.
 */

import * as vscode from 'vscode';
import type { Engine } from '../engine.ts';
import { acceptanceOf } from '../fixes/accept.ts';
import type { Acceptance } from '../fixes/accept.ts';
import { findFixes } from '../fixes/find-fixes.ts';
import type { Fix, Issue } from '../issue.ts';
import type { IssueCode } from '../issue-kinds.ts';
import { computeOptions, whileWanted } from './compute-options.ts';
import { tagSpecSelector } from './documents.ts';
import { allFixes } from './fix-all.ts';
import { toRange } from './problems.ts';
import type { Checked, TagService } from './service.ts';

const { QuickFix, SourceFixAll } = vscode.CodeActionKind;
const fixAllKind = SourceFixAll.append('tagwright');

export function registerQuickFixes(service: TagService, engine: Engine): vscode.Disposable {
  return vscode.languages.registerCodeActionsProvider(tagSpecSelector, new QuickFixes(service, engine), {
    providedCodeActionKinds: [QuickFix, fixAllKind],
  });
}

interface Help {
  readonly fixes: readonly Fix[];
  readonly acceptance: Acceptance | undefined;
}

/** What mends many at once is worked out only when it is chosen. */
class FixAllAction extends vscode.CodeAction {
  constructor(
    title: string,
    readonly result: Checked,
    readonly only?: IssueCode,
  ) {
    super(title, QuickFix);
  }
}

class QuickFixes implements vscode.CodeActionProvider {
  readonly #service: TagService;
  readonly #engine: Engine;
  /** Found once for each issue; an issue is a new object at every computation. */
  readonly #found = new WeakMap<Issue, Help>();

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
    if (context.only?.contains(fixAllKind) && !context.only.contains(QuickFix)) return this.#fixAll(result, token);
    const fixes = new ActionSet();
    const acceptances = new ActionSet();
    const fixable = new Set<IssueCode>();
    for (const issue of result.issues) {
      const place = toRange(issue.range, result.report.source.position.bind(result.report.source));
      if (!place.intersection(range)) continue;
      const help = await this.#helpFor(issue, result, token);
      if (!help || document.version !== result.version) return [];
      const diagnostics = context.diagnostics.filter(
        ({ message, range: shown }) => message === issue.message && shown.isEqual(place),
      );
      [...help.fixes, ...replacements(issue)].forEach((fix, index) => {
        fixes.add(JSON.stringify(fix.edits), diagnostics, () => toAction(fix, index === 0, result));
      });
      const { acceptance } = help;
      if (acceptance) acceptances.add(issue.code, diagnostics, () => acceptAction(acceptance, issue, result));
      if (help.fixes.length > 0) fixable.add(issue.code);
    }
    return [...fixes.actions, ...acceptances.actions, ...manyAtOnce(fixable, result)];
  }

  async resolveCodeAction(action: vscode.CodeAction, token: vscode.CancellationToken): Promise<vscode.CodeAction> {
    if (!(action instanceof FixAllAction)) return action;
    const found = await allFixes(this.#engine, action.result, token, action.only);
    if (found) action.edit = found.edit;
    return action;
  }

  async #fixAll(result: Checked, token: vscode.CancellationToken): Promise<vscode.CodeAction[]> {
    const found = await allFixes(this.#engine, result, token);
    if (!found) return [];
    const action = new vscode.CodeAction('Fix all problems of the tag', fixAllKind);
    action.edit = found.edit;
    return [action];
  }

  async #helpFor(issue: Issue, result: Checked, token: vscode.CancellationToken): Promise<Help | undefined> {
    const known = this.#found.get(issue);
    if (known) return known;
    const help = await whileWanted(token, async (signal) => {
      const options = computeOptions(result.uri, signal);
      const fixes = await findFixes(this.#engine, result.report, issue, options);
      return { fixes, acceptance: await acceptanceOf(this.#engine, result.report, issue, options) };
    });
    if (help) this.#found.set(issue, help);
    return help;
  }
}

/** Several findings of one place are often mended by the same change: it is offered once, for all of them. */
class ActionSet {
  readonly #byKey = new Map<string, vscode.CodeAction>();

  get actions(): vscode.CodeAction[] {
    return [...this.#byKey.values()];
  }

  add(key: string, diagnostics: readonly vscode.Diagnostic[], make: () => vscode.CodeAction): void {
    const action = this.#byKey.get(key) ?? make();
    action.diagnostics = [...(action.diagnostics ?? []), ...diagnostics];
    this.#byKey.set(key, action);
  }
}

function toAction(fix: Fix, preferred: boolean, { uri, report }: Checked): vscode.CodeAction {
  const action = new vscode.CodeAction(fix.title, QuickFix);
  action.isPreferred = preferred;
  action.edit = new vscode.WorkspaceEdit();
  for (const { range, text } of fix.edits) {
    action.edit.replace(uri, toRange(range, report.source.position.bind(report.source)), text);
  }
  return action;
}

/** Puts the comment and leaves the cursor where the reason goes. */
function acceptAction({ at, before, after }: Acceptance, { code }: Issue, { uri, report }: Checked): vscode.CodeAction {
  const action = new vscode.CodeAction(`Accept this ${code}, and say why`, QuickFix);
  const place = toRange({ start: at, end: at }, report.source.position.bind(report.source));
  const comment = new vscode.SnippetString().appendText(before).appendTabstop(0).appendText(after);
  action.edit = new vscode.WorkspaceEdit();
  action.edit.set(uri, [new vscode.SnippetTextEdit(place, comment)]);
  return action;
}

/** Offered where at least one of a kind can be mended and there are more. */
function manyAtOnce(fixable: ReadonlySet<IssueCode>, result: Checked): vscode.CodeAction[] {
  const { issues } = result;
  if (fixable.size === 0 || issues.length < 2) return [];
  const kinds = [...fixable].filter((code) => issues.filter((issue) => issue.code === code).length > 1);
  return [
    ...kinds.map((code) => new FixAllAction(`Fix all of ${code} in this file`, result, code)),
    new FixAllAction('Fix all problems in this file', result),
  ];
}

/** The nearest known words for one that is not known. */
function replacements({ suggestions, range }: Issue): Fix[] {
  return (suggestions ?? []).map((text) => ({ title: `Change to “${text}”`, edits: [{ range, text }] }));
}
