/** Navigation in a tag spec: outline, definitions, references, rename and file links. */

import * as vscode from 'vscode';
import { nameAt, placesOf, renaming, reasonAgainst } from '../../language/navigation/find-names.ts';
import type { Name } from '../../language/navigation/find-names.ts';
import { linksIn } from '../../language/navigation/links.ts';
import type { NamePlace } from '../../language/navigation/names.ts';
import { symbolsOf } from '../../language/navigation/symbols.ts';
import type { SpecSymbol } from '../../language/navigation/symbols.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { tagSpecSelector } from '../common/documents.ts';
import { locateBeside } from '../service/font-files.ts';
import { toRange } from './problems.ts';
import type { TagService } from '../service/service.ts';
import { filesSharing, definingFileOf } from '../service/sharing-files.ts';
import type { SharingFile } from '../service/sharing-files.ts';
import { sourceOf } from '../service/sources.ts';

const { languages, SymbolKind } = vscode;

export function registerNavigation(service: TagService): vscode.Disposable {
  return vscode.Disposable.from(
    languages.registerDocumentSymbolProvider(
      tagSpecSelector,
      { provideDocumentSymbols: (document) => outline(document) },
      { label: 'Tagwright' },
    ),
    languages.registerDefinitionProvider(tagSpecSelector, {
      provideDefinition: (document, position) => definition(document, position, service),
    }),
    languages.registerReferenceProvider(tagSpecSelector, {
      provideReferences: (document, position, { includeDeclaration }) =>
        references(document, position, includeDeclaration, service),
    }),
    languages.registerDocumentHighlightProvider(tagSpecSelector, { provideDocumentHighlights: highlights }),
    languages.registerRenameProvider(tagSpecSelector, {
      prepareRename,
      provideRenameEdits: (document, position, to) => rename(document, position, to, service),
    }),
    languages.registerDocumentLinkProvider(tagSpecSelector, { provideDocumentLinks: links }),
  );
}

const symbolKinds: Readonly<Record<SpecSymbol['kind'], vscode.SymbolKind>> = {
  section: SymbolKind.Namespace,
  shape: SymbolKind.Variable,
  piece: SymbolKind.Module,
  named: SymbolKind.Object,
  key: SymbolKind.Property,
};

function outline(document: vscode.TextDocument): vscode.DocumentSymbol[] {
  const source = sourceOf(document);
  const toSymbol = ({ name, detail, kind, range, selection, children }: SpecSymbol): vscode.DocumentSymbol => {
    const symbol = new vscode.DocumentSymbol(
      name === '' ? '…' : name,
      detail,
      symbolKinds[kind],
      rangeIn(source, range),
      rangeIn(source, selection),
    );
    symbol.children = children.map(toSymbol);
    return symbol;
  };
  return symbolsOf(source.tree).map(toSymbol);
}

function definition(
  document: vscode.TextDocument,
  position: vscode.Position,
  service: TagService,
): vscode.LocationLink[] {
  const name = nameUnder(document, position);
  const definingFile = name && definingFileOf(document, name, service);
  if (!definingFile) return name ? headerCell(document, name, service) : [];
  const all = placesOf(definingFile.source, name).filter(({ isDefinition }) => isDefinition);
  // In the list form, every row repeats the column names; the first counts as the definition.
  const places = name.kind === 'column' ? all.slice(0, 1) : all;
  return places.map(({ range, body }) => ({
    originSelectionRange: rangeIn(sourceOf(document), name.range),
    targetUri: definingFile.uri,
    targetRange: rangeIn(definingFile.source, { start: range.start, end: body?.end ?? range.end }),
    targetSelectionRange: rangeIn(definingFile.source, range),
  }));
}

/** The header cell that defines a column in the table of a batch. */
function headerCell(document: vscode.TextDocument, name: Name, service: TagService): vscode.LocationLink[] {
  const table = service.get(document.uri)?.report.uses.table;
  const column = name.kind === 'column' ? (table?.header.indexOf(name.name) ?? -1) : -1;
  if (!table || column < 0) return [];
  const places = table.places();
  const range = toRange(places.cell(1, column), places.position.bind(places));
  return [{ targetUri: vscode.Uri.parse(table.file), targetRange: range, targetSelectionRange: range }];
}

function references(
  document: vscode.TextDocument,
  position: vscode.Position,
  withDefinition: boolean,
  service: TagService,
): vscode.Location[] {
  const name = nameUnder(document, position);
  if (!name) return [];
  return filesSharing(document, name, service).flatMap(({ uri, source }) =>
    placesOf(source, name)
      .filter(({ isDefinition }) => withDefinition || !isDefinition)
      .map(({ range }) => new vscode.Location(uri, rangeIn(source, range))),
  );
}

function highlights(document: vscode.TextDocument, position: vscode.Position): vscode.DocumentHighlight[] {
  const name = nameUnder(document, position);
  if (!name) return [];
  const source = sourceOf(document);
  const kindOf = ({ isDefinition }: NamePlace) => vscode.DocumentHighlightKind[isDefinition ? 'Write' : 'Read'];
  return placesOf(source, name).map(
    (place) => new vscode.DocumentHighlight(rangeIn(source, place.range), kindOf(place)),
  );
}

function prepareRename(
  document: vscode.TextDocument,
  position: vscode.Position,
): { range: vscode.Range; placeholder: string } {
  const name = nameUnder(document, position);
  if (!name) throw new Error('There is no name to rename here.');
  return { range: rangeIn(sourceOf(document), name.range), placeholder: name.name };
}

function rename(
  document: vscode.TextDocument,
  position: vscode.Position,
  to: string,
  service: TagService,
): vscode.WorkspaceEdit | undefined {
  const name = nameUnder(document, position);
  if (!name) return undefined;
  const files = filesSharing(document, name, service);
  const fault = reasonAgainst(
    to,
    name,
    files.map(({ source }) => source),
  );
  if (fault !== undefined) throw new Error(fault);
  if (headerCell(document, { ...name, name: to }, service).length > 0 && to !== name.name)
    throw new Error(`There is a column “${to}” already.`);
  const edit = new vscode.WorkspaceEdit();
  for (const file of files) addRenaming(edit, file, name, to);
  for (const { targetUri, targetRange } of headerCell(document, name, service))
    edit.replace(targetUri, targetRange, to);
  return edit;
}

function addRenaming(edit: vscode.WorkspaceEdit, { uri, source }: SharingFile, name: Name, to: string): void {
  for (const { range, text } of renaming(source, name, to)) edit.replace(uri, rangeIn(source, range), text);
}

function links(document: vscode.TextDocument): vscode.DocumentLink[] {
  const source = sourceOf(document);
  const locate = locateBeside(document.uri);
  return linksIn(source).flatMap(({ range, file }) => {
    const target = locate(file);
    return target === undefined ? [] : [new vscode.DocumentLink(rangeIn(source, range), vscode.Uri.parse(target))];
  });
}

function nameUnder(document: vscode.TextDocument, position: vscode.Position): ReturnType<typeof nameAt> {
  return nameAt(sourceOf(document), document.offsetAt(position));
}

function rangeIn(source: SpecSource, range: { start: number; end: number }): vscode.Range {
  return toRange(range, source.position.bind(source));
}
