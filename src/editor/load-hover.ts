/** Hovering over a hanger, or over the name of a piece that has one, tells what it bears. */

import * as vscode from 'vscode';
import type { YamlPath } from '../issue.ts';
import { describeLoad } from '../measure/describe-load.ts';
import { estimateLoad } from '../measure/load.ts';
import { tagSpecSelector } from './documents.ts';
import { plain } from './plain-markdown.ts';
import type { TagService } from './service.ts';

export function registerLoadHover(service: TagService): vscode.Disposable {
  return vscode.languages.registerHoverProvider(tagSpecSelector, {
    provideHover(document, position) {
      const result = service.get(document.uri);
      if (result?.version !== document.version || !result.report.tag) return undefined;
      const { source, tag } = result.report;
      const id = hangingPiece(source.pathAt(document.offsetAt(position)));
      const piece = tag.pieces.find((each) => each.id === id);
      const estimate = piece && estimateLoad(piece, tag.stock);
      if (!estimate) return undefined;
      const { headline, lines, caution } = describeLoad(estimate);
      const parts = [`**Load (estimate).** ${plain(headline)}.`, ...lines.map((line) => `- ${plain(line)}`)];
      return new vscode.Hover(new vscode.MarkdownString(`${parts.join('\n')}\n\n*${plain(caution)}*`));
    },
  });
}

/** `pieces.ID` itself, or anything in its hanger. */
function hangingPiece(path: YamlPath): string | undefined {
  const [group, id, key] = path;
  return group === 'pieces' && typeof id === 'string' && (path.length === 2 || key === 'hanger') ? id : undefined;
}
