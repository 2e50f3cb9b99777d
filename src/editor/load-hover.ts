/** Hovering over a hanger, or over the name of a piece that has one, tells what it bears. */

import * as vscode from 'vscode';
import type { YamlPath } from '../issue.ts';
import { describeLoad } from '../measure/describe-load.ts';
import { estimateLoad } from '../measure/load.ts';
import type { Piece } from '../tag/tag.ts';
import { tagSpecSelector } from './documents.ts';
import { plain } from '../language/plain-markdown.ts';
import type { TagService } from './service.ts';

export function registerLoadHover(service: TagService): vscode.Disposable {
  return vscode.languages.registerHoverProvider(tagSpecSelector, {
    provideHover(document, position) {
      const result = service.get(document.uri);
      if (result?.version !== document.version || !result.report.tag) return undefined;
      const { source, tag } = result.report;
      const path = source.pathAt(document.offsetAt(position));
      const piece = tag.pieces.find((each) => isAbout(path, each));
      const estimate = piece && estimateLoad(piece, tag.stock);
      if (!estimate) return undefined;
      const { headline, lines, caution } = describeLoad(estimate);
      const parts = [`**Load (estimate).** ${plain(headline)}.`, ...lines.map((line) => `- ${plain(line)}`)];
      return new vscode.Hover(new vscode.MarkdownString(`${parts.join('\n')}\n\n*${plain(caution)}*`));
    },
  });
}

/** `pieces.ID` itself, or anything in one of its hangers. */
function isAbout(path: YamlPath, { path: own, hangers }: Piece): boolean {
  const within = (start: YamlPath) => start.every((step, index) => path[index] === step);
  return (within(own) && path.length === own.length) || hangers.some((hanger) => within(hanger.path));
}
