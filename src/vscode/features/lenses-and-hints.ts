/** Computed sizes in the text: a code lens above each piece, and inlay hints after the values that they follow from. */

import * as vscode from 'vscode';
import { hintsOf } from '../../language/hover/hints.ts';
import { lensesOf } from '../../language/navigation/lenses.ts';
import { estimateOfPiece } from '../../export/job/known-estimates.ts';
import { estimateLine } from '../../export/words/estimate-facts.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { tagSpecSelector } from '../common/documents.ts';
import { toRange } from './problems.ts';
import type { TagResult } from '../service/results.ts';
import type { TagService } from '../service/service.ts';
import { sourceOf } from '../service/sources.ts';

export function registerLensesAndHints(service: TagService): vscode.Disposable {
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
      resolveCodeLens: async (lens, token) => (lens instanceof EstimateLens ? lens.resolve(token) : lens),
    }),
    vscode.languages.registerInlayHintsProvider(tagSpecSelector, {
      ...shared,
      provideInlayHints: (document, range) => hints(document, range, service),
    }),
    vscode.commands.registerCommand('tagwright.copySize', (size: unknown) => copySize(size)),
  );
}

/**
 * Delay from the last keystroke to planning the cuts, in ms: longer than a pause in typing, because planning blocks
 * everything else.
 */
const estimateDelayMs = 600;

/** The estimate for a piece, computed only when it is in view and typing has paused. */
class EstimateLens extends vscode.CodeLens {
  readonly #tag: Tag;
  readonly #piece: Piece;

  constructor(range: vscode.Range, tag: Tag, piece: Piece) {
    super(range);
    this.#tag = tag;
    this.#piece = piece;
  }

  async resolve(token: vscode.CancellationToken): Promise<vscode.CodeLens> {
    await new Promise((resolve) => setTimeout(resolve, estimateDelayMs));
    if (token.isCancellationRequested) return this;
    const estimate = estimateOfPiece(this.#tag, this.#piece);
    const title = estimate ? estimateLine(estimate, this.#tag.units) : '';
    this.command = { title, tooltip: 'Job estimate for this piece alone', command: '' };
    return this;
  }
}

/** Empty while the drawing is out of date: estimates for an earlier text are of no use. */
function estimateLens(place: vscode.Range, id: string, { tag, stale }: TagResult): EstimateLens[] {
  const piece = tag?.pieces.find((each) => each.id === id);
  return tag && piece && !stale ? [new EstimateLens(place, tag, piece)] : [];
}

function lenses(document: vscode.TextDocument, service: TagService): vscode.CodeLens[] {
  const { uri } = document;
  const result = service.get(uri);
  if (!result?.drawn) return [];
  const source = sourceOf(document);
  const lines = lensesOf(result.drawn, source, result.stale ? result.issues : undefined);
  return lines.flatMap(({ piece, range, text, size }) => {
    const place = toRange(range, source.position.bind(source));
    const lens = (command: vscode.Command) => new vscode.CodeLens(place, command);
    return [
      lens({ title: text, tooltip: 'Open the preview', command: 'tagwright.openPreview', arguments: [uri] }),
      ...estimateLens(place, piece, result),
      lens({ title: 'Export SVG…', command: 'tagwright.exportSvg', arguments: [uri] }),
      lens({ title: 'Copy size', command: 'tagwright.copySize', arguments: [size] }),
    ];
  });
}

function hints(document: vscode.TextDocument, range: vscode.Range, service: TagService): vscode.InlayHint[] {
  const result = service.get(document.uri);
  // Sizes computed from an earlier text would be shown beside values they do not follow from.
  if (!result?.drawn || result.stale) return [];
  return hintsOf(result.drawn, sourceOf(document)).flatMap(({ offset, text, tip }) => {
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
