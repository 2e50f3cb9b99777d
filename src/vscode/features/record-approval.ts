/** “Record Approval”: keeps what the customer approved beside the spec, so that later changes are reported. */

import * as vscode from 'vscode';
import { today } from '../../core/days.ts';
import { isError } from '../../core/issue.ts';
import { approvalPlace } from '../../edits/approved.ts';
import { reportsOf } from '../../engine/batch.ts';
import type { Engine, Report } from '../../engine/engine.ts';
import { labelOf } from '../../spec/batch/batch.ts';
import { approvalText, approvedTag } from '../../tag/approval/approval-text.ts';
import { readApproval } from '../../tag/approval/read-approval.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { baseName } from '../common/write-whole.ts';
import type { WriteWhole } from '../common/write-whole.ts';
import { showIssue } from '../export/ask-faulty.ts';
import { computeOptions, whileWanted } from '../service/compute-options.ts';
import { locateBeside } from '../service/font-files.ts';
import { sourceOf } from '../service/sources.ts';

/** `note`: used instead of asking. Resolves with the record if it was written. */
export async function recordApproval(
  spec: vscode.Uri,
  engine: Engine,
  writeWhole: WriteWhole,
  given?: string,
): Promise<vscode.Uri | undefined> {
  if (spec.scheme === 'untitled') {
    void vscode.window.showInformationMessage('Save the tag first: what was approved is kept in a file beside it.');
    return undefined;
  }
  const source = sourceOf(await vscode.workspace.openTextDocument(spec));
  const place = approvalPlace(source, baseName(spec));
  const reports = await allReports(spec, engine, source.text);
  if (!reports) return undefined;
  const faulty = reports.find(({ issues, tag }) => !tag || issues.some(isError));
  if (faulty || !place) {
    await sayFaulty(spec, faulty);
    return undefined;
  }
  const located = locateBeside(spec)(place.file);
  if (located === undefined) {
    void vscode.window.showErrorMessage(`“${place.file}” is not inside the spec's folder.`);
    return undefined;
  }
  const target = vscode.Uri.parse(located);
  if (!(await mayReplace(target))) return undefined;
  const note = given ?? (await askNote());
  if (note === undefined) return undefined;
  const tags = reports.map((report) => approvedTag(report.tag!, labelOf(report)));
  const on = today();
  await writeWhole(target, new TextEncoder().encode(approvalText({ on, note: note.trim(), tags })));
  if (place.edit && !(await applyEdits(spec, source, [place.edit]))) {
    void vscode.window.showErrorMessage(
      `The spec has changed meanwhile; add “approved: ${place.file}” to it yourself.`,
    );
  } else {
    const what = tags.length === 1 ? 'this tag' : `these ${tags.length} tags`;
    void vscode.window.showInformationMessage(
      `Recorded in ${baseName(target)}. Any change to ${what} is reported from now on.`,
    );
  }
  return target;
}

function allReports(spec: vscode.Uri, engine: Engine, text: string): Promise<Report[] | undefined> {
  const options = {
    location: vscode.ProgressLocation.Notification,
    cancellable: true,
    title: 'Recording the approval',
  };
  return Promise.resolve(
    vscode.window.withProgress(options, (_, token) =>
      whileWanted(token, async (signal) => {
        const how = computeOptions(spec, signal);
        return reportsOf(engine, await engine.compute(text, how), how);
      }),
    ),
  );
}

async function sayFaulty(spec: vscode.Uri, report: Report | undefined): Promise<void> {
  const error = report?.issues.find(isError);
  const show = 'Show the Problem';
  const answer = await vscode.window.showErrorMessage(
    `Not recorded: ${error?.message ?? 'the spec has no tag that could be approved.'}`,
    ...(error ? [show] : []),
  );
  if (answer === show) await showIssue(spec, report!, error!);
}

/** Asks before an earlier approval, or anything else under that name, is lost. */
async function mayReplace(target: vscode.Uri): Promise<boolean> {
  let there: Uint8Array;
  try {
    there = await vscode.workspace.fs.readFile(target);
  } catch {
    return true;
  }
  const record = readApproval(new TextDecoder().decode(there));
  const what = record
    ? `what was approved on ${record.approved_on}`
    : `${baseName(target)}, which is no record of an approval`;
  const replace = 'Replace';
  const answer = await vscode.window.showWarningMessage(
    `Replace ${what}?`,
    { modal: true, detail: record?.note ?? '' },
    replace,
  );
  return answer === replace;
}

function askNote(): Thenable<string | undefined> {
  return vscode.window.showInputBox({
    title: 'Record Approval',
    prompt: 'Who approved it, and how? For your own records; may stay empty.',
    placeHolder: 'order 101, by e-mail',
    ignoreFocusOut: true,
  });
}
