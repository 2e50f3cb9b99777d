/**
 * The engine's fixes as code actions. They are computed on request, and only ever offered for the version of the text
 * they were computed for.
 */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import type { Acceptance } from '../../fixes/accept.ts';
import { isPreferred } from '../../fixes/gentle.ts';
import { offered, remedyIn, shortTitle } from '../../fixes/offered.ts';
import { severityRank } from '../../core/issue.ts';
import type { Issue, TextChange } from '../../core/issue.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { workspaceEdit } from '../common/apply-edits.ts';
import { whileWanted } from '../service/compute-options.ts';
import { tagSpecSelector } from '../common/documents.ts';
import { allFixes } from './fix-all.ts';
import { acceptSnippet, acceptTitle, type IssueHelp } from './issue-help.ts';
import { moreFixes, registerMoreFixes } from './more-fixes.ts';
import { explainCommand } from './problem-pages.ts';
import { toRange } from './problems.ts';
import type { Checked } from '../service/checked.ts';
import type { TagService } from '../service/service.ts';

const { QuickFix, SourceFixAll } = vscode.CodeActionKind;
const fixAllKind = SourceFixAll.append('tagwright');

export function registerQuickFixes(service: TagService, engine: Engine, help: IssueHelp): vscode.Disposable {
  return vscode.Disposable.from(
    registerMoreFixes(),
    vscode.languages.registerCodeActionsProvider(tagSpecSelector, new QuickFixes(service, engine, help), {
      providedCodeActionKinds: [QuickFix, fixAllKind],
    }),
  );
}

/** Fixing many problems is computed only when it is chosen. */
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
  readonly #help: IssueHelp;

  constructor(service: TagService, engine: Engine, help: IssueHelp) {
    this.#service = service;
    this.#engine = engine;
    this.#help = help;
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
    const unfixed = new ActionSet();
    const approvals = new ActionSet();
    const acceptances = new ActionSet();
    const changes = new Map<string, TextChange>();
    const byProblem: string[][] = [];
    const fixable = new Set<IssueCode>();
    const placeOf = (issue: Issue) => toRange(issue.range, result.report.source.position.bind(result.report.source));
    const here = result.issues
      .filter((issue) => placeOf(issue).intersection(range))
      .sort((a, b) => severityRank[b.severity] - severityRank[a.severity]);
    for (const issue of here) {
      const place = placeOf(issue);
      const help = await whileWanted(token, (signal) => this.#help.for(issue, result, signal));
      if (!help || document.version !== result.version) return [];
      const diagnostics = context.diagnostics.filter(
        ({ message, range: shown }) => message === issue.message && shown.isEqual(place),
      );
      const keys = help.fixes.map((change, index) => {
        const preferred = isPreferred(change, index, issue, here[0]!);
        const key = JSON.stringify(change.edits);
        changes.set(key, change);
        fixes.add(key, diagnostics, () => toAction(change, preferred, result));
        return key;
      });
      byProblem.push(keys);
      const { acceptance } = help;
      if (acceptance) acceptances.add(issue.code, diagnostics, () => acceptAction(acceptance, issue, result));
      if (help.fixes.length > 0) fixable.add(issue.code);
      else unfixed.add(issue.code, diagnostics, () => explainAction(issue));
      if (issue.code === 'not-as-approved') approvals.add(issue.code, diagnostics, () => approveAction(result));
    }
    const { shown, more } = offered(byProblem, (key) => remedyIn(changes.get(key)!.title));
    const others = more.map((key) => changes.get(key)!);
    return [
      ...shown.map((key) => fixes.get(key)),
      ...(others.length > 0
        ? [
            moreFixes(
              others,
              result,
              shown.flatMap((key) => fixes.get(key).diagnostics ?? []),
            ),
          ]
        : []),
      ...approvals.actions,
      ...unfixed.actions,
      ...acceptances.actions,
      ...manyAtOnce(fixable, result),
    ];
  }

  async resolveCodeAction(action: vscode.CodeAction, token: vscode.CancellationToken): Promise<vscode.CodeAction> {
    if (!(action instanceof FixAllAction)) return action;
    const found = await allFixes(this.#engine, action.result, token, action.only);
    if (found && found.made.length > 0) action.edit = found.edit;
    return action;
  }

  async #fixAll(result: Checked, token: vscode.CancellationToken): Promise<vscode.CodeAction[]> {
    const found = await allFixes(this.#engine, result, token);
    if (!found || found.made.length === 0) return [];
    const action = new vscode.CodeAction('Fix all problems of the tag', fixAllKind);
    action.edit = found.edit;
    return [action];
  }
}

/** Several issues at one place often share a fix, which is then offered once, for all of them. */
class ActionSet {
  readonly #byKey = new Map<string, vscode.CodeAction>();

  get actions(): vscode.CodeAction[] {
    return [...this.#byKey.values()];
  }

  get(key: string): vscode.CodeAction {
    return this.#byKey.get(key)!;
  }

  add(key: string, diagnostics: readonly vscode.Diagnostic[], make: () => vscode.CodeAction): void {
    const action = this.#byKey.get(key) ?? make();
    action.diagnostics = [...(action.diagnostics ?? []), ...diagnostics];
    this.#byKey.set(key, action);
  }
}

function toAction({ title, edits }: TextChange, preferred: boolean, { uri, report }: Checked): vscode.CodeAction {
  const action = new vscode.CodeAction(shortTitle(title), QuickFix);
  action.isPreferred = preferred;
  action.edit = workspaceEdit(uri, report.source, edits);
  return action;
}

/** Says that no change helps, which an empty menu would leave open; its page says what to do. */
function explainAction({ code }: Issue): vscode.CodeAction {
  const title = `No automatic fix found: read about ${code}`;
  const action = new vscode.CodeAction(title, QuickFix);
  action.command = { title, command: explainCommand, arguments: [code] };
  return action;
}

function approveAction({ uri }: Checked): vscode.CodeAction {
  const title = 'Record this look as approved…';
  const action = new vscode.CodeAction(title, QuickFix);
  action.command = { command: 'tagwright.recordApproval', title, arguments: [uri] };
  return action;
}

/** Inserts the comment and leaves the cursor where the reason goes. */
function acceptAction(acceptance: Acceptance, { code }: Issue, { uri, report }: Checked): vscode.CodeAction {
  const action = new vscode.CodeAction(acceptTitle(code), QuickFix);
  const { at } = acceptance;
  const place = toRange({ start: at, end: at }, report.source.position.bind(report.source));
  action.edit = new vscode.WorkspaceEdit();
  action.edit.set(uri, [new vscode.SnippetTextEdit(place, acceptSnippet(acceptance))]);
  return action;
}

/** Offered if at least one of a kind can be fixed and there are several. */
function manyAtOnce(fixable: ReadonlySet<IssueCode>, result: Checked): vscode.CodeAction[] {
  const { issues } = result;
  if (fixable.size === 0 || issues.length < 2) return [];
  const kinds = [...fixable].filter((code) => issues.filter((issue) => issue.code === code).length > 1);
  return [
    ...kinds.map((code) => new FixAllAction(`Fix all ${code} problems in this file`, result, code)),
    new FixAllAction('Fix all problems in this file', result),
  ];
}
