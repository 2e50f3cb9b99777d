/** Finds the spec that a command applies to. */

import * as vscode from 'vscode';
import { isTagSpec } from './documents.ts';
import { openSpecs } from './tabs.ts';

export class CommandTarget {
  /** `previewed`: the spec of the preview in front, if any. */
  constructor(private readonly previewed: () => vscode.Uri | undefined) {}

  /**
   * The spec in the command's argument (a URI, or a string from a link), else that of the active editor or of the
   * preview in front.
   */
  known(argument: unknown): vscode.Uri | undefined {
    const uri =
      argument instanceof vscode.Uri
        ? argument
        : typeof argument === 'string'
          ? vscode.Uri.parse(argument)
          : vscode.window.activeTextEditor?.document.uri;
    return uri && isTagSpec(uri) ? uri : this.previewed();
  }

  /**
   * The known spec, else the only one that is open or the one chosen among several. If none is open, offers ways to
   * begin.
   */
  async of(argument: unknown): Promise<vscode.Uri | undefined> {
    const known = this.known(argument);
    if (known) return known;
    const open = openSpecs();
    if (open.length === 0) await offerBeginning();
    return open.length > 1 ? choose(open) : open[0];
  }

  /** Registers a command that runs only with such a spec. */
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
