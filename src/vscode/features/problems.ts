/** Issues as diagnostics in the Problems view. */

import * as vscode from 'vscode';
import type { Issue } from '../../core/issue.ts';
import type { Severity } from '../../core/issue-kinds.ts';
import { problemPageLink } from './problem-pages.ts';
import type { Checked } from '../service/checked.ts';
import type { TagService } from '../service/service.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';

const severities: Readonly<Record<Severity, vscode.DiagnosticSeverity>> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  info: vscode.DiagnosticSeverity.Information,
};

/** Shows the issues that the service finds, and clears them when the spec goes. */
export function registerProblems(service: TagService): vscode.Disposable {
  const collection = vscode.languages.createDiagnosticCollection('tagwright');
  return vscode.Disposable.from(
    collection,
    service.onDidChange((result) => {
      collection.set(result.uri, diagnosticsOf(result));
    }),
    service.onDidRemove((uri) => {
      collection.delete(uri);
    }),
  );
}

function diagnosticsOf({ issues, report }: Checked): vscode.Diagnostic[] {
  return issues.map((issue) => diagnosticOf(issue, report.source));
}

export function diagnosticOf(issue: Issue, source: Pick<SpecSource, 'position'>): vscode.Diagnostic {
  const range = toRange(issue.range, source.position.bind(source));
  const diagnostic = new vscode.Diagnostic(range, issue.message, severities[issue.severity]);
  diagnostic.source = 'Tagwright';
  diagnostic.code = { value: issue.code, target: problemPageLink(issue.code) };
  return diagnostic;
}

/** Engine positions count from 1, the editor's from 0. */
export function toRange(
  { start, end }: Issue['range'],
  position: (offset: number) => { line: number; column: number },
): vscode.Range {
  const from = position(start);
  const to = position(end);
  return new vscode.Range(from.line - 1, from.column - 1, to.line - 1, to.column - 1);
}
