/** Colours in a tag spec: semantic highlighting of names, and swatches beside colour values. */

import * as vscode from 'vscode';
import { coloursIn, colourText } from '../../language/colours.ts';
import { nameTokens } from '../../language/navigation/name-tokens.ts';
import type { NameToken } from '../../language/navigation/name-tokens.ts';
import { tagSpecSelector } from '../common/documents.ts';
import { toRange } from './problems.ts';
import { sourceOf } from '../service/sources.ts';

const types: Readonly<Record<NameToken['kind'], string>> = {
  shape: 'variable',
  piece: 'class',
  named: 'type',
};

const legend = new vscode.SemanticTokensLegend(Object.values(types), ['declaration']);

export function registerColours(): vscode.Disposable {
  const { languages } = vscode;
  return vscode.Disposable.from(
    languages.registerDocumentSemanticTokensProvider(tagSpecSelector, { provideDocumentSemanticTokens: names }, legend),
    languages.registerColorProvider(tagSpecSelector, {
      provideDocumentColors: colours,
      provideColorPresentations: (colour) => [new vscode.ColorPresentation(colourText(colour))],
    }),
  );
}

function names(document: vscode.TextDocument): vscode.SemanticTokens {
  const source = sourceOf(document);
  const tokens = new vscode.SemanticTokensBuilder(legend);
  for (const { range, kind, given } of nameTokens(source)) {
    const place = toRange(range, source.position.bind(source));
    if (place.isSingleLine) tokens.push(place, types[kind], given ? ['declaration'] : []);
  }
  return tokens.build();
}

function colours(document: vscode.TextDocument): vscode.ColorInformation[] {
  const source = sourceOf(document);
  return coloursIn(source).map(({ range, colour: { red, green, blue } }) => {
    const place = toRange(range, source.position.bind(source));
    return new vscode.ColorInformation(place, new vscode.Color(red, green, blue, 1));
  });
}
