/** A spec as one row of its batch reads it, with the row's cells in place of each `{column}`. */

import type { Issue, TextRange, YamlPath } from '../../core/issue.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import { columnsIn, filled, textsIn } from './batch.ts';
import type { BatchRow } from './batch.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import type { TableFile } from '../files/used-files.ts';

/** Texts are filled in when they are read: `007` in them is not a number, and an empty cell does not remove them. */
const words: ReadonlySet<unknown> = new Set(['text', 'title', 'code']);

/** An entry of `lines` may be its words alone; beside a drawing, `lines` is true or false. */
export function isWords(path: YamlPath): boolean {
  const isLine = path.at(-2) === 'lines' && typeof path.at(-1) === 'number';
  return isLine || words.has(path.findLast((step) => typeof step === 'string'));
}

/** Keys that say what a shape is, by a name or a file: without them nothing of the shape is left. */
const generatorsByName = ['drawing', 'path', 'from'] as const;

/** Files are loaded before any row is read. */
const loadedFirst: ReadonlySet<unknown> = new Set(['batch', 'use']);

/** Whether a value asks for columns, given the key it is under, directly or in a list. */
export function asksForColumns(value: unknown, key?: unknown): boolean {
  if (typeof value === 'string') return !words.has(key) && columnsIn(value).length > 0;
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(value).some(([inner, each]) => asksForColumns(each, Array.isArray(value) ? key : inner));
}

export function specAsksForColumns(spec: unknown): boolean {
  return (
    isGroup(spec) && Object.entries(spec).some(([key, each]) => !loadedFirst.has(key) && asksForColumns(each, key))
  );
}

/** One file as a row reads it. */
export interface RowReading {
  /** Values from a list in the spec have the ranges of their cells. */
  readonly source: SpecPlaces;
  /** Columns that no row has; the values that ask for them stay as written. */
  readonly missing: readonly { readonly column: string; readonly path: YamlPath }[];
  /** The columns that the value at a path, or the value that contains it, comes from. */
  readonly columnsAt: (path: YamlPath) => readonly string[];
  /** The columns whose empty cells took something out of the map or list at a path. */
  readonly emptiedAt: (path: YamlPath) => readonly string[];
}

export class RowValues {
  readonly row: BatchRow;
  readonly columns: readonly string[];
  /** The table that the row is from; absent for a list in the spec. */
  readonly table: TableFile | undefined;
  readonly #known = new Map<SpecPlaces, RowReading>();

  readonly #spec: SpecPlaces;

  /** `spec` is the one with the batch. `columns` are all that it has; a row may lack some. */
  constructor(spec: SpecPlaces, row: BatchRow, columns: readonly string[], table?: TableFile) {
    this.#spec = spec;
    this.row = row;
    this.columns = columns;
    this.table = table;
  }

  /**
   * The issue with the table's line in its message, if its value is from a table; in a list, its range is the cell's.
   */
  withTableLine(issue: Issue, { columnsAt }: RowReading): Issue {
    const { table, row } = this;
    if (!table || columnsAt(issue.path).length === 0) return issue;
    return { ...issue, message: `${table.name}, line ${row.line}: ${issue.message}` };
  }

  /** The issues that come from cells of a table, each at its cell. */
  inTable(issues: readonly Issue[], { columnsAt }: RowReading): Issue[] {
    const { table, row } = this;
    if (!table) return [];
    return issues.flatMap((issue) => {
      const [column] = columnsAt(issue.path);
      if (column === undefined) return [];
      return [{ ...issue, range: table.places().cell(row.line!, table.header.indexOf(column)) }];
    });
  }

  /** The reading of a file; the same object each time it is used. */
  of(source: SpecPlaces): RowReading {
    const reading = this.#known.get(source) ?? this.#read(source);
    this.#known.set(source, reading);
    return reading;
  }

  #read(source: SpecPlaces): RowReading {
    const { row } = this;
    const reader = new RowReader(row, new Set(this.columns));
    const value = reader.readSpec(source.value);
    const { missing, columnsAt, emptiedAt, written } = reader;
    const range = (path: YamlPath): TextRange => {
      const [column] = columnsAt(path);
      const cell = column === undefined || source !== this.#spec ? undefined : row.places?.get(column);
      return source.range(cell ?? written(path));
    };
    return {
      source: {
        value,
        issues: source.issues,
        range,
        keyRange: (path) => source.keyRange(written(path)),
        position: (offset) => source.position(offset),
        written: (path) => reader.textAt(path) ?? source.written?.(written(path)),
      },
      missing,
      columnsAt,
      emptiedAt,
    };
  }
}

class RowReader {
  readonly missing: { column: string; path: YamlPath }[] = [];
  readonly #row: BatchRow;
  readonly #columns: ReadonlySet<string>;
  /** By path: the columns a value was filled from, and the resulting text. */
  readonly #filled = new Map<string, { readonly columns: readonly string[]; readonly text: string }>();
  /** By path of a map or list: the columns whose empty cells took something out of it. */
  readonly #emptied = new Map<string, readonly string[]>();
  /** By path of a list that lost entries: the original indices of the remaining ones. */
  readonly #kept = new Map<string, readonly number[]>();
  /** Named shapes that an empty cell leaves out, and with them their entries in the lists of pieces. */
  #leftOut: ReadonlySet<unknown> = new Set();

