/** “Export Job…”: asks where to save, makes every file of a job, and writes all of them or none. */

import { listed } from '../../core/names.ts';
import * as vscode from 'vscode';
import type { Nester } from '../../nesting/best-of.ts';
import { mostInQuestion } from '../../core/in-words.ts';
import type { Tools } from '../../export/job/job.ts';
import { checkJob, layOutJob } from '../../jobs/job.ts';
import type { CheckedJob, LaidOutJob } from '../../jobs/job.ts';
import { notCutInWords } from '../../jobs/papers/not-cut.ts';
import { eachJobFile } from '../../jobs/papers/job-files.ts';
import { layingOut, makingTag } from '../../jobs/progress-words.ts';
import { offcutChanges } from '../../jobs/offcuts/write-offcuts.ts';
import { inBackground } from '../common/background.ts';
import { hasOtherContent, baseName, writeAllWhole } from '../common/write-whole.ts';
import { subfolderIn } from '../export/batch-folder.ts';
import { offerMore } from '../export/offer-more.ts';
import { askFolder } from '../export/export-questions.ts';
import { currentText } from '../export/exporter.ts';
import { editorTurn, whileWanted } from '../service/compute-options.ts';
import type { JobChecks } from './job-checks.ts';
import { problemsOf, showProblem, whyNothing } from './job-problems.ts';

/** A complete request, from other extensions or tests. */
export interface JobRequest {
  readonly job: vscode.Uri;
  readonly to: vscode.Uri;
  readonly existing?: 'ask' | 'replace' | 'keep';
  /** Treatment of a job with parts left out. */
  readonly faulty?: 'ask' | 'go on';
}

/** The job as its sheets are shown, if that is a layout of what is to be made. */
type ShownLayout = (checked: CheckedJob) => Promise<LaidOutJob | undefined>;

interface JobFiles {
  readonly job: LaidOutJob;
  readonly outputs: ReadonlyMap<string, Uint8Array>;
  /** Files of offcuts among the outputs, with the text they were made from. */
  readonly offcuts: ReadonlyMap<string, string | undefined>;
}

/** The files written; empty if cancelled. */
export async function exportJob(
  job: vscode.Uri,
  checks: JobChecks,
  tools: Tools,
  nest: Nester,
  shown: ShownLayout,
  given?: Omit<JobRequest, 'job'>,
): Promise<vscode.Uri[]> {
  const asked = given?.to ?? (await askFolder('Put the job’s files in', vscode.Uri.joinPath(job, '..')));
  if (!asked) return [];
  // In a request, it is the very folder.
  const to = given ? asked : vscode.Uri.joinPath(asked, subfolderIn(asked, job));
  const options = {
    location: vscode.ProgressLocation.Notification,
    cancellable: true,
    title: `Exporting ${baseName(job)}`,
  };
  const made = await vscode.window.withProgress(options, (progress, token) =>
    whileWanted(token, (signal) => makeJobFiles(job, to, { checks, tools, nest, shown, progress, signal })),
  );
  if (!made) return [];
  if ('problem' in made) {
    void vscode.window.showErrorMessage(`${baseName(job)}: ${made.problem}`);
    return [];
  }
  if ((given?.faulty ?? 'ask') === 'ask' && !(await confirmLeftOut(job, made.job))) return [];
  if (!(await mayReplace(made, given?.existing ?? 'ask'))) return [];
  for (const [file, before] of made.offcuts)
    if ((await currentText(vscode.Uri.parse(file)).catch(() => undefined)) !== before) {
      const name = baseName(vscode.Uri.parse(file));
      void vscode.window.showErrorMessage(
        `${name} has changed in the meantime; nothing was written. Export the job again.`,
      );
      return [];
    }
  const outputs = [...made.outputs].map(([target, content]) => ({ target: vscode.Uri.parse(target), content }));
  await writeAllWhole(outputs);
  const written = outputs.map(({ target }) => target);
  inBackground(offerMore(written), 'offer what can be done with exported files');
  return written;
}

interface ExportContext {
  readonly checks: JobChecks;
  readonly tools: Tools;
  readonly nest: Nester;
  readonly shown: ShownLayout;
  readonly progress: vscode.Progress<{ message?: string; increment?: number }>;
  readonly signal: AbortSignal;
}

async function makeJobFiles(
  job: vscode.Uri,
  to: vscode.Uri,
  { checks, tools, nest, shown, progress, signal }: ExportContext,
): Promise<JobFiles | { readonly problem: string }> {
  const checkpoint = editorTurn(signal);
  const reading = checks.reading(job, signal, (done, all) => {
    progress.report({ message: makingTag(done, all) });
  });
  const checked = await checkJob(await currentText(job), baseName(job), reading);
  const known = await shown(checked);
  if (known) progress.report({ message: 'taking the sheets as they are shown' });
  const laid =
    known ??
    (await layOutJob(checked, {
      checkpoint,
      nest,
      progress: (at) => {
        progress.report({ message: layingOut(at) });
      },
    }));
  if (!laid || laid.layout.sheets.length === 0) {
    const why = whyNothing(laid ?? checked);
    return { problem: ['there is nothing to cut.', ...(why === undefined ? [] : [why])].join(' ') };
  }
  checks.foundOnSheets(job, checked, laid.issues);
  const outputs = new Map<string, Uint8Array>();
  const files = eachJobFile(laid, tools, checkpoint, (message) => {
    progress.report({ message });
  });
  for await (const [name, content] of files) outputs.set(vscode.Uri.joinPath(to, name).toString(), content);
  const offcuts = new Map<string, string | undefined>();
  for (const { file, before, after } of offcutChanges(laid)) {
    outputs.set(file, new TextEncoder().encode(after));
    offcuts.set(file, before);
  }
  return { job: laid, outputs, offcuts };
}

/** Asks before a job is cut with parts left out; the safe answer is the default, as for a tag with errors. */
async function confirmLeftOut(uri: vscode.Uri, job: LaidOutJob): Promise<boolean> {
  const lost = notCutInWords(job);
  const [first] = problemsOf(job);
  if (lost.length === 0 && !first) return true;
  const detail = (lost.length > 0 ? lost : [first!.message]).join('\n\n');
  const [show, rest] = ['Show the Problem', 'Export the Rest'];
  const answers = first ? [show, rest] : [rest];
  const answer = await vscode.window.showWarningMessage(
    'Not all of the job can be cut.',
    { modal: true, detail },
    ...answers,
  );
  if (answer === show) await showProblem(uri, job, first!);
  return answer === rest;
}

/** Half a job is worse than none: if one existing file is to be kept, nothing is written. */
async function mayReplace(
  { outputs, offcuts }: JobFiles,
  existing: NonNullable<JobRequest['existing']>,
): Promise<boolean> {
  const others: string[] = [];
  for (const [target, content] of outputs) {
    const uri = vscode.Uri.parse(target);
    if (!offcuts.has(target) && (await hasOtherContent(uri, content))) others.push(baseName(uri));
  }
  if (others.length === 0 || existing === 'replace') return true;
  if (existing === 'keep') return false;
  const yes = 'Replace';
  const question =
    others.length === 1
      ? `${others[0]!} is there already.`
      : `These files are there already: ${listed(others, mostInQuestion)}.`;
  const detail = 'Their current contents will be lost. Otherwise nothing is written.';
  return (await vscode.window.showWarningMessage(question, { modal: true, detail }, yes)) === yes;
}
