/**
 * What previews remember beyond the life of their pages: view settings of each file; for the machine, the screen's
 * resolution, the last kind of export and the cautions that have been read.
 */

import type * as vscode from 'vscode';
import type { RememberedView } from '../../protocol/preview.ts';
import { isCaution, parseViewSettings, parseScreen } from './view-settings.ts';
import { exportKinds, type ExportKind } from '../../protocol/preview.ts';

const keptKey = 'preview.kept';
const screenKey = 'preview.devicePixelsPerMm';
const exportsKey = 'preview.exports';
const cautionsKey = 'preview.cautions';

/** Most files remembered; those used longest ago are forgotten. */
const mostFiles = 200;
/** Most cautions remembered; there are a handful, and their wording changes now and then. */
const mostCautions = 20;

export class PreviewMemory {
  /** `files`: storage of the workspace. `screen`: storage of the machine. */
  constructor(
    private readonly files: vscode.Memento,
    private readonly machine: vscode.Memento,
  ) {}

  kept(uri: vscode.Uri): RememberedView | undefined {
    return parseViewSettings(this.all()[uri.toString()]);
  }

  keep(uri: vscode.Uri, kept: RememberedView): void {
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

  /** The last kind of export; at first the cut file. */
  get exports(): ExportKind {
    const kept = this.machine.get(exportsKey);
    return exportKinds.find((kind) => kind === kept) ?? 'svg';
  }

  set exports(kind: ExportKind) {
    void this.machine.update(exportsKey, kind);
  }

  get cautions(): readonly string[] {
    const kept = this.machine.get(cautionsKey);
    return Array.isArray(kept) ? kept.filter(isCaution) : [];
  }

  readCaution(caution: string): void {
    const others = this.cautions.filter((other) => other !== caution);
    void this.machine.update(cautionsKey, [...others.slice(1 - mostCautions), caution]);
  }

  private all(): Readonly<Record<string, unknown>> {
    return this.files.get<Record<string, unknown>>(keptKey) ?? {};
  }
}
