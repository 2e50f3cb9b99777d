/** The work in a job: every tag of every order, or the reason why it is left out. */

import type { ComputeOptions, ReadSpec } from '../../engine/engine.ts';
import type { Issue, YamlPath } from '../../core/issue.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { clip } from '../../core/length.ts';
import { listedQuoted } from '../../core/names.ts';
import { columnsInWords, columnsOf, labelOf } from '../../spec/batch/batch.ts';
import { filesMeant } from '../../spec/files/near-files.ts';
import type { Batch } from '../../spec/batch/batch.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { didYouMean } from '../../spec/schema/suggest.ts';
import type { Tag } from '../../tag/tag.ts';
import { askedTags, batchOf, madeInTurn } from './asked-tags.ts';
import { takenBy } from './taken-by.ts';
import type { TagsOfReading } from './kept-tags.ts';
import { faultOfLine, isOneFault, keepsFromCutting, leftOutInWords, whyOf } from './left-out.ts';
import type { MadeTag } from './left-out.ts';
import type { FileIssues, JobModel, TagEntry } from '../read/model.ts';
import type { OrderTable } from './order-table.ts';
import { OrderTables } from './order-tables.ts';
import { lineLabels, named } from './orders.ts';
import type { LeftOutOrder, OrderLine } from './orders.ts';
import { productColumn } from '../read/products.ts';
import { TagWarnings } from './tag-warnings.ts';
import type { TagWarning } from './tag-warnings.ts';
import type { JobReading } from './reading.ts';
import type { TagAsk } from './tag-ask.ts';

/** A tag that is made a number of times for one order. */
export interface JobTag {
  readonly spec: string;
  /** Its label among the tags of its spec; empty for the only one. */
  readonly label: string;
  /** Empty if it belongs to no order. */
  readonly order: string;
  /** What the table of orders calls it, if that says which spec a line is for. */
  readonly product?: string;
  readonly rush: boolean;
  readonly copies: number;
  readonly tag: Tag;
  /** Path of the entry in the job that asks for it. */
  readonly path: YamlPath;
  /** Line in the table of orders that asks for it: the table as named in the job, and the line from 1. */
  readonly line?: { readonly table: string; readonly number: number };
}

export type LeftOutTag = LeftOutOrder & { readonly spec: string };

export interface JobWork {
  readonly tags: readonly JobTag[];
  readonly leftOut: readonly LeftOutTag[];
  /** Issues in the job itself. */
  readonly issues: readonly Issue[];
  /** What is wrong with tags that are made all the same, by its issue. */
  readonly warnings: ReadonlyMap<Issue, TagWarning>;
  /** Issues in the tables of orders. */
  readonly inFiles: readonly FileIssues[];
  /** Full paths of all files that were read, or could not be, those that specs use among them. */
  readonly files: readonly string[];
  /** In the order of the tables and their lines, those that cannot be made among them. */
  readonly orders: readonly string[];
  /** What the lines of each table call the specs. */
  readonly products: ReadonlyMap<string, readonly string[]>;
}

interface EntryOrders {
  readonly table: OrderTable;
  readonly lines: readonly OrderLine[];
  /** Issues of the table, to which those of the tags are added. */
  readonly inTable: Issue[];
}

/** `told`: messages about the job itself. What is wrong with a spec for the same reason is not told again. */
export async function jobWork(
  model: JobModel,
  source: SpecSource,
  reading: JobReading,
  told: ReadonlySet<string>,
): Promise<JobWork> {
  const maker = new WorkMaker(model.tags, source, reading, told);
  for (const entry of model.tags) await maker.add(entry);
  maker.rushWholeOrders();
  return maker;
}

class WorkMaker implements JobWork {
  readonly tags: JobTag[] = [];
  readonly leftOut: LeftOutTag[] = [];
  readonly issues: Issue[] = [];
  readonly warnings = new Map<Issue, TagWarning>();
  readonly #files = new Set<string>();
  readonly #source: SpecSource;
  readonly #reading: JobReading;
  readonly #told: ReadonlySet<string>;
  readonly #tables: OrderTables;
  readonly #kept: TagsOfReading | undefined;
  #done = 0;
  #all = 0;

