/** Tables as spreadsheets save them: CSV, RFC 4180, with any usual separator. The only file that imports papaparse. */

import Papa from 'papaparse';
import type { TextRange } from '../../core/issue.ts';
import { TablePlaces } from './table-places.ts';

export interface Table {
  /** Names of the columns, from the first line. */
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
  /** Computed when first used: few tables have anything wrong with them. */
  readonly places: () => TablePlaces;
}

export interface TableRow {
  /** As many as the header has; missing ones are empty. */
  readonly cells: readonly string[];
  /** Line in the file, counting from 1. */
  readonly line: number;
  /** What stands in cells beyond the last column, if anything does. */
  readonly beyond?: readonly string[];
}

/** Why a table cannot be read, as the end of a sentence: “names.csv …”; and where, if that is a place in its text. */
export interface TableProblem {
  readonly problem: string;
  readonly place?: TextRange;
}

/** The table without its empty rows. */
export function parseTable(text: string): Table | TableProblem {
  const kind = fileKinds.find(({ begins }) => text.startsWith(begins));
  if (kind) return { problem: `is ${kind.what}, whatever its name says; save the table as CSV UTF-8.` };
  // What a decoder puts in place of bytes that are not UTF-8, and what UTF-16 without its mark is full of.
  if (/[\ufffd\0]/.test(text)) return { problem: 'is not UTF-8 text; save it as CSV UTF-8.' };
  const plain = text.replace(/^\ufeff/, '');
  const before = text.length - plain.length;
  const [mark] = /^sep=.(?=\r?\n)/i.exec(plain) ?? [];
  if (mark !== undefined) {
    const place = { start: before, end: before + mark.length };
    return { problem: `begins with “${mark}”, which names no columns; take that line out.`, place };
  }
  const delimiter = delimiterOf(plain);
  const { data, errors } = Papa.parse<string[]>(plain, { delimiter });
  const open = errors.find(({ type }) => type === 'Quotes');
  if (open) {
    const problem = `has a quotation mark that is never closed, in or after row ${(open.row ?? 0) + 1}.`;
    const { index } = open;
    return index === undefined ? { problem } : { problem, place: quoteAt(text, before + index) };
  }
  const [first, ...rest] = numbered(data);
  const header = (first?.cells ?? []).map((name) => name.trim());
  // A line that ends in a separator has an empty last cell.
  while (header.at(-1) === '') header.pop();
  if (header.length === 0) return { problem: 'is empty; its first line should name the columns.' };
  const at = header.findIndex((name, index) => name === '' || /[{}]/.test(name) || header.indexOf(name) !== index);
  if (at >= 0) {
    const bad = header[at]!;
    const why =
      bad === '' ? 'a column without a name' : /[{}]/.test(bad) ? `a brace in “${bad}”` : `two columns “${bad}”`;
    return { problem: `has ${why} in its first line.`, place: cellRange(text, 1, at) };
  }
  const rows = rest.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (rows.length === 0) return { problem: 'has no rows below the column names.' };
  let places: TablePlaces | undefined;
  return {
    header,
    places: () => (places ??= new TablePlaces(plain, delimiter)),
    rows: rows.map(({ cells, line }) => {
      const beyond = cells
        .slice(header.length)
        .map((cell) => cell.trim())
        .filter((cell) => cell !== '');
      const own = header.map((_, i) => (cells[i] ?? '').trim());
      return { line, cells: own, ...(beyond.length > 0 ? { beyond } : {}) };
    }),
  };
}

/** What other programs save, by how it begins: archives and compound files (of spreadsheets), PDF, web pages. From memory. */
const fileKinds = [
  { begins: 'PK\u0003\u0004', what: 'a spreadsheet or another archive' },
  { begins: '\ufffd\ufffd\u0011\u0871\u001a\ufffd', what: 'an old spreadsheet' },
  { begins: '%PDF-', what: 'a PDF' },
  { begins: '<', what: 'a web page' },
] as const;

/** The last quotation mark before an offset, or the next one after it. */
function quoteAt(text: string, offset: number): TextRange {
  const before = text.lastIndexOf('"', offset);
  const start = before < 0 ? text.indexOf('"', offset) : before;
  return { start, end: start + 1 };
}

/** The separator that splits the first line into most columns, as the cells below may contain any of them. */
function delimiterOf(text: string): string {
  const columns = (delimiter: string) => Papa.parse<string[]>(text, { delimiter, preview: 1 }).data[0]?.length ?? 0;
  return [',', ';', '\t'].reduce((a, b) => (columns(b) > columns(a) ? b : a));
}

/** Rows with their line numbers, counted separately because cells may contain line breaks. */
function numbered(data: readonly string[][]): TableRow[] {
  let line = 1;
  return data.map((cells) => {
    const row = { cells, line };
    line += 1 + cells.reduce((breaks, cell) => breaks + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0);
    return row;
  });
}

/**
 * Range of a cell in the text of a table, as UTF-16 offsets, quotes included; for a missing cell, the end of the line.
 */
export function cellRange(text: string, line: number, column: number): TextRange {
  const plain = text.replace(/^\ufeff/, '');
  const before = text.length - plain.length;
  const { start, end } = new TablePlaces(plain, delimiterOf(plain)).cell(line, column);
  return { start: before + start, end: before + end };
}

/** A table in a form that spreadsheets read; cells that would be taken for formulas are marked as text. */
export function tableText(header: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  return `${Papa.unparse([[...header], ...rows.map((row) => [...row])], { escapeFormulae: true, newline: '\r\n' })}\r\n`;
}
