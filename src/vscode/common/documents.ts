/** Which files are tag specs. */

import * as vscode from 'vscode';

/** As a glob, for watching and searching; `*.tag.yaml` by name, in any folder. */
export const tagSpecGlob = '**/*.tag.{yaml,yml}';

/** Files that a spec may draw on: shared definitions, tables, drawings and fonts. */
export const companionGlob = '**/*.{yaml,yml,csv,svg,ttf,otf,ttc,otc,woff,woff2}';

/** What a workshop keeps for all its specs: written in the same language, and no tag. */
export const workshopGlob = '**/*.workshop.{yaml,yml}';

/** Orders that are cut together, and what is left of sheets: languages of their own, coloured alike. */
export const jobGlob = '**/*.job.{yaml,yml}';
export const offcutsGlob = '**/*.offcuts.{yaml,yml}';

/** Files in the language of specs. */
export const tagSpecSelector: readonly vscode.DocumentFilter[] = [{ pattern: tagSpecGlob }, { pattern: workshopGlob }];

/** By its name: a spec that is saved nowhere yet has one as well. */
export function isTagSpec(uri: vscode.Uri): boolean {
  // A git revision, a diff side and the like are pictures of a file, not files to check.
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

/** The document of a file, if it is open. */
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
