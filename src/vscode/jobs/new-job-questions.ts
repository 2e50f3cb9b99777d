/** The questions of “New Job…”, each with an answer to begin with. */

import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import { listedQuoted } from '../../core/names.ts';
import { counted, shortSize } from '../../core/units.ts';
import { parseLength } from '../../core/length.ts';
import { unitsOf } from '../../core/values.ts';
import { largestPiece, orderColumns, usualSize } from '../../language/new-job.ts';
import type { JobChoices, JobSheets } from '../../language/new-job.ts';
import { mostOfOne } from '../../jobs/orders/orders.ts';
import { parseTable } from '../../spec/files/table.ts';
import { textOfBytes } from '../../core/text-of-bytes.ts';
import { problemOfSize, sidesOf } from '../common/typed-lengths.ts';

export interface JobAnswers {
  readonly title: string;
  /** `table`: a new table of orders. */
  readonly make: JobChoices['make'] | 'table';
  readonly sheets: readonly JobSheets[];
}

/** Answers given instead of asking. */
export interface GivenAnswers {
  readonly title: string;
  readonly make: JobAnswers['make'];
  /** By stock, such as `600 × 300 mm`. */
  readonly sizes: Readonly<Record<string, string>>;
  readonly keepsOffcuts: boolean;
}

export interface AskedJob {
  readonly folder: vscode.Uri;
  /** Names of the files in it. */
  readonly beside: readonly string[];
  readonly report: Report;
  readonly stocks: readonly string[];
  readonly title: string;
  /** Name that the stock of the spec is given. */
  readonly named?: string;
}

/** `undefined` if a question was dismissed. */
export async function askAll(asked: AskedJob, given: GivenAnswers | undefined): Promise<JobAnswers | undefined> {
  const { stocks, beside } = asked;
  const total = 3 + stocks.length;
  const heading = (step: number) => `New job (${step}/${total})`;
  const title = given?.title ?? (await askTitle(asked, heading(1)));
  if (title === undefined) return undefined;
  const make = given?.make ?? (await askMake(asked, heading(2)));
  if (make === undefined) return undefined;
  const sizes: string[] = [];
  for (const [index, stock] of stocks.entries()) {
    const size = given?.sizes[stock] ?? (await askSize(asked, stock, heading(3 + index)));
    if (size === undefined) return undefined;
    sizes.push(size);
  }
  const keeps = given?.keepsOffcuts ?? (await askOffcuts(stocks, beside, heading(total)));
  if (keeps === undefined) return undefined;
  return {
    title,
    make,
    sheets: stocks.map((stock, index) => {
      const [width, height] = sidesOf(sizes[index]!);
      return { stock, size: [width!, height!], ...(keeps ? { offcuts: offcutsOf(stock) } : {}) };
    }),
  };
}

const offcutsOf = (stock: string): string => `${stock}.offcuts.yaml`;

async function askTitle({ title, named }: AskedJob, heading: string): Promise<string | undefined> {
  const typed = await vscode.window.showInputBox({
    title: heading,
    prompt:
      named === undefined
        ? 'What is the job called?'
        : `What is the job called? It knows its sheets by their stock, so the stock of this tag is named “${named}”.`,
    value: title,
    ignoreFocusOut: true,
    validateInput: (text) => {
      if (text.trim() === '') return 'Type a name.';
      return text.trim().length > 200 ? 'Type a shorter name.' : undefined;
    },
  });
  return typed?.trim();
}

interface MakeItem extends vscode.QuickPickItem {
  readonly make: JobAnswers['make'] | 'count';
}

