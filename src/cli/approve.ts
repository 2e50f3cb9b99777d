/** `tagwright approve`: records what a customer has approved, so that later changes are reported. */

import { basename } from 'node:path';
import { printReport } from './check.ts';
import { ofBatch, rowCount } from '../engine/batch.ts';
import type { RowIssues } from '../engine/batch.ts';
import type { Engine, Report } from '../engine/engine.ts';
import { isDay, today } from '../core/days.ts';
import { isError, withEdits } from '../core/issue.ts';
import { approvalPlace } from '../edits/approved.ts';
import { writeAllWhole } from '../export/node-write-whole.ts';
import { approvalText } from '../tag/approval/approval-text.ts';
import type { ApprovedTag } from '../tag/approval/read-approval.ts';
import { eachFile } from './each-file.ts';
import { newEngine } from './files.ts';
import type { SpecFile } from './files.ts';
import { issuesOfRow } from './row-work.ts';
import { eachTag } from './rows.ts';
import { exitCodes, UsageError } from './usage.ts';
import { differing, sayDiffers } from './writer.ts';

interface ApproveOptions {
  /** The day, such as 2026-11-30; today, unless given. */
  readonly on: string | undefined;
  readonly note: string;
  readonly overwrite: boolean;
}

/** Writes the record and the line that names it together, or neither. A tag with errors cannot be approved. */
export async function approveAll(
  specs: readonly SpecFile[],
  { on = today(), note, overwrite }: ApproveOptions,
): Promise<number> {
  if (!isDay(on)) throw new UsageError(`There is no day ${on}; write --on as ${today()}.`);
  const engine = newEngine({ isOnce: true });
  return eachFile(specs, async (spec) => {
    const { file, text, options } = spec;
    const { report, tags } = await approvedOf(engine, spec);
    if (report.issues.some(isError)) {
      printReport(file, { ...report, issues: report.issues.filter(isError) });
      console.error(`${file}: not recorded; what has errors cannot be approved.`);
      return exitCodes.errors;
    }
    const place = approvalPlace(report.source, basename(file));
    const target = place && options.locate(place.file);
    if (!place || target === undefined) {
      console.error(`${file}: not recorded; the spec has no place for “approved”.`);
      return exitCodes.errors;
    }
    const record = new Map([[target, approvalText({ on, note, tags })]]);
    if (!overwrite && (await differing(record)).length > 0) {
      sayDiffers(target);
      return exitCodes.errors;
    }
    await writeAllWhole(place.edit ? new Map([...record, [file, withEdits(text, [place.edit])]]) : record);
    console.log(target);
    return exitCodes.clean;
  });
}

async function approvedOf(
  engine: Engine,
  spec: SpecFile,
): Promise<{ readonly report: Report; readonly tags: readonly ApprovedTag[] }> {
  const [all, tags]: [RowIssues[], ApprovedTag[]] = [[], []];
  let report: Report | undefined;
  for await (const { first, made } of eachTag(engine, spec, { what: 'approval' })) {
    report = first;
    all.push(issuesOfRow(first, made));
    if (made.approved) tags.push(made.approved);
  }
  const first = report!;
  return { report: rowCount(first) === 1 ? first : ofBatch(first, all, spec.options), tags };
}
