/** Recognises tag specs and the files related to them. */

import * as vscode from 'vscode';

/** Glob for watching and searching: `*.tag.yaml`, in any folder. */
export const tagSpecGlob = '**/*.tag.{yaml,yml}';

/** Files that a spec may depend on: shared definitions, tables, drawings and fonts. */
export const companionGlob = '**/*.{yaml,yml,csv,svg,ttf,otf,ttc,otc,woff,woff2,approved.json}';

/** Workshop files, shared by all specs: written in the same language, but not tags. */
export const workshopGlob = '**/*.workshop.{yaml,yml}';

/** Jobs (orders that are cut together) and offcuts: languages of their own with the same syntax highlighting. */
export const jobGlob = '**/*.job.{yaml,yml}';
export const offcutsGlob = '**/*.offcuts.{yaml,yml}';

/** Files in the language of specs. */
export const tagSpecSelector: readonly vscode.DocumentFilter[] = [{ pattern: tagSpecGlob }, { pattern: workshopGlob }];

/** Decided by name, so that an unsaved spec counts too. */
export function isTagSpec(uri: vscode.Uri): boolean {
  // A git revision or one side of a diff shows a file's contents but is not a file to check.
  return /\.tag\.ya?ml$/i.test(uri.path) && !['git', 'vscode-scm', 'output'].includes(uri.scheme);
}

export function isWorkshopFile(uri: vscode.Uri): boolean {
  return /\.workshop\.ya?ml$/i.test(uri.path) && !['git', 'vscode-scm', 'output'].includes(uri.scheme);
}

export function isJob(uri: vscode.Uri): boolean {
  return /\.job\.ya?ml$/i.test(uri.path) && !['git', 'vscode-scm', 'output'].includes(uri.scheme);
}

export function isOffcutsFile(uri: vscode.Uri): boolean {
  return /\.offcuts\.ya?ml$/i.test(uri.path) && !['git', 'vscode-scm', 'output'].includes(uri.scheme);
}

export function openDocument(uri: vscode.Uri): vscode.TextDocument | undefined {
  const key = uri.toString();
  return vscode.workspace.textDocuments.find((document) => !document.isClosed && document.uri.toString() === key);
}

export function fileExists(uri: vscode.Uri): Promise<boolean> {
  return Promise.resolve(
    vscode.workspace.fs.stat(uri).then(
      () => true,
      () => false,
    ),
  );
}
