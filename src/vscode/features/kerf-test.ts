/** “Set Kerf from a Test”: asks for the measured widths and writes the kerf into the spec's stock. */

import { unitsOf } from '../../core/values.ts';
import * as vscode from 'vscode';
import { kerfEdits, kerfFrom } from '../../edits/kerf.ts';
import { finest, shortLength } from '../../core/units.ts';
import type { Units } from '../../core/units.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { sourceOf } from '../service/sources.ts';
import { measuredPlace } from '../../edits/chosen-place.ts';
import { withValues } from '../../test-pieces/measurements.ts';
import { editsBetween } from '../common/text-edits.ts';
import type { TagService } from '../service/service.ts';

/** `measured`: used instead of asking. */
export async function setKerf(
  uri: vscode.Uri,
  service: TagService,
  measured?: { readonly slots: string; readonly pieces: string },
): Promise<void> {
  const source = sourceOf(await vscode.workspace.openTextDocument(uri));
  const units = unitsOf(source.value);
  const slots = measured?.slots ?? (await askGap('How wide are the slots?', 1, units));
  const pieces =
    slots && (measured?.pieces ?? (await askGap('How wide are the pieces that fell out of them?', 2, units, slots)));
  if (!slots || !pieces) return;
  const result = kerfFrom(slots, pieces, units);
  if ('problem' in result) {
    void vscode.window.showErrorMessage(result.problem);
    return;
  }
  if (!(await writeKerf(uri, service, result.mm, units))) {
    void vscode.window.showErrorMessage(
      `The kerf is ${shortLength(result.mm, units, finest)}, but the stock has no place for it.`,
    );
    return;
  }
  const doubt = result.doubtful
    ? ` The measurements differ by ${shortLength(result.spreadMm, units)}: measure again before you trust it.`
    : '';
  void vscode.window.showInformationMessage(`The kerf is ${shortLength(result.mm, units, finest)}.${doubt}`);
}

/** Writes into the stock of the spec, wherever that is defined. */
async function writeKerf(spec: vscode.Uri, service: TagService, mm: number, units: Units): Promise<boolean> {
  const source = sourceOf(await vscode.workspace.openTextDocument(spec));
  const place = measuredPlace('stock', source, service.get(spec)?.report.uses.used ?? []);
  if (place?.machine !== undefined) {
    const kerf = [[['kerf'], shortLength(mm, unitsOf(place.source), finest)]] as const;
    const file = place.file === undefined ? spec : vscode.Uri.parse(place.file);
    const now = sourceOf(await vscode.workspace.openTextDocument(file));
    const after = withValues(now.text, place.path, kerf);
    return after !== undefined && applyEdits(file, now, editsBetween(now.text, after));
  }
  const own = place?.file === undefined ? kerfEdits(source, mm, units) : undefined;
  if (own) return applyEdits(spec, source, own);
  if (place?.file === undefined || place.name === undefined) return false;
  const file = vscode.Uri.parse(place.file);
  const shared = sourceOf(await vscode.workspace.openTextDocument(file));
  const edits = kerfEdits(shared, mm, unitsOf(shared.value), place.name);
  return edits !== undefined && applyEdits(file, shared, edits);
}

function askGap(prompt: string, step: number, units: Units, slots?: string): Thenable<string | undefined> {
  const example = step === 1 ? '10.16, 20.15, 30.17' : '9.84, 19.85, 29.83';
  return vscode.window.showInputBox({
    title: `Set Kerf from a Test (${step}/2)`,
    prompt: `${prompt} In ${units}, from left to right.`,
    placeHolder: units === 'mm' ? example : '0.400, 0.794, 1.188',
    ignoreFocusOut: true,
    validateInput: (typed) => {
      if (typed === '') return undefined;
      // With the slots alone, they are checked against pieces 0.01 mm narrower, which any real pieces are.
      const result =
        slots === undefined
          ? kerfFrom(typed, typed.replace(/[\d.]+/g, narrower), units)
          : kerfFrom(slots, typed, units);
      return 'problem' in result ? result.problem : undefined;
    },
  });
}

function narrower(figure: string): string {
  return String(Number(figure) * 0.999);
}
