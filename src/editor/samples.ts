/** The samples that come with Tagwright: a list in the side bar, and a copy of each to play with. */

import * as vscode from 'vscode';
import { parseSpec } from '../spec/parse.ts';
import { fileExists } from './documents.ts';

export interface Sample {
  readonly uri: vscode.Uri;
  readonly fileName: string;
  readonly title: string;
  /** Its first comment. */
  readonly purpose: string;
  readonly text: string;
}

export class SampleLibrary implements vscode.TreeDataProvider<Sample> {
  readonly #folder: vscode.Uri;
  #samples: Promise<Sample[]> | undefined;

  constructor(extensionUri: vscode.Uri) {
    this.#folder = vscode.Uri.joinPath(extensionUri, 'samples');
  }

  /** Read once: they do not change while the extension runs. */
  all(): Promise<Sample[]> {
    this.#samples ??= this.#read();
    return this.#samples;
  }

  getChildren(): Promise<Sample[]> {
    return this.all();
  }

  getTreeItem(sample: Sample): vscode.TreeItem {
    const item = new vscode.TreeItem(sample.title);
    item.tooltip = sample.purpose;
    item.iconPath = new vscode.ThemeIcon('tag');
    item.command = { command: 'tagwright.openSample', title: 'Open a Copy', arguments: [sample.fileName] };
    return item;
  }

  async #read(): Promise<Sample[]> {
    const entries = await vscode.workspace.fs.readDirectory(this.#folder);
    const names = entries.map(([name]) => name).filter((name) => name.endsWith('.tag.yaml'));
    return Promise.all(
      names.sort().map(async (fileName) => {
        const uri = vscode.Uri.joinPath(this.#folder, fileName);
        const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
        const title = parseSpec(text).model?.title ?? fileName;
        return { uri, fileName, title, purpose: firstComment(text), text };
      }),
    );
  }
}

/** Lets the user choose a sample, unless one is named, and opens a copy that is saved nowhere yet. */
export async function openSample(library: SampleLibrary, fileName?: string): Promise<void> {
  const samples = await library.all();
  const sample = samples.find((each) => each.fileName === fileName) ?? (await choose(samples));
  if (!sample) return;
  const uri = await freeName(sample.fileName.replace(/^\d+-/, ''));
  const document = await vscode.workspace.openTextDocument(uri);
  const edit = new vscode.WorkspaceEdit();
  edit.insert(uri, new vscode.Position(0, 0), sample.text);
  await vscode.workspace.applyEdit(edit);
  await vscode.window.showTextDocument(document);
  await vscode.commands.executeCommand('tagwright.openPreview', uri);
}

async function choose(samples: readonly Sample[]): Promise<Sample | undefined> {
  const items = samples.map((sample) => ({ label: sample.title, detail: sample.purpose, sample }));
  const chosen = await vscode.window.showQuickPick(items, {
    title: 'Tag samples',
    placeHolder: 'Open a copy to play with',
    matchOnDetail: true,
  });
  return chosen?.sample;
}

/** An unsaved document in the first folder, or in none, under a name that nothing has yet. */
async function freeName(fileName: string): Promise<vscode.Uri> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  for (let count = 1; ; count++) {
    const name = count === 1 ? fileName : fileName.replace('.tag.', `-${count}.tag.`);
    const file = folder ? vscode.Uri.joinPath(folder, name) : undefined;
    const uri = vscode.Uri.from({ scheme: 'untitled', path: file?.path ?? name });
    const open = vscode.workspace.textDocuments.some((document) => document.uri.path === uri.path);
    if (!open && !(file && (await fileExists(file)))) return uri;
  }
}

function firstComment(text: string): string {
  const lines = text.split(/\r?\n/);
  const end = lines.findIndex((line) => !line.startsWith('#'));
  return lines
    .slice(0, end)
    .map((line) => line.replace(/^#\s?/, ''))
    .join(' ');
}
