/**
 * Diagnostics inside files that specs use, such as a workshop file, in addition to those at the place where a spec
 * refers to them.
 */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import type { Engine } from '../../engine/engine.ts';
import { isWorkshopFile } from '../common/documents.ts';
import { locateBeside } from '../service/font-files.ts';
import { diagnosticOf } from './problems.ts';
import type { TagService } from '../service/service.ts';

/** Diagnostics of each file, by finder: a spec that uses it, or the file checked by itself. */
type DiagnosticsByFile = Map<string, Map<string, readonly vscode.Diagnostic[]>>;

export function registerSharedProblems(service: TagService, engine: Engine): vscode.Disposable {
  const collection = vscode.languages.createDiagnosticCollection('tagwright.shared');
  const found: DiagnosticsByFile = new Map();
  const show = (file: string) => {
    const all = [...(found.get(file)?.values() ?? [])].flat();
    const once = new Map(all.map((each) => [JSON.stringify([each.range, each.message]), each]));
    collection.set(vscode.Uri.parse(file), [...once.values()]);
  };
  const publish = (finder: string, diagnostics: ReadonlyMap<string, readonly vscode.Diagnostic[]>) => {
    for (const [file, finders] of found) if (finders.delete(finder) && !diagnostics.has(file)) show(file);
    for (const [file, each] of diagnostics) {
      const finders = found.get(file) ?? new Map<string, readonly vscode.Diagnostic[]>();
      found.set(file, finders.set(finder, each));
      show(file);
    }
  };
  const look = async (document: vscode.TextDocument): Promise<void> => {
    const { uri } = document;
    if (!isWorkshopFile(uri)) return;
    const text = document.getText();
    const { source, issues } = await engine.checkShared(text, locateBeside(uri));
    if (document.isClosed || document.getText() !== text) return;
    const key = uri.toString();
    publish(key, new Map([[key, issues.map((issue) => diagnosticOf(issue, source))]]));
  };
  for (const document of vscode.workspace.textDocuments) inBackground(look(document), 'check a file that specs use');
  return vscode.Disposable.from(
    collection,
    service.onDidChange(({ uri, inUsed }) => {
      const used = new Map<string, readonly vscode.Diagnostic[]>();
      for (const { file, source, issues } of inUsed) {
        const diagnostics = issues.map((issue) => diagnosticOf(issue, source));
        used.set(file, [...(used.get(file) ?? []), ...diagnostics]);
      }
      publish(uri.toString(), used);
    }),
    service.onDidRemove((uri) => {
      publish(uri.toString(), new Map());
    }),
    vscode.workspace.onDidOpenTextDocument((document) => {
      inBackground(look(document), 'check a file that specs use');
    }),
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      inBackground(look(document), 'check a file that specs use');
    }),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => {
      // A spec stays checked after it is closed; a workshop file does not.
      if (isWorkshopFile(uri)) publish(uri.toString(), new Map());
    }),
  );
}
