/** What previews remember beyond the life of their pages: how each file was looked at, and the screen's true size. */

import type * as vscode from 'vscode';
import { parseKept, parseScreen, type Kept } from './kept.ts';

const keptKey = 'preview.kept';
const screenKey = 'preview.devicePixelsPerMm';

/** Files whose previews were used longest ago are forgotten. */
const mostFiles = 200;

export class PreviewMemory {
  /** `files`: of the workspace; `screen`: of the machine. */
  constructor(
    private readonly files: vscode.Memento,
    private readonly machine: vscode.Memento,
  ) {}

  kept(uri: vscode.Uri): Kept | undefined {
    return parseKept(this.all()[uri.toString()]);
  }

  keep(uri: vscode.Uri, kept: Kept): void {
    const key = uri.toString();
    // The newest comes last.
    const others = Object.entries(this.all()).filter(([other]) => other !== key);
    void this.files.update(keptKey, Object.fromEntries([...others.slice(1 - mostFiles), [key, kept]]));
  }

  get screen(): number | undefined {
    return parseScreen(this.machine.get(screenKey));
  }

  set screen(devicePixelsPerMm: number | undefined) {
    void this.machine.update(screenKey, devicePixelsPerMm);
  }

  private all(): Readonly<Record<string, unknown>> {
    return this.files.get<Record<string, unknown>>(keptKey) ?? {};
  }
}
