/** Reads the rows of `batch`, from a list in the spec or from the table it names. */

import type { YamlPath } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { nameColumn } from '../batch/batch.ts';
import type { Batch, BatchRow } from '../batch/batch.ts';
import type { Problems } from './problems.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import { didYouMean, nearestWords } from '../schema/suggest.ts';
import type { Table } from '../files/table.ts';
import type { Rows, TableWithout, TagSpec } from '../types.generated.ts';

/** Most rows of a batch. Tables are for workshops, not factories; each row takes as long as a tag by itself. */
export const mostRows = 2000;

/**
 * The batch; `undefined` without rows and, with an issue, if none can be read. `table` is the file that `batch` names;
 * `asked`, the columns that its words ask for.
 */
export function readBatch(
  { batch: spec, title = '' }: Partial<TagSpec>,
  table: Table | undefined,
  problems: Problems,
  asked: ReadonlySet<string>,
): Batch | undefined {
  if (spec === undefined) return undefined;
  const isTable = !Array.isArray(spec);
  const rows = isTable
    ? rowsKept(rowsOfTable(table, asked), leftOut(spec, problems.source), problems)
    : rowsOfList(spec, problems.source);
  if (rows.length > mostRows) {
    problems.error('bad-value', ['batch'], `A batch has at most ${mostRows} rows; this one has ${rows.length}.`);
    return undefined;
  }
  const columns = isTable ? (table?.header ?? []) : columnsOfRows(rows);
  return rows.length === 0 ? undefined : { columns, title: titleOfAll(title, rows), rows };
}

function columnsOfRows(rows: readonly BatchRow[]): string[] {
  return [...new Set(rows.flatMap(({ cells }) => [...cells.keys()]))];
}

/** Rows by table and the column that names them, and those of a list: they are read once, although each row of a batch is read with the whole table. */
const cache = new WeakMap<Table['rows'], { readonly naming: string | undefined; readonly rows: readonly BatchRow[] }>();

function rowsOfTable(table: Table | undefined, asked: ReadonlySet<string>): readonly BatchRow[] {
  if (!table) return [];
  const { header } = table;
  const naming = header.find((column) => asked.has(column));
  const known = cache.get(table.rows);
  if (known && known.naming === naming) return known.rows;
  const rows = table.rows.map(({ cells: written, line, beyond }, index): BatchRow => {
    const cells = new Map(header.map((column, at) => [column, written[at]!]));
    const label = labelFrom((naming && cells.get(naming)) || written[0], index);
    return { label, cells, path: ['batch'], line, ...(beyond ? { beyond } : {}) };
  });
  cache.set(table.rows, { naming, rows });
  return rows;
}

/** The names by which `without` knows the rows of a table; `asked`, the columns that the words of the spec ask for. */
export function namesInTable(table: Table, asked: ReadonlySet<string>): string[] {
  return [...new Set(rowsOfTable(table, asked).map(({ label }) => label.trim()))];
}

/** Rows of a table by the names that are left out of it. */
const kept = new WeakMap<readonly BatchRow[], Map<string, readonly BatchRow[]>>();

/** The rows but for those left out; a name that no row has is reported. */
function rowsKept(rows: readonly BatchRow[], without: readonly Entry[], problems: Problems): readonly BatchRow[] {
  if (without.length === 0 || rows.length === 0) return rows;
  const labels = new Set(rows.map(({ label }) => label.trim()));
  for (const { name, path } of without.filter((each) => !labels.has(each.name))) {
    const suggestions = nearestWords(name, [...labels]);
    const message = `The table has no “${clip(name)}”.${didYouMean(suggestions)}`;
    problems.error('unknown-name', path, message, { suggestions });
  }
  const names = new Set(without.map(({ name }) => name));
  const known = kept.get(rows) ?? new Map<string, readonly BatchRow[]>();
  kept.set(rows, known);
  const key = JSON.stringify([...names]);
  const left = known.get(key) ?? rows.filter(({ label }) => !names.has(label.trim()));
  known.set(key, left);
  if (left.length === 0) problems.error('bad-value', withoutPath, 'All rows of the table are left out.');
  return left;
}

interface Entry {
  readonly name: string;
  readonly path: YamlPath;
}

const withoutPath: YamlPath = ['batch', 'without'];

function leftOut(spec: string | TableWithout, source: SpecPlaces): Entry[] {
  const { without } = typeof spec === 'string' ? {} : spec;
  const entry = (name: string | number | undefined, path: YamlPath): Entry[] =>
    name === undefined ? [] : [{ name: cellText(name, path, source).trim(), path }];
  // The schema check leaves holes in lists.
  return Array.isArray(without)
    ? [...without].flatMap((name: string | number | undefined, index) => entry(name, [...withoutPath, index]))
    : entry(without, withoutPath);
}

/** Rows of a list by the spec, which is read anew for each of them. */
const listed = new WeakMap<SpecPlaces, readonly BatchRow[]>();

function rowsOfList(list: Rows, source: SpecPlaces): readonly BatchRow[] {
  const rows = listed.get(source) ?? readRows(list, source);
  listed.set(source, rows);
  return rows;
}

function readRows(list: Rows, source: SpecPlaces): BatchRow[] {
  // The schema check leaves holes in lists.
  return [...(list as readonly (Rows[number] | undefined)[])].flatMap((row, index): BatchRow[] => {
    if (row === undefined) return [];
    const path = ['batch', index];
    const written =
      typeof row === 'object'
        ? Object.entries(row).map(([column, cell]) => ({ column, cell, at: [...path, column] }))
        : [{ column: nameColumn, cell: row, at: path }];
    // A number is taken as written, not by value: `007` and `1.50` stay as they are.
    const cells = new Map(written.map(({ column, cell, at }) => [column, cellText(cell, at, source)]));
    const places = new Map(written.map(({ column, at }) => [column, at]));
    const [first] = cells.values();
    return [{ label: labelFrom(first, index), cells, path, places }];
  });
}

/** In one line: a name may be written in several. */
function labelFrom(cell: string | undefined, index: number): string {
  return cell?.trim().replace(/\s+/gu, ' ') || `row ${index + 1}`;
}

function cellText(cell: string | number, path: YamlPath, source: SpecPlaces): string {
  return typeof cell === 'string' ? cell : (source.written?.(path) ?? String(cell));
}

/** A column set apart from the rest of a title: “, {name}”, “({name})”, “{name}: ”. */
const aside =
  /\s*\((?<!\{)\{[^{}]*\}\)|(?:\s*[,;:·]|\s+[–—-])\s*(?<!\{)\{[^{}]*\}(?=\s*$)|^\s*(?<!\{)\{[^{}]*\}\s*[,;:·–—-]\s*/g;

/**
 * “Seedling label, {name}” becomes “Seedling label”, and “Label for {name}” becomes “Label for …”; if everything
 * differs, the first name and the number of others.
 */
function titleOfAll(title: string, rows: readonly BatchRow[]): string {
  // Collapsed, since the pattern would start again at each of several spaces.
  let rest = title.trim().replace(/\s+/g, ' ');
  // One column after the other, from both ends.
  for (let before = ''; before !== rest;) {
    before = rest;
    rest = rest.replace(aside, '');
  }
  rest = rest
    .replace(/(?<!\{)\{[^{}]*\}/g, '…')
    .replace(/\{\{|\}\}/g, (mark) => mark.charAt(0))
    .trim();
  if (/[\p{L}\p{N}]/u.test(rest)) return rest;
  const [first] = rows;
  return rows.length > 1 ? `${first!.label} and ${rows.length - 1} more` : first!.label;
}
