/** The same tag for a list: the cells that each row of `batch` puts in place of `{column}`. */

import type { YamlPath } from '../core/issue.ts';

/** Column name for the entries of a plain list. */
export const nameColumn = 'name';

export interface BatchRow {
  /** The first cell, which stands for the row in lists and file names. */
  readonly label: string;
  readonly cells: ReadonlyMap<string, string>;
  readonly path: YamlPath;
  /** For a list in the spec: the path of each cell. */
  readonly places?: ReadonlyMap<string, YamlPath>;
  /** Line in the table it comes from, counting from 1. */
  readonly line?: number;
}

export interface Batch {
  readonly columns: readonly string[];
  /** Name of the whole batch: the title, with what differs from row to row left out or replaced by “…”. */
  readonly title: string;
  /** At least one. */
  readonly rows: readonly BatchRow[];
}

/** Label of one tag within its batch; `undefined` without a batch. */
export function labelOf({
  batch,
  row,
}: {
  readonly batch?: Pick<Batch, 'rows'>;
  readonly row: number;
}): string | undefined {
  return batch?.rows[row]?.label;
}

/** A doubled brace is a literal one. */
const marks = /\{\{|\}\}|\{([^{}]*)\}/g;

/** The columns that a text asks for, with their offsets in it, braces excluded. */
export function columnsIn(text: string): { readonly column: string; readonly start: number; readonly end: number }[] {
  return [...text.matchAll(marks)].flatMap(({ 0: mark, 1: asked, index }) => {
    if (asked === undefined || asked.trim() === '') return [];
    const start = index + 1 + asked.length - asked.trimStart().length;
    return [
      { column: asked.trim(), start, end: index + mark.trimEnd().length - 1 - (asked.length - asked.trimEnd().length) },
    ];
  });
}

/** The text with the row's cells filled in; `undefined` if any column does not exist, after each has been reported. */
export function filled(text: string, { cells }: BatchRow, reportMissing: (column: string) => void): string | undefined {
  const missing: string[] = [];
  const whole = text.replace(marks, (mark: string, asked: string | undefined) => {
    if (asked === undefined) return mark.charAt(0);
    const column = asked.trim();
    const cell = cells.get(column);
    if (cell === undefined) missing.push(column);
    return cell ?? mark;
  });
  for (const column of missing) reportMissing(column);
  return missing.length === 0 ? whole : undefined;
}

/** Every text in a value of a spec that may ask for columns. */
export function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === 'batch' ? [] : textsIn(inner)));
}
