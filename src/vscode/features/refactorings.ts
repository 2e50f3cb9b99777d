/** Rewrites a tag spec without changing the tag: formatting, extracting and inlining shapes, converting units. */

import * as vscode from 'vscode';
import { unitConversion } from '../../language/refactor/convert-units.ts';
import { formatted } from '../../language/refactor/format.ts';
import { refactoringsAt } from '../../language/refactor/refactor.ts';
import type { Refactoring } from '../../language/refactor/refactoring.ts';
import { noUses } from '../../spec/files/used-files.ts';
import { workspaceEdit } from '../common/apply-edits.ts';
import { jobGlob, offcutsGlob, tagSpecSelector } from '../common/documents.ts';
import type { TagService } from '../service/service.ts';
import { editsBetween } from '../common/text-edits.ts';
import { sourceOf } from '../service/sources.ts';

const { CodeActionKind } = vscode;

const kinds: Readonly<Record<Refactoring['kind'], vscode.CodeActionKind>> = {
  extract: CodeActionKind.RefactorExtract,
  inline: CodeActionKind.RefactorInline,
  rewrite: CodeActionKind.RefactorRewrite,
};

export function registerRefactorings(service: TagService): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.languages.registerDocumentFormattingEditProvider(
      [...tagSpecSelector, { pattern: jobGlob }, { pattern: offcutsGlob }],
      {
        provideDocumentFormattingEdits: format,
      },
    ),
    vscode.languages.registerCodeActionsProvider(
      tagSpecSelector,
      {
        // On request only: there is no problem, so the light bulb should stay off.
        provideCodeActions: (document, range, { triggerKind }) =>
          triggerKind === vscode.CodeActionTriggerKind.Invoke ? actions(document, range, service) : [],
      },
      { providedCodeActionKinds: Object.values(kinds) },
    ),
  );
}

function format(document: vscode.TextDocument): vscode.TextEdit[] {
  const text = document.getText();
  return editsBetween(text, formatted(text)).map(({ range, text: put }) => {
    const place = new vscode.Range(document.positionAt(range.start), document.positionAt(range.end));
    return vscode.TextEdit.replace(place, put);
  });
}

function actions(document: vscode.TextDocument, { start }: vscode.Range, service: TagService): vscode.CodeAction[] {
  const { uri } = document;
  const source = sourceOf(document);
  const uses = service.get(uri)?.report.uses ?? noUses;
  const found = refactoringsAt(source, document.offsetAt(start), uses).map(({ kind, title, edits, name }) => {
    const action = new vscode.CodeAction(title, kinds[kind]);
    action.edit = workspaceEdit(uri, source, edits);
    // Starts a rename at the new name, so that it can be improved.
    if (name !== undefined) action.command = { command: 'editor.action.rename', title: 'Rename' };
    return action;
  });
  const conversion = unitConversion(source);
  if (!conversion) return found;
  const convert = new vscode.CodeAction(conversion.title, CodeActionKind.RefactorRewrite);
  convert.edit = workspaceEdit(uri, source, conversion.edits);
  return [...found, convert];
}
