/**
 * File access for the editor: fonts, drawings and shared definitions through its file system, installed fonts through
 * the host.
 */

import * as vscode from 'vscode';
import { openDocument } from '../common/documents.ts';
import { maxFontBytes } from '../../text/font-files.ts';
import type { FontFiles, InstalledFonts } from '../../text/font-files.ts';

/** A scheme of two letters or more; a single letter is a Windows drive. */
const uriPattern = /^[a-z][a-z0-9+.-]+:/i;

export function editorFontFiles(extensionUri: vscode.Uri, installed: InstalledFonts): FontFiles {
  const dist = vscode.Uri.joinPath(extensionUri, 'dist');
  return {
    ...installed,
    bundled: (name) => readUri(vscode.Uri.joinPath(dist, 'fonts', name)),
    shaperWasm: () => readUri(vscode.Uri.joinPath(dist, 'harfbuzz.wasm')),
    beside: (path) =>
      uriPattern.test(path) ? namesBeside(vscode.Uri.parse(path)) : (installed.beside?.(path) ?? Promise.resolve([])),
    read: (path, stretch) => (uriPattern.test(path) ? readUri(vscode.Uri.parse(path)) : installed.read(path, stretch)),
  };
}

async function namesBeside(uri: vscode.Uri): Promise<string[]> {
  const entries = await vscode.workspace.fs.readDirectory(vscode.Uri.joinPath(uri, '..'));
  return entries.map(([name]) => name);
}

/** An open file is read from its editor. */
async function readUri(uri: vscode.Uri): Promise<Uint8Array> {
  const document = openDocument(uri);
  if (document) return new TextEncoder().encode(document.getText());
  const { size } = await vscode.workspace.fs.stat(uri);
  if (size > maxFontBytes) throw new RangeError('The file is too large to be a font or a drawing.');
  return vscode.workspace.fs.readFile(uri);
}

/**
 * URI of a file named in a spec, as a string. In an untrusted workspace, nothing outside the spec's own workspace
 * folder is read.
 */
export function locateBeside(document: vscode.Uri): (relative: string) => string | undefined {
  const spec = onDisk(document);
  const folder = vscode.Uri.joinPath(spec, '..');
  return (relative) => {
    const uri = isAbsolute(relative)
      ? spec.with({ path: relative.replaceAll('\\', '/') })
      : vscode.Uri.joinPath(folder, relative);
    if (vscode.workspace.isTrusted) return uri.toString();
    const root = vscode.workspace.getWorkspaceFolder(spec)?.uri ?? folder;
    return uri.path.startsWith(`${root.path.replace(/\/$/, '')}/`) ? uri.toString() : undefined;
  };
}

/** An unsaved spec counts as being where it would be saved: in the first folder, if it was created there. */
function onDisk(spec: vscode.Uri): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const isIn = folder && spec.scheme === 'untitled' && spec.path.startsWith(`${folder.path.replace(/\/$/, '')}/`);
  return isIn ? folder.with({ path: spec.path }) : spec;
}

function isAbsolute(path: string): boolean {
  return path.startsWith('/') || /^[a-z]:[\\/]/i.test(path);
}
