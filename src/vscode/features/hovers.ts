/** Hovers over the words of a tag spec, and signature help inside lists of numbers. */

import * as vscode from 'vscode';
import { hoverAt } from '../../language/hover/hover.ts';
import { signatureAt } from '../../language/completion/signature.ts';
import { tagSpecSelector } from '../common/documents.ts';
import { guideCommand, referenceLink } from './guide.ts';
import { toRange } from './problems.ts';
import type { TagService } from '../service/service.ts';
import type { WorkspaceContext } from '../service/workspace-context.ts';
import { sourceOf } from '../service/sources.ts';

export function registerHovers(service: TagService, workspaceContext: WorkspaceContext): vscode.Disposable {
  return vscode.languages.registerHoverProvider(tagSpecSelector, {
    provideHover(document, position) {
      const source = sourceOf(document);
      // While the spec is broken, sizes are those of the drawing still shown.
      const report = service.get(document.uri)?.drawn;
      const hover = hoverAt(source, document.offsetAt(position), report, workspaceContext.fonts);
      if (!hover) return undefined;
      const range = toRange(hover.range, source.position.bind(source));
      const link = hover.section === undefined ? '' : `\n\n${referenceLink(hover.section)}`;
      const markdown = new vscode.MarkdownString(hover.markdown + link);
      markdown.isTrusted = { enabledCommands: [guideCommand] };
      return new vscode.Hover(markdown, range);
    },
  });
}

export function registerSignatures(): vscode.Disposable {
  return vscode.languages.registerSignatureHelpProvider(
    tagSpecSelector,
    {
      provideSignatureHelp(document, position) {
        const found = signatureAt(document.getText(), document.offsetAt(position));
        if (!found) return undefined;
        const signature = new vscode.SignatureInformation(found.label, new vscode.MarkdownString(found.docs));
        signature.parameters = found.parameters.map(([start, end]) => new vscode.ParameterInformation([start, end]));
        return Object.assign(new vscode.SignatureHelp(), {
          signatures: [signature],
          activeSignature: 0,
          activeParameter: found.active,
        });
      },
    },
    '[',
    ',',
  );
}
