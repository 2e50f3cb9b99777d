/** Registers the editor features for jobs: problems, completions, sheets, exports. */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { captionFont } from '../../export/job/job.ts';
import type { Tools } from '../../export/job/job.ts';
import type { Nester } from '../../nesting/best-of.ts';
import { isJob } from '../common/documents.ts';
import type { CommandTarget } from '../common/target.ts';
import type { CheckedJob } from '../../jobs/job.ts';
import { exportJob } from './export-job.ts';
import type { JobRequest } from './export-job.ts';
import type { JobChecks } from './job-checks.ts';
import { registerJobLanguage } from './job-language.ts';
import { JobSheets } from './job-sheets.ts';
import { newJob } from './new-job.ts';
import type { GivenAnswers } from './new-job-questions.ts';

/** `showSheets`: handles a call that is not for a job. */
export function registerJobs(
  extensionUri: vscode.Uri,
  engine: Engine,
  checks: JobChecks,
  nest: Nester,
  target: CommandTarget,
  showSheets: (spec: vscode.Uri) => unknown,
): vscode.Disposable {
  const rasteriser = vscode.Uri.joinPath(extensionUri, 'dist', 'resvg.wasm');
  const tools: Tools = {
    captions: (weight) => captionFont(engine.fonts, weight),
    rasteriser: () => Promise.resolve(vscode.workspace.fs.readFile(rasteriser)),
  };
  const sheets = new JobSheets(extensionUri, checks, nest);
  const shownAs = (job: vscode.Uri) => (checked: CheckedJob) => sheets.laidOut(job, checked);
  return vscode.Disposable.from(
    checks,
    registerJobLanguage(checks),
    sheets,
    vscode.commands.registerCommand('tagwright.showSheets', async (given?: unknown) => {
      const job = jobOf(given);
      if (job) {
        sheets.show(job);
        return;
      }
      const spec = await target.of(given);
      if (spec) showSheets(spec);
    }),
    target.command('tagwright.newJob', (spec, given?: GivenAnswers) => newJob(spec, engine, given)),
    vscode.commands.registerCommand('tagwright.exportJob', async (given?: unknown) => {
      if (isRequest(given)) return exportJob(given.job, checks, tools, nest, shownAs(given.job), given);
      const job = jobOf(given);
      if (job) return exportJob(job, checks, tools, nest, shownAs(job));
      void vscode.window.showInformationMessage('Open a job first: a file that ends in .job.yaml.');
      return [];
    }),
  );
}

function isRequest(given: unknown): given is JobRequest {
  return typeof given === 'object' && given !== null && 'job' in given && 'to' in given;
}

/** The job that a command was called on, else the one in the active editor. */
function jobOf(given: unknown): vscode.Uri | undefined {
  const uri = given instanceof vscode.Uri ? given : vscode.window.activeTextEditor?.document.uri;
  return uri && isJob(uri) ? uri : undefined;
}
