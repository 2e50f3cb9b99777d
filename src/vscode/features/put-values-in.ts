/** “Put Workshop Values into This Spec”, so that it makes the same tag without the files that it used. */

import * as vscode from 'vscode';
import { selfContained } from '../../language/self-contained.ts';
import type { TagService } from '../service/service.ts';
import { sourceOf } from '../service/sources.ts';
import { editsBetween } from '../common/text-edits.ts';

export async function putValuesIn(spec: vscode.Uri, service: TagService): Promise<void> {
  const document = await vscode.workspace.openTextDocument(spec);
  const source = sourceOf(document);
  const report = service.get(spec)?.report;
  if (!report || report.source.text !== source.text || !report.model) {
    void vscode.window.showErrorMessage('This spec has errors. Fix them first, so that nothing is lost.');
    return;
  }
  const result = selfContained(source, report.uses);
  if ('problem' in result) {
    void vscode.window.showErrorMessage(result.problem);
    return;
  }
  if (result.text === source.text) {
    void vscode.window.showInformationMessage('This spec uses no other files. It can be sent as it is.');
    return;
  }
  const edit = new vscode.WorkspaceEdit();
  for (const { range, text } of editsBetween(source.text, result.text))
    edit.replace(spec, new vscode.Range(document.positionAt(range.start), document.positionAt(range.end)), text);
  if (!(await vscode.workspace.applyEdit(edit))) return;
  const names = report.uses.used.map(({ name }) => `“${name.slice(name.lastIndexOf('/') + 1)}”`).join(', ');
  void vscode.window.showInformationMessage(
    `The values of ${names} are in this spec now. It makes the same tag when it is sent alone.`,
  );
}
