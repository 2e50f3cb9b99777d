/** Language features for jobs and files of offcuts: hovers, links, definitions, and the nearest known word as a fix. */

import * as vscode from 'vscode';
import { changesOf } from '../../fixes/slips.ts';
import { jobDefinitionAt, jobHoverAt, jobLinksIn } from '../../language/job-help.ts';
import { jobSchema, offcutsSchema } from '../../language/schema.ts';
import { isJob, jobGlob, offcutsGlob } from '../common/documents.ts';
import { toRange } from '../features/problems.ts';
import { locateBeside } from '../service/font-files.ts';
import { sourceOf } from '../service/sources.ts';
import type { JobChecks } from './job-checks.ts';

const { languages } = vscode;
const jobs: vscode.DocumentFilter = { pattern: jobGlob };
const offcuts: vscode.DocumentFilter = { pattern: offcutsGlob };

export function registerJobLanguage(checks: JobChecks): vscode.Disposable {
  return vscode.Disposable.from(
    languages.registerHoverProvider([jobs, offcuts], {
      provideHover(document, position) {
        const source = sourceOf(document);
        const root = isJob(document.uri) ? jobSchema : offcutsSchema;
        const hover = jobHoverAt(source, document.offsetAt(position), checks.get(document.uri), root);
        const place = hover && toRange(hover.range, source.position.bind(source));
        return hover && new vscode.Hover(new vscode.MarkdownString(hover.markdown), place);
      },
    }),
    languages.registerDocumentLinkProvider(jobs, {
      provideDocumentLinks(document) {
        const source = sourceOf(document);
        return jobLinksIn(source).flatMap(({ range, file }) => {
          const target = locateBeside(document.uri)(file);
          const place = toRange(range, source.position.bind(source));
          return target === undefined ? [] : [new vscode.DocumentLink(place, vscode.Uri.parse(target))];
        });
      },
    }),
    languages.registerDefinitionProvider(jobs, {
      provideDefinition: (document, position) => definition(document, position, checks),
    }),
    languages.registerCodeActionsProvider(
      // Column names in tables of orders.
      [jobs, offcuts, { pattern: '**/*.csv' }],
      { provideCodeActions: (document, range, { diagnostics }) => nearestWords(document, range, diagnostics, checks) },
      { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix] },
    ),
  );
}

function definition(
  document: vscode.TextDocument,
  position: vscode.Position,
  checks: JobChecks,
): vscode.LocationLink[] {
  const source = sourceOf(document);
  const found = jobDefinitionAt(source, document.offsetAt(position), checks.get(document.uri));
  const target = found && locateBeside(document.uri)(found.file);
  if (!found || target === undefined) return [];
  const { from, to } = found;
  const targetRange = to ? toRange(to.range, to.source.position.bind(to.source)) : new vscode.Range(0, 0, 0, 0);
  const originSelectionRange = toRange(from, source.position.bind(source));
  return [
    { originSelectionRange, targetUri: vscode.Uri.parse(target), targetRange, targetSelectionRange: targetRange },
  ];
}

/** Only for the version of the text that was checked last. */
function nearestWords(
  document: vscode.TextDocument,
  range: vscode.Range,
  diagnostics: readonly vscode.Diagnostic[],
  checks: JobChecks,
): vscode.CodeAction[] {
  return checks.foundIn(document).flatMap(({ issue, place }) => {
    if (!place.intersection(range)) return [];
    return changesOf(issue).map(({ title, edits }, index) => {
      const action = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
      action.isPreferred = index === 0;
      action.diagnostics = diagnostics.filter(({ message }) => message === issue.message);
      action.edit = new vscode.WorkspaceEdit();
      for (const { range: at, text } of edits) {
        const { start, end } = at;
        action.edit.replace(document.uri, new vscode.Range(document.positionAt(start), document.positionAt(end)), text);
      }
      return action;
    });
  });
}
