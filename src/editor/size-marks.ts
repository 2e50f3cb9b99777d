/** Figures that stand in the text without being written: a line above each piece, and sizes behind what they follow from. */

import * as vscode from 'vscode';
import { hintsOf } from '../language/hints.ts';
import { lensesOf } from '../language/lenses.ts';
import { SpecSource } from '../spec/source.ts';
import { tagSpecSelector } from './documents.ts';
import { toRange } from './problems.ts';
import type { TagService } from './service.ts';

export function registerSizeMarks(service: TagService): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  const shared = { onDidChangeCodeLenses: changed.event, onDidChangeInlayHints: changed.event };
  return vscode.Disposable.from(
    changed,
    service.onDidChange(() => {
      changed.fire();
    }),
    vscode.languages.registerCodeLensProvider(tagSpecSelector, {
      ...shared,
      provideCodeLenses: (document) => lenses(document, service),
    }),
    vscode.languages.registerInlayHintsProvider(tagSpecSelector, {
      ...shared,
      provideInlayHints: (document, range) => hints(document, range, service),
    }),
    vscode.commands.registerCommand('tagwright.copySize', (size: unknown) => copySize(size)),
  );
}

function lenses(document: vscode.TextDocument, service: TagService): vscode.CodeLens[] {
  const { uri } = document;
  const result = service.get(uri);
  if (!result?.drawn) return [];
  const source = new SpecSource(document.getText());
  const lines = lensesOf(result.drawn, source);
  return lines.flatMap(({ range, text, size }) => {
    const place = toRange(range, source.position.bind(source));
    const shown = result.stale ? `${text} · out of date` : text;
    const commands: vscode.Command[] = [
      { title: shown, tooltip: 'Open the preview', command: 'tagwright.openPreview', arguments: [uri] },
      { title: 'Export SVG…', command: 'tagwright.exportSvg', arguments: [uri] },
      { title: 'Copy size', command: 'tagwright.copySize', arguments: [size] },
    ];
    return commands.map((command) => new vscode.CodeLens(place, command));
  });
}

function hints(document: vscode.TextDocument, range: vscode.Range, service: TagService): vscode.InlayHint[] {
  const result = service.get(document.uri);
  // What followed from the last good text would stand beside figures that it does not follow from.
  if (!result?.drawn || result.stale) return [];
  return hintsOf(result.drawn, new SpecSource(document.getText())).flatMap(({ offset, text, tip }) => {
    const position = document.positionAt(offset);
    if (!range.contains(position)) return [];
    const hint = new vscode.InlayHint(position, text);
    hint.paddingLeft = true;
    hint.tooltip = tip;
    return [hint];
  });
}

async function copySize(size: unknown): Promise<void> {
  if (typeof size !== 'string') return;
  await vscode.env.clipboard.writeText(size);
  vscode.window.setStatusBarMessage(`Copied ${size}`, 2000);
}
