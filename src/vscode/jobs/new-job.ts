/** “New Job…”: a few questions about the spec at hand, then a job beside it, opened with its sheets. */

import * as vscode from 'vscode';
import type { Engine, Report } from '../../engine/engine.ts';
import { isError } from '../../core/issue.ts';
import type { TextEdit } from '../../core/issue.ts';
import { freeFileName, plainName } from '../../export/file-names.ts';
import { jobText, jobTitle, namedStock, ofSpec, ordersText, stocksOf } from '../../language/new-job.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { showText } from '../common/tabs.ts';
import { baseName, writeNew } from '../common/write-whole.ts';
import { computeOptions } from '../service/compute-options.ts';
import { askAll } from './new-job-questions.ts';
import type { GivenAnswers, JobAnswers } from './new-job-questions.ts';

interface Begun {
  /** Of the text whose stocks all have names. */
  readonly report: Report;
  readonly stocks: readonly string[];
  /** Gives the stock of the spec a name. */
  readonly naming?: { readonly source: SpecSource; readonly name: string; readonly edit: TextEdit };
}

/** The job written; `undefined` if there is none. */
export async function newJob(
  spec: vscode.Uri,
  engine: Engine,
  given: GivenAnswers | undefined,
): Promise<vscode.Uri | undefined> {
  const begun = await begin(spec, engine);
  if (typeof begun === 'string') {
    void vscode.window.showErrorMessage(begun);
    return undefined;
  }
  const { report, stocks, naming } = begun;
  const folder = vscode.Uri.joinPath(spec, '..');
  const beside = (await vscode.workspace.fs.readDirectory(folder)).map(([name]) => name);
  const title = jobTitle(report, baseName(spec));
  const answers = await askAll(
    { folder, beside, report, stocks, title, ...(naming ? { named: naming.name } : {}) },
    given,
  );
  if (!answers) return undefined;
  if (naming && !(await applyEdits(spec, naming.source, [naming.edit]))) {
    void vscode.window.showErrorMessage('The tag has changed in the meantime; try again.');
    return undefined;
  }
  const job = await written(folder, beside, baseName(spec), report, answers);
  if (!job) return undefined;
  await showText(job, { preview: false });
  await vscode.commands.executeCommand('tagwright.showSheets', job);
  return job;
}

/** A sentence where no job can be made of the spec. */
async function begin(spec: vscode.Uri, engine: Engine): Promise<Begun | string> {
  if (spec.scheme === 'untitled') return 'Save the tag first: a job lies beside it and names its file.';
  const source = new SpecSource((await vscode.workspace.openTextDocument(spec)).getText());
  const compute = (text: string) => engine.compute(text, computeOptions(spec, new AbortController().signal));
  const report = await compute(source.text);
  const stocks = report.tag ? stocksOf(report.tag) : [];
  if (stocks.length === 0) {
    const why = report.issues.find(isError)?.message ?? 'it has no pieces.';
    return `No job can be made of ${baseName(spec)} yet: ${why}`;
  }
  const known = stocks.filter((name) => name !== undefined);
  if (known.length === stocks.length) return { report, stocks: known };
  const nameless =
    'A job knows its sheets by the names of their stocks: put the stock of this tag under “stocks”, with a name.';
  const naming = namedStock(source);
  if (!naming) return nameless;
  const { range, text } = naming.edit;
  const changed = await compute(source.text.slice(0, range.start) + text + source.text.slice(range.end));
  const all = changed.tag ? stocksOf(changed.tag).filter((name) => name !== undefined) : [];
  // A stock with a name may be one that was never measured, which is said and spoils nothing.
  const isAsGood = all.length === stocks.length && errorsIn(changed) <= errorsIn(report);
  return isAsGood ? { report: changed, stocks: all, naming: { source, ...naming } } : nameless;
}

function errorsIn({ issues }: Report): number {
  return issues.filter(isError).length;
}

async function written(
  folder: vscode.Uri,
  beside: readonly string[],
  spec: string,
  report: Report,
  { title, make, sheets }: JobAnswers,
): Promise<vscode.Uri | undefined> {
  const taken = (ending: string) =>
    new Set(beside.filter((name) => name.endsWith(ending)).map((name) => name.slice(0, -ending.length)));
  const at = (name: string) => vscode.Uri.joinPath(folder, name);
  const table = make === 'table' ? `${freeFileName('orders', taken('.csv'))}.csv` : undefined;
  const job = at(`${freeFileName(plainName(title), taken('.job.yaml'))}.job.yaml`);
  const made = table === undefined ? (make as Exclude<typeof make, 'table'>) : { orders: table };
  const text = jobText({ ...ofSpec(report.source), title, spec, make: made, sheets });
  const inBytes = (content: string): Uint8Array => new TextEncoder().encode(content);
  const files = [
    ...(table === undefined ? [] : [{ target: at(table), content: inBytes(ordersText(report)) }]),
    { target: job, content: inBytes(text) },
  ];
  try {
    await writeNew(files);
    return job;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    void vscode.window.showErrorMessage(`The job could not be written: ${why}`);
    return undefined;
  }
}
