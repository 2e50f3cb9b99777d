/** The names for which a sample makes its tags: its batch, where that is a list, with other names. */

import { newLineOf } from '../core/lines.ts';
import { withEdits } from '../core/issue.ts';
import { isGroup, valueAt } from '../core/values.ts';
import { columnsIn, nameColumn } from '../spec/batch/batch.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { yamlText } from './completion/snippets.ts';

type Row = Readonly<Record<string, string | number>>;

export interface NamesOfBatch {
  /** The column that the words of the tag ask for first. */
  readonly column: string;
  readonly names: readonly string[];
}

/** `texts`: the words of the tag. `undefined` without a list of rows that they ask for. */
export function namesOfBatch(source: SpecSource, texts: readonly string[]): NamesOfBatch | undefined {
  const rows = rowsOf(source);
  const asked = texts.flatMap((text) => columnsIn(text)).map(({ column }) => column);
  const column = asked.find((each) => rows.some((row) => each in row));
  return column === undefined ? undefined : { column, names: rows.map((row) => String(row[column] ?? '')) };
}

/** A list of names as somebody writes it: one on each line, or separated by commas or semicolons if all are on one line. */
export function namesIn(text: string): string[] {
  const lines = linesIn(text);
  const parts = lines.length > 1 ? lines : text.split(/[,;]/);
  return parts.map((part) => part.trim()).filter((part) => part !== '');
}

/** Names that were pasted one on a line, where an input of one line has made spaces of line ends; `undefined` if none were. */
export function withPastedLines(typed: string, clipboard: string): string | undefined {
  const names = linesIn(clipboard);
  if (names.length < 2) return undefined;
  const asTyped = new RegExp(names.map((name) => name.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')).join('\\s*'), 'u');
  const meant = typed.replace(asTyped, () => names.map((name) => name.trim()).join(', '));
  return meant === typed ? undefined : meant;
}

/** Without the blank ones. */
function linesIn(text: string): string[] {
  return text.split(/\r?\n/).filter((line) => line.trim() !== '');
}

/** The spec with a row for each name. A name that it had keeps its row; others have empty cells, to be filled in. */
export function withNames(spec: string, { column }: NamesOfBatch, names: readonly string[]): string {
  const source = new SpecSource(spec);
  const before = rowsOf(source);
  const columns = [...new Set(before.flatMap((row) => Object.keys(row)))];
  const rows = names.map((name) => {
    const known = before.find((row) => String(row[column]) === name) ?? { [column]: name };
    return `{${columns.map((each) => `${yamlText(each)}: ${cellText(known[each])}`).join(', ')}}`;
  });
  const { start, end } = source.range(['batch']);
  const indent = ' '.repeat(source.position(start).column - 1);
  const isFlow = source.text[start] === '[';
  const text = isFlow ? `[${rows.join(', ')}]` : rows.map((row) => `- ${row}`).join(`${newLineOf(spec)}${indent}`);
  return withEdits(spec, [{ range: { start, end }, text }]);
}

function cellText(cell: string | number = ''): string {
  return typeof cell === 'number' ? String(cell) : yamlText(cell);
}

function rowsOf({ value }: SpecSource): Row[] {
  const batch = valueAt(value, ['batch']);
  const isCell = (cell: unknown): cell is string | number => typeof cell === 'string' || typeof cell === 'number';
  return (Array.isArray(batch) ? (batch as unknown[]) : []).map((row): Row => {
    const cells = isGroup(row) ? row : { [nameColumn]: row };
    return Object.fromEntries(
      Object.entries(cells).filter((entry): entry is [string, string | number] => isCell(entry[1])),
    );
  });
}
