/** The tables of orders of a job; each is read once, however many entries name it. */

import type { Issue, TextRange, YamlPath } from '../../core/issue.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { clip } from '../../core/length.ts';
import { columnsInWords, columnsOf } from '../../spec/batch/batch.ts';
import { mostRows } from '../../spec/read/read-batch.ts';
import { sourceOf } from '../../spec/yaml/source.ts';
import { parseTable } from '../../spec/files/table.ts';
import { loadUses } from '../../spec/files/used-files.ts';
import type { FileIssues, TagEntry } from '../read/model.ts';
import { orderTable } from './order-table.ts';
import type { AskedColumns, OrderTable } from './order-table.ts';
import type { LeftOutOrder } from './orders.ts';
import { positionsIn } from './positions.ts';
import type { JobReading } from './reading.ts';

/** Limit on lines, as on the rows of a batch: each takes as long as a tag by itself. */
const mostLines = mostRows;

interface ReadTable {
  readonly table: OrderTable;
  /** All of the table; those of its tags are added. */
  readonly issues: Issue[];
}

interface TableAccess {
  /** `undefined`, with an issue at the path, if the file cannot be read. */
  readonly read: (name: string, path: YamlPath) => Promise<string | undefined>;
  readonly report: (code: IssueCode, path: YamlPath, message: string) => void;
}

export class OrderTables {
  readonly #entries: readonly TagEntry[];
  readonly #reading: JobReading;
  readonly #access: TableAccess;
  readonly #known = new Map<string, ReadTable>();
  /** Of each table that cannot be read, why. */
  readonly #unread = new Map<string, string>();
  /** What keeps a table from being read, at its place there. */
  readonly #faults: FileIssues[] = [];

  constructor(entries: readonly TagEntry[], reading: JobReading, access: TableAccess) {
    this.#entries = entries;
    this.#reading = reading;
    this.#access = access;
  }

  /** What the lines of each table call the specs. */
  get products(): ReadonlyMap<string, readonly string[]> {
    return new Map([...this.#known].map(([name, { table }]) => [name, table.products]));
  }

  /** Of all tables, in the order of their lines. */
  get orders(): readonly string[] {
    return [...new Set([...this.#known.values()].flatMap(({ table }) => table.orders))];
  }

  /** In the order of the lines; what two specs lack in one line is told once. */
  get issues(): FileIssues[] {
    const found = [...this.#known.values()].flatMap(({ table: { name, text }, issues }): FileIssues[] => {
      const different = new Map(issues.map((issue) => [JSON.stringify([issue.range, issue.message]), issue]));
      const sorted = [...different.values()].sort((a, b) => a.range.start - b.range.start);
      const file = this.#reading.locate(name)!;
      return sorted.length === 0 ? [] : [{ file, name, position: positionsIn(text), issues: sorted }];
    });
    return [...this.#faults, ...found];
  }

  /** Why a table could not be read. */
  whyNot(name: string): string {
    return this.#unread.get(name) ?? `“${clip(name)}” cannot be found or read.`;
  }

  /** `leaveOut`: called for each line that no spec makes, when the table is read. */
  async of(name: string, path: YamlPath, leaveOut: (line: LeftOutOrder) => void): Promise<ReadTable | undefined> {
    const known = this.#known.get(name);
    if (known) return known;
    if (this.#unread.has(name)) return undefined;
    if (/\.(ya?ml|xlsx?|ods|numbers)$/i.test(name)) {
      this.#refuse(name, path, 'is no table; save it as CSV UTF-8, and name that file.');
      return undefined;
    }
    const text = await this.#access.read(name, path);
    if (text === undefined) return undefined;
    const table = parseTable(text);
    if ('problem' in table) {
      this.#refuse(name, path, table.problem, table.place && { place: table.place, text });
      return undefined;
    }
    if (table.rows.length > mostLines) {
      this.#refuse(
        name,
        path,
        `has ${table.rows.length} lines; a job takes at most ${mostLines}. Split it into several jobs.`,
      );
      return undefined;
    }
    const entries = this.#entries.filter(({ orders }) => orders === name);
    const read = orderTable({ name, text, table }, entries, await this.#columnsOf(entries));
    for (const line of read.leftOut) leaveOut(line);
    const found = { table: read, issues: [...read.issues] };
    this.#known.set(name, found);
    return found;
  }

  /** `at`: the place in the text of the table, if it is at one. */
  #refuse(
    name: string,
    path: YamlPath,
    problem: string,
    at?: { readonly place: TextRange; readonly text: string },
  ): void {
    const message = `“${clip(name)}” ${problem}`;
    this.#unread.set(name, message);
    if (!at) {
      this.#access.report('bad-file', path, message);
      return;
    }
    const issue: Issue = { code: 'bad-file', severity: 'error', path: [], range: at.place, message };
    this.#faults.push({ file: this.#reading.locate(name)!, name, position: positionsIn(at.text), issues: [issue] });
  }

  /** Columns that the entries' specs ask for; of specs that cannot be read, none. */
  async #columnsOf(entries: readonly TagEntry[]): Promise<AskedColumns> {
    const { engine, locate, optionsFor } = this.#reading;
    const all = new Map<string, string[]>();
    const inWords = new Set<string>();
    const read = (path: string) => engine.readText(path);
    for (const entry of entries) {
      const file = locate(entry.spec);
      const text = file === undefined ? undefined : await read(file).catch(() => undefined);
      if (file === undefined || text === undefined) continue;
      const source = sourceOf(text);
      const { used } = await loadUses(source, { read, locate: optionsFor(file).locate });
      for (const column of columnsOf(source, used)) all.set(column, [...(all.get(column) ?? []), entry.spec]);
      for (const column of columnsInWords(source, used)) inWords.add(column);
    }
    return { all, inWords };
  }
}