  constructor(row: BatchRow, columns: ReadonlySet<string>) {
    this.#row = row;
    this.#columns = columns;
  }

  readSpec(spec: unknown): unknown {
    const shapes = valueAt(spec, ['shapes']);
    this.#leftOut = new Set(
      Object.entries(isGroup(shapes) ? shapes : {}).flatMap(([name, shape]) => (this.#isEmptied(shape) ? [name] : [])),
    );
    return this.#read(spec, []);
  }

  /** The value with cells filled in; `undefined` if an empty cell removes it. Without columns, the same object. */
  #read(value: unknown, path: YamlPath): unknown {
    const mayNameShapes = path[0] === 'pieces' && this.#leftOut.size > 0;
    if (typeof value === 'string')
      return mayNameShapes && this.#leftOut.has(value) ? undefined : this.#fill(value, path);
    if (!mayNameShapes && !asksForColumns(value, path.at(-1))) return value;
    if (typeof value !== 'object' || value === null) return value;
    if (Array.isArray(value)) return this.#list(value as readonly unknown[], path);
    if (this.#isEmptied(value)) return undefined;
    const entries = Object.entries(value).map(([key, each]): [string, unknown] => [
      key,
      loadedFirst.has(key) && path.length === 0 ? each : this.#read(each, [...path, key]),
    ]);
    this.#keepEmptied(
      path,
      entries.filter(([, each]) => each === undefined).map(([key]) => valueAt(value, [key])),
    );
    return Object.fromEntries(entries.filter(([, each]) => each !== undefined));
  }

  /** Whether a shape is made by what an empty cell should have named. */
  #isEmptied(shape: unknown): boolean {
    if (!isGroup(shape)) return false;
    return generatorsByName.some((key) => {
      const value = shape[key];
      return typeof value === 'string' && this.#hasEmptyCell(columnsIn(value).map(({ column }) => column));
    });
  }

  /** A row without such a cell counts as having an empty one. */
  #hasEmptyCell(columns: readonly string[]): boolean {
    const known = columns.every((column) => this.#columns.has(column));
    return known && columns.some((column) => (this.#row.cells.get(column) ?? '').trim() === '');
  }

  /** `undefined` if empty cells leave nothing of the list. */
  #list(list: readonly unknown[], path: YamlPath): unknown[] | undefined {
    const kept: number[] = [];
    const entries: unknown[] = [];
    for (const [index, each] of list.entries()) {
      const entry = this.#read(each, [...path, entries.length]);
      if (entry === undefined) continue;
      kept.push(index);
      entries.push(entry);
    }
    if (kept.length < list.length) this.#kept.set(JSON.stringify(path), kept);
    this.#keepEmptied(
      path,
      list.filter((_, index) => !kept.includes(index)),
    );
    return entries.length === 0 && list.length > 0 ? undefined : entries;
  }

  #keepEmptied(path: YamlPath, lost: readonly unknown[]): void {
    const columns = lost.flatMap(textsIn).flatMap((text) => columnsIn(text).map(({ column }) => column));
    const empty = [...new Set(columns)].filter((column) => this.#hasEmptyCell([column]));
    if (empty.length > 0) this.#emptied.set(JSON.stringify(path), empty);
  }

  #fill(text: string, path: YamlPath): unknown {
    if (isWords(path) || !asksForColumns(text)) return text;
    const asked = columnsIn(text).map(({ column }) => column);
    const unknown = asked.filter((column) => !this.#columns.has(column));
    this.missing.push(...unknown.map((column) => ({ column, path })));
    if (unknown.length > 0) return text;
    if (this.#hasEmptyCell(asked)) return undefined;
    const whole = filled(text, this.#row, () => undefined)!.trim();
    this.#filled.set(JSON.stringify(path), { columns: asked, text: whole });
    return plainValue(whole);
  }

  readonly columnsAt = (path: YamlPath): readonly string[] => {
    for (let length = path.length; length > 0; length--) {
      const found = this.#filled.get(JSON.stringify(path.slice(0, length)));
      if (found) return found.columns;
    }
    return [];
  };

  readonly emptiedAt = (path: YamlPath): readonly string[] => this.#emptied.get(JSON.stringify(path)) ?? [];

  textAt(path: YamlPath): string | undefined {
    return this.#filled.get(JSON.stringify(path))?.text;
  }

  /** The path in the text of what is at `path` in the row. */
  readonly written = (path: YamlPath): YamlPath =>
    path.map((step, index) =>
      typeof step === 'number' ? (this.#kept.get(JSON.stringify(path.slice(0, index)))?.[step] ?? step) : step,
    );
}

/** A value as YAML's core schema reads it without quotes. */
function plainValue(text: string): string | number | boolean {
  if (/^(?:true|false)$/i.test(text)) return text.toLowerCase() === 'true';
  return /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/.test(text) ? Number(text) : text;
}