  constructor(entries: readonly TagEntry[], source: SpecSource, reading: JobReading, told: ReadonlySet<string>) {
    this.#source = source;
    this.#reading = reading;
    this.#told = told;
    this.#kept = reading.kept?.begin(reading.engine.read);
    this.#tables = new OrderTables(entries, reading, {
      read: (name, path) => this.#read(name, path),
      report: (code, path, message) => {
        this.#report(code, path, message);
      },
    });
  }

  get files(): readonly string[] {
    return [...this.#files];
  }

  get orders(): readonly string[] {
    return this.#tables.orders;
  }

  get products(): JobWork['products'] {
    return this.#tables.products;
  }

  get inFiles(): FileIssues[] {
    return this.#tables.issues;
  }

  async add(entry: TagEntry): Promise<void> {
    const orders = entry.orders === undefined ? undefined : await this.#ordersOf(entry, entry.orders);
    if (entry.orders !== undefined && !orders) {
      this.#leaveOut(entry, { order: '', label: '', why: this.#tables.whyNot(entry.orders) });
      return;
    }
    const text = await this.#read(entry.spec, [...entry.path, 'spec']);
    const why = 'its file cannot be found or read.';
    if (text !== undefined) await (orders ? this.#addOrders(entry, text, orders) : this.#addPlain(entry, text));
    else if (!orders) this.#leaveOut(entry, { order: '', label: '', quantity: entry.quantity, why });
    else for (const line of orders.lines) this.#leaveOut(entry, { ...line, label: line.row.label, why });
  }

  /** What goes into one parcel is wanted by the same day, whichever of its lines says so. */
  rushWholeOrders(): void {
    const rushed = new Set(this.tags.flatMap(({ order, rush }) => (rush && order !== '' ? [order] : [])));
    for (const [index, tag] of this.tags.entries())
      if (rushed.has(tag.order)) this.tags[index] = { ...tag, rush: true };
  }

  /** The spec's own tags, each in the same quantity. */
  async #addPlain(entry: TagEntry, text: string): Promise<void> {
    const { checkpoint } = this.#reading;
    const first = await this.#readSpec(entry, text);
    const [asked] = first.batch ? [] : columnsOf(first.source, first.uses.used);
    if (asked !== undefined && first.model) {
      const message = `${entry.spec} asks for {${clip(asked)}} and has no batch: give it “orders”, or it would be cut with the braces.`;
      this.#report('missing-key', entry.path, message);
      this.#leaveOut(entry, { order: '', label: '', quantity: entry.quantity, why: message });
      return;
    }
    const count = first.batch?.rows.length ?? 1;
    this.#expect(count);
    const faulty: MadeTag[] = [];
    const warnings = new TagWarnings();
    const rows = Array.from({ length: count }, (_, row) => ({ row }));
    for await (const report of this.#made(entry, text, rows, first)) {
      await checkpoint();
      this.#tick();
      this.#usesFiles(report);
      if (this.#isSound(report)) {
        this.#push(entry, report, { order: '', rush: false, quantity: entry.quantity });
        warnings.add(report, labelOf(report) ?? '');
      } else faulty.push(report);
    }
    this.#warn(entry, warnings);
    if (faulty.length === 0) return;
    this.#tellFaulty(entry, faulty, count);
    for (const report of faulty)
      this.#leaveOut(entry, { order: '', label: labelOf(report) ?? '', quantity: entry.quantity, why: whyOf(report) });
  }

  /** The lines for an entry; those that cannot be made are left out. */
  async #ordersOf(entry: TagEntry, name: string): Promise<EntryOrders | undefined> {
    const found = await this.#tables.of(name, [...entry.path, 'orders'], (each) => {
      this.leftOut.push({ spec: '', ...tagAndWhy(each) });
    });
    if (!found) return undefined;
    const { table, issues } = found;
    for (const each of table.leftOutOf(entry)) this.#leaveOut(entry, each);
    const lines = table.linesOf(entry);
    if (table.fault === undefined) return { table, lines, inTable: issues };
    const { lacks, why, isTold } = table.fault;
    if (!isTold) this.#report('unknown-name', [...entry.path, entry.products ? productColumn : 'orders'], why);
    for (const { quantity, ...line } of lines)
      this.#leaveOut(entry, { ...line, ...(lacks === 'quantity' ? {} : { quantity }), label: line.row.label, why });
    return { table, lines: [], inTable: issues };
  }

  async #addOrders(entry: TagEntry, text: string, { table: read, lines: all, inTable }: EntryOrders): Promise<void> {
    const { checkpoint } = this.#reading;
    const { name, text: csv, table } = read;
    const at: YamlPath = [...entry.path, 'orders'];
    const [{ row } = {}] = all;
    const first = row && (await this.#readSpec(entry, text, batchOf([row])));
    const asked = first ? columnsOf(first.source, first.uses.used) : new Set<string>();
    const lines = all.map((line) => (first ? named(line, columnsInWords(first.source, first.uses.used)) : line));
    const missing = [...asked].filter((column) => !table.header.includes(column));
    if (missing.length > 0) {
      const columns = listedQuoted(missing.map((column) => clip(column)));
      const message = `“${clip(name)}” has no ${missing.length === 1 ? 'column' : 'columns'} ${columns}, which ${entry.spec} asks for.`;
      if (!missing.every((column) => read.told.has(column))) this.#report('unknown-name', at, message);
      for (const line of lines) this.#leaveOut(entry, { ...line, label: line.row.label, why: message });
    } else {
      this.#expect(lines.length);
      const labelOfLine = lineLabels(lines, asked);
      const { different, keyOf } = askedTags(lines, asked, first);
      const coming = first && this.#made(entry, text, different, first);
      const made = new Map<string, MadeTag>();
      const faulty: { readonly line: OrderLine; readonly report: MadeTag }[] = [];
      const warnings = new TagWarnings();
      for (const line of lines) {
        await checkpoint();
        const key = keyOf(line);
        // They come in the order in which they are first asked for.
        if (!made.has(key)) made.set(key, (await coming!.next()).value as MadeTag);
        const report = made.get(key)!;
        this.#tick();
        this.#usesFiles(report);
        if (this.#isSound(report)) {
          this.#push(entry, report, line, labelOfLine(line));
          warnings.add(report, labelOfLine(line));
        } else faulty.push({ line, report });
      }
      this.#warn(entry, warnings);
      await coming?.return(undefined);
      const columns = table.header.filter((column) => asked.has(column));
      const isFull = ({ row: { cells } }: OrderLine) => columns.every((column) => cells.get(column) !== '');
      const full = faulty.filter(({ line }) => isFull(line));
      const isTheSpec = full.length === lines.filter(isFull).length && isOneFault(full.map(({ report }) => report));
      if (isTheSpec) this.#tellFaulty(entry, [full[0]!.report], 1);
      for (const { line, report } of faulty) {
        const issue = faultOfLine(line, report, { csv, header: table.header, columns, spec: entry.spec });
        const empty = columns.find((column) => line.row.cells.get(column) === '');
        const why = empty === undefined ? `${entry.spec}, ${whyOf(report)}` : `it has no “${clip(empty)}”.`;
        // A tag without its name is not called by what comes next, such as its month.
        const label =
          empty !== undefined && empty === columns[0] ? (line.product ?? `line ${line.line}`) : labelOfLine(line);
        this.#leaveOut(entry, { ...line, label, why });
        if ((!isTheSpec || !isFull(line)) && !this.#isTold(report)) inTable.push(issue);
      }
    }
  }

  #made(entry: TagEntry, text: string, asked: readonly TagAsk[], first: ReadSpec): AsyncGenerator<MadeTag, undefined> {
    const file = this.#reading.locate(entry.spec)!;
    return madeInTurn(this.#reading, { file, text, options: this.#optionsOf(entry), first }, asked, this.#kept);
  }

  async #readSpec(entry: TagEntry, text: string, batch?: Batch): Promise<ReadSpec> {
    const options = { ...this.#optionsOf(entry), ...(batch ? { batch } : {}) };
    const read = await this.#reading.engine.readSpec(text, options);
    this.#usesFiles(read.uses);
    return read;
  }

  #usesFiles({ files = [] }: Pick<MadeTag, 'files'>): void {
    for (const file of files) this.#files.add(file);
  }

  #optionsOf({ spec }: TagEntry): ComputeOptions {
    return this.#reading.optionsFor(this.#reading.locate(spec)!);
  }

  #isSound({ tag, issues }: MadeTag): boolean {
    return tag !== undefined && tag.pieces.length > 0 && !issues.some(keepsFromCutting);
  }

  #push(
    { spec, orders, path }: TagEntry,
    report: MadeTag,
    {
      order,
      rush,
      quantity,
      product,
      line,
    }: Pick<OrderLine, 'order' | 'rush' | 'quantity' | 'product'> & Partial<Pick<OrderLine, 'line'>>,
    label = labelOf(report) ?? '',
  ): void {
    const from = orders === undefined || line === undefined ? {} : { line: { table: orders, number: line } };
    const sold = product === undefined ? {} : { product };
    // While they are made, others have their turns.
    for (const piece of report.tag!.pieces) takenBy(piece, report.tag!);
    this.tags.push({ spec, label, order, ...sold, rush, copies: quantity, tag: report.tag!, path, ...from });
  }

  #leaveOut({ spec }: TagEntry, each: LeftOutOrder): void {
    this.leftOut.push({ spec, ...tagAndWhy(each) });
  }

  #expect(count: number): void {
    this.#all += count;
  }

  #tick(): void {
    this.#reading.progress?.(++this.#done, this.#all);
  }

  /** `undefined`, with an issue, if the file cannot be read. */
  async #read(name: string, path: YamlPath): Promise<string | undefined> {
    const { engine, locate } = this.#reading;
    const file = locate(name);
    if (file === undefined) {
      this.#report('bad-file', path, `“${clip(name)}” is not inside the job's folder.`);
      return undefined;
    }
    this.#files.add(file);
    try {
      return await engine.readText(file);
    } catch {
      const near = await filesMeant(name, { locate, beside: engine.beside });
      this.#report('bad-file', path, `“${clip(name)}” cannot be found or read.${didYouMean(near)}`, near);
      return undefined;
    }
  }

  #report(code: IssueCode, path: YamlPath, message: string, suggestions: readonly string[] = []): void {
    this.issues.push({ code, severity: 'error', path, range: this.#source.range(path), message, suggestions });
  }

  #warn(entry: TagEntry, warnings: TagWarnings): void {
    const path = [...entry.path, 'spec'];
    for (const warning of warnings.of(entry.spec)) {
      const { code, message } = warning;
      const issue: Issue = { code, message, severity: 'warning', path, range: this.#source.range(path) };
      this.issues.push(issue);
      this.warnings.set(issue, warning);
    }
  }

  /** Whether all that is wrong with it is wrong with the job too, as in a file that both use. */
  #isTold({ issues }: MadeTag): boolean {
    const errors = issues.filter(keepsFromCutting);
    return errors.length > 0 && errors.every(({ message }) => this.#told.has(message));
  }

  #tellFaulty({ spec, path }: TagEntry, faulty: readonly MadeTag[], count: number): void {
    const [first] = faulty;
    if (faulty.every((report) => this.#isTold(report))) return;
    this.#report(
      first!.issues.find(keepsFromCutting)?.code ?? 'bad-file',
      [...path, 'spec'],
      `${leftOutInWords(spec, faulty, count)}: ${whyOf(first!)}`,
    );
  }
}

function tagAndWhy({ order, label, product, quantity, why }: LeftOutOrder): LeftOutOrder {
  return {
    order,
    label,
    ...(product === undefined ? {} : { product }),
    ...(quantity === undefined ? {} : { quantity }),
    why,
  };
}
