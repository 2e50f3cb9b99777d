/** Names the files that were written, and offers what can be done with them. */

import * as vscode from 'vscode';
import { mostNames } from '../../core/in-words.ts';
import { listed } from '../../core/names.ts';
import { counted } from '../../core/units.ts';
import { baseName } from '../common/write-whole.ts';

/** At least one file. */
export async function offerMore(written: readonly vscode.Uri[]): Promise<void> {
  const [first] = written;
  const svgs = written.filter(({ path }) => path.endsWith('.svg'));
  const svg = svgs.length === 1 ? svgs[0] : undefined;
  const [reveal, open, copy] = ['Reveal', written.length === 1 ? 'Open' : 'Open…', 'Copy SVG'];
  const names = listed(written.map(baseName), mostNames);
  const what = written.length === 1 ? names : `${counted(written.length, 'file')}: ${names}`;
  // Files in the workspace are revealed in the explorer; others by the system, which an editor in a browser cannot ask.
  const inside = vscode.workspace.getWorkspaceFolder(first!) !== undefined;
  const canReveal = inside || vscode.env.uiKind === vscode.UIKind.Desktop;
  const offers = [...(canReveal ? [reveal] : []), open, ...(svg ? [copy] : [])];
  const answer = await vscode.window.showInformationMessage(`Exported ${what}.`, ...offers);
  if (answer === open) await openOne(written);
  if (answer === copy) await copyText(svg!);
  if (answer === reveal) await vscode.commands.executeCommand(inside ? 'revealInExplorer' : 'revealFileInOS', first);
}

async function openOne(written: readonly vscode.Uri[]): Promise<void> {
  const items = written.map((file) => ({ label: baseName(file), file }));
  const one = items.length === 1 ? items[0] : await vscode.window.showQuickPick(items, { title: 'Open' });
  if (one) await vscode.commands.executeCommand('vscode.open', one.file);
}

async function copyText(file: vscode.Uri): Promise<void> {
  await vscode.env.clipboard.writeText(new TextDecoder().decode(await vscode.workspace.fs.readFile(file)));
  void vscode.window.setStatusBarMessage('SVG copied', 3000);
}
