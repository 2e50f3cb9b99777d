/** Which spec a command is for. */

import * as vscode from 'vscode';
import { isTagSpec } from './documents.ts';
import { openSpecs } from './tabs.ts';

export class CommandTarget {
  /** `previewed`: the spec of the preview that is in front, if there is one. */
  constructor(private readonly previewed: () => vscode.Uri | undefined) {}

  /** The spec a command was called on, as a link may write it, else the one in the active editor or the preview in front. */
  known(argument: unknown): vscode.Uri | undefined {
    const uri =
      argument instanceof vscode.Uri
        ? argument
        : typeof argument === 'string'
          ? vscode.Uri.parse(argument)
          : vscode.window.activeTextEditor?.document.uri;
    return uri && isTagSpec(uri) ? uri : this.previewed();
  }

  /** That spec, else the only one that is open or the one chosen of several. Where none is open, ways to begin are offered. */
  async of(argument: unknown): Promise<vscode.Uri | undefined> {
    const known = this.known(argument);
    if (known) return known;
    const open = openSpecs();
    if (open.length === 0) await offerBeginning();
    return open.length > 1 ? choose(open) : open[0];
  }

  /** A command that is run on such a spec, or not at all. */
  command(name: string, run: (spec: vscode.Uri, ...more: never[]) => unknown): vscode.Disposable {
    return vscode.commands.registerCommand(name, async (argument?: unknown, ...more: never[]) => {
      const spec = await this.of(argument);
      return spec && run(spec, ...more);
    });
  }
}

async function choose(specs: readonly vscode.Uri[]): Promise<vscode.Uri | undefined> {
  const items = specs.map((uri) => ({ label: vscode.workspace.asRelativePath(uri), uri }));
  return (await vscode.window.showQuickPick(items, { placeHolder: 'Which tag?' }))?.uri;
}

async function offerBeginning(): Promise<void> {
  const [create, browse] = ['New Tag…', 'Browse Samples…'];
  const answer = await vscode.window.showInformationMessage(
    'No tag is open. Make one, or open a sample.',
    create,
    browse,
  );
  if (answer === create) await vscode.commands.executeCommand('tagwright.newTag');
  if (answer === browse) await vscode.commands.executeCommand('tagwright.browseSamples');
}
