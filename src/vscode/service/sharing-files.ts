/** Finds the files that share a name: the one that defines it and all that may use it. */

import * as vscode from 'vscode';
import { definitionIn, definingFile, isOwn, placesOf } from '../../language/navigation/find-names.ts';
import type { Name } from '../../language/navigation/find-names.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { UsedFile } from '../../spec/files/used-files.ts';
import { openDocument } from '../common/documents.ts';
import { locateBeside } from './font-files.ts';
import type { Checked } from './checked.ts';
import type { TagService } from './service.ts';
import { sourceOf } from './sources.ts';

export interface SharingFile {
  readonly uri: vscode.Uri;
  readonly source: SpecSource;
}

/** The file that defines a name visible from a spec, if any. */
export function definingFileOf(
  document: vscode.TextDocument,
  name: Name,
  service: TagService,
): SharingFile | undefined {
  const source = sourceOf(document);
  if (definitionIn(source, name)) return { uri: document.uri, source };
  const result = service.get(document.uri);
  const used = result && definingFile(result.report.uses.used, name);
  return used && usedFile(result.uri, used);
}

/** That file, and every known spec and used file in which the name means the same. */
export function filesSharing(document: vscode.TextDocument, name: Name, service: TagService): SharingFile[] {
  const files = new Map<string, SharingFile>();
  const add = (file: SharingFile | undefined) => {
    if (file) files.set(file.uri.toString(), file);
  };
  const definingFile = definingFileOf(document, name, service);
  add({ uri: document.uri, source: sourceOf(document) });
  add(definingFile);
  if (!definingFile || isOwn(name)) return [...files.values()];
  const target = definingFile.uri.toString();
  for (const result of service.all()) {
    const used = everyFile(result.report.uses.used).flatMap((file) => usedFile(result.uri, file) ?? []);
    if (!used.some(({ uri }) => uri.toString() === target)) continue;
    // A file that defines the name itself means its own.
    for (const file of [current(result), ...used])
      if (file.uri.toString() === target || !definitionIn(file.source, name)) add(file);
  }
  return [...files.values()].filter(({ source }) => placesOf(source, name).length > 0);
}

function everyFile(used: readonly UsedFile[]): UsedFile[] {
  return used.flatMap((file) => [file, ...everyFile(file.uses)]);
}

function current({ uri, report }: Checked): SharingFile {
  const open = openDocument(uri);
  return { uri, source: open ? sourceOf(open) : report.source };
}

function usedFile(spec: vscode.Uri, file: UsedFile): SharingFile | undefined {
  const located = locateBeside(spec)(file.name);
  if (located === undefined) return undefined;
  const uri = vscode.Uri.parse(located);
  const open = openDocument(uri);
  return { uri, source: open ? sourceOf(open) : file.source };
}
