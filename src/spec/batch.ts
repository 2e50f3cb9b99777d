/** The same tag for a list: what each row of `batch` puts in the place of `{column}`. */

import type { YamlPath } from '../core/issue.ts';

/** What the entries of a plain list are called. */
export const nameColumn = 'name';

export interface BatchRow {
  /** What it goes by in lists and in the names of files: its first cell. */
  readonly label: string;
  readonly cells: ReadonlyMap<string, string>;
  readonly path: YamlPath;
  /** Of a list in the spec: where each cell stands. */
  readonly places?: ReadonlyMap<string, YamlPath>;
  /** Of the table it comes from, counting from 1. */
  readonly line?: number;
}

export interface Batch {
  readonly columns: readonly string[];
  /** What all of it is called: the title, with what differs from row to row left out or as “…”. */
  readonly title: string;
  /** At least one. */
  readonly rows: readonly BatchRow[];
}

/** What one tag goes by among those of its batch; `undefined` where there is none. */
export function labelOf({
  batch,
  row,
}: {
  readonly batch?: Pick<Batch, 'rows'>;
  readonly row: number;
}): string | undefined {
  return batch?.rows[row]?.label;
}

/** Doubled braces stand for themselves. */
const marks = /\{\{|\}\}|\{([^{}]*)\}/g;

/** The columns a text asks for, each where it stands in it, braces left out. */
export function columnsIn(text: string): { readonly column: string; readonly start: number; readonly end: number }[] {
  return [...text.matchAll(marks)].flatMap(({ 0: mark, 1: asked, index }) => {
    if (asked === undefined || asked.trim() === '') return [];
    const start = index + 1 + asked.length - asked.trimStart().length;
    return [
      { column: asked.trim(), start, end: index + mark.trimEnd().length - 1 - (asked.length - asked.trimEnd().length) },
    ];
  });
}

/** A text with the row's cells in it; `undefined`, once all it lacks has been told, where it asks for what there is not. */
export function filled(text: string, { cells }: BatchRow, tellMissing: (column: string) => void): string | undefined {
  const missing: string[] = [];
  const whole = text.replace(marks, (mark: string, asked: string | undefined) => {
    if (asked === undefined) return mark.charAt(0);
    const column = asked.trim();
    const cell = cells.get(column);
    if (cell === undefined) missing.push(column);
    return cell ?? mark;
  });
  for (const column of missing) tellMissing(column);
  return missing.length === 0 ? whole : undefined;
}
