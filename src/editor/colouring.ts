/** Names in a tag spec, coloured as what they are names of. */

import * as vscode from 'vscode';
import { colouredNames } from '../language/highlights.ts';
import type { ColouredName } from '../language/highlights.ts';
import { SpecSource } from '../spec/source.ts';
import { tagSpecSelector } from './documents.ts';
import { toRange } from './problems.ts';

const types: Readonly<Record<ColouredName['kind'], string>> = {
  shape: 'variable',
  piece: 'class',
  named: 'type',
};

const legend = new vscode.SemanticTokensLegend(Object.values(types), ['declaration']);

export function registerColouring(): vscode.Disposable {
  return vscode.languages.registerDocumentSemanticTokensProvider(
    tagSpecSelector,
    {
      provideDocumentSemanticTokens(document) {
        const source = new SpecSource(document.getText());
        const tokens = new vscode.SemanticTokensBuilder(legend);
        for (const { range, kind, given } of colouredNames(source)) {
          const place = toRange(range, source.position.bind(source));
          if (place.isSingleLine) tokens.push(place, types[kind], given ? ['declaration'] : []);
        }
        return tokens.build();
      },
    },
    legend,
  );
}
