/** Hovering over a word of a tag spec, and help inside lists of figures. */

import * as vscode from 'vscode';
import { hoverAt } from '../language/hover.ts';
import { signatureAt } from '../language/signature.ts';
import { tagSpecSelector } from './documents.ts';
import { explainCommand } from './explanations.ts';
import { toRange } from './problems.ts';
import type { TagService } from './service.ts';
import type { EditorSurroundings } from './surroundings.ts';
import { sourceOf } from './sources.ts';

export function registerHovers(service: TagService, surroundings: EditorSurroundings): vscode.Disposable {
  return vscode.languages.registerHoverProvider(tagSpecSelector, {
    provideHover(document, position) {
      const source = sourceOf(document);
      // While the spec is broken: what is told of sizes is of the drawing that is still shown.
      const report = service.get(document.uri)?.drawn;
      const hover = hoverAt(source, document.offsetAt(position), report, surroundings.fonts);
      if (!hover) return undefined;
      const range = toRange(hover.range, source.position.bind(source));
      const markdown = new vscode.MarkdownString(hover.markdown);
      // Pages of explanation may be opened from it, and nothing else, whatever the text of the spec says.
      markdown.isTrusted = { enabledCommands: [explainCommand] };
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