async function askMake(asked: AskedJob, heading: string): Promise<JobAnswers['make'] | undefined> {
  const { report } = asked;
  const rows = report.batch?.rows.length;
  const columns = orderColumns(report);
  const count: MakeItem = {
    label: rows === undefined ? 'This tag, several times' : `Each of its ${counted(rows, 'name')}`,
    detail: rows === undefined ? 'You say next how many.' : 'You say next how many of each.',
    make: 'count',
  };
  const fresh: MakeItem = {
    label: 'A new table of orders',
    detail: `A file with the columns ${listedQuoted(['order', 'quantity', ...columns])}, to be filled in.`,
    make: 'table',
  };
  const tables = await tablesBeside(asked, columns);
  // Words that differ from tag to tag have to come from somewhere.
  const items = columns.length === 0 || rows !== undefined ? [count, ...tables, fresh] : [...tables, fresh];
  const picked = await vscode.window.showQuickPick(items, {
    title: `${heading}: What is made?`,
    matchOnDetail: true,
    ignoreFocusOut: true,
  });
  return picked?.make === 'count'
    ? askQuantity(heading, rows === undefined ? 'How many?' : 'How many of each?')
    : picked?.make;
}

async function askQuantity(heading: string, prompt: string): Promise<JobChoices['make'] | undefined> {
  const typed = await vscode.window.showInputBox({
    title: heading,
    prompt,
    value: '1',
    ignoreFocusOut: true,
    validateInput: (text) => {
      const isCount = /^\d{1,9}$/.test(text.trim()) && Number(text) >= 1 && Number(text) <= mostOfOne;
      return isCount ? undefined : `Type a whole number from 1 to ${mostOfOne}.`;
    },
  });
  return typed === undefined ? undefined : { quantity: Number(typed) };
}

/** Tables in the folder, those with all that the spec asks for first; each says what it lacks. */
async function tablesBeside({ folder, beside }: AskedJob, columns: readonly string[]): Promise<MakeItem[]> {
  const names = beside.filter((name) => /\.csv$/i.test(name)).sort();
  const read = await Promise.all(
    names.map(async (name) => {
      const bytes = await vscode.workspace.fs
        .readFile(vscode.Uri.joinPath(folder, name))
        .then(undefined, () => undefined);
      const table = bytes && parseTable(textOfBytes(bytes));
      if (!table || 'problem' in table) return undefined;
      const lacks = columns.filter((column) => !table.header.includes(column));
      const lines = counted(table.rows.length, 'line');
      const said = lacks.length === 0 ? lines : `${lines}, without ${listedQuoted(lacks)}`;
      return { label: name, description: said, detail: 'A line for each order.', make: { orders: name }, lacks };
    }),
  );
  return read.filter((each) => each !== undefined).sort((a, b) => a.lacks.length - b.lacks.length);
}

async function askSize({ report }: AskedJob, stock: string, heading: string): Promise<string | undefined> {
  const units = unitsOf(report.source.value);
  const [width, height] = usualSize(report, units);
  const [most, across] = largestPiece(report.tag);
  return vscode.window.showInputBox({
    title: heading,
    prompt: `How large are your sheets of ${stock}?`,
    value: `${width} × ${height} ${units}`,
    ignoreFocusOut: true,
    validateInput: (text) => {
      const problem = problemOfSize(text);
      if (problem !== undefined) return problem;
      const [long = 0, short = 0] = sidesOf(text)
        .map((side) => parseLength(side, units))
        .map((side) => ('mm' in side ? side.mm : 0))
        .sort((a, b) => b - a);
      const message = `A piece of this tag is ${shortSize(most, across, units)}; it does not fit on such a sheet.`;
      return most > long || across > short
        ? { message, severity: vscode.InputBoxValidationSeverity.Warning }
        : undefined;
    },
  });
}

interface OffcutsItem extends vscode.QuickPickItem {
  readonly keeps: boolean;
}

async function askOffcuts(
  stocks: readonly string[],
  beside: readonly string[],
  heading: string,
): Promise<boolean | undefined> {
  const files = stocks.map(offcutsOf);
  const isThere = files.some((name) => beside.includes(name));
  const items: OffcutsItem[] = [
    {
      label: 'Offcuts first',
      detail: `${isThere ? 'From' : 'What is left of each sheet is kept in'} ${files.join(', ')}${isThere ? ', which also keep what is left.' : '.'}`,
      keeps: true,
    },
    { label: 'Whole sheets alone', detail: 'What is left is not kept.', keeps: false },
  ];
  const picked = await vscode.window.showQuickPick(items, {
    title: `${heading}: What is it cut from?`,
    ignoreFocusOut: true,
  });
  return picked?.keeps;
}
