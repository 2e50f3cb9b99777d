/** The same tag for a list: the cells that each row of `batch` puts in place of `{column}`. */

import type { YamlPath } from '../../core/issue.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import type { UsedFile } from '../files/used-files.ts';

/** Column name for the entries of a plain list. */
export const nameColumn = 'name';

export interface BatchRow {
  /** The first cell, or in a table the first that the words of the spec ask for; it stands for the row in lists and file names. */
  readonly label: string;
  readonly cells: ReadonlyMap<string, string>;
  readonly path: YamlPath;
  /** For a list in the spec: the path of each cell. */
  readonly places?: ReadonlyMap<string, YamlPath>;
  /** Line in the table it comes from, counting from 1. */
  readonly line?: number;
  /** What a table has in its row beyond its columns. */
  readonly beyond?: readonly string[];
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

/** Whether a text is empty, or all the cells that it asks for are. */
export function isEmptyIn(text: string, row: BatchRow | undefined, columns: readonly string[]): boolean {
  if (text.trim() === '') return true;
  const asked = row ? columnsIn(text).map(({ column }) => column) : [];
  return asked.length > 0 && asked.every((column) => columns.includes(column) && !row!.cells.get(column)?.trim());
}

/** Every column that a text of the spec, or of a file it uses, refers to. */
export function columnsOf(
  source: Pick<SpecPlaces, 'value'>,
  used: readonly UsedFile[],
  textsOf: (value: unknown) => string[] = textsIn,
): Set<string> {
  const texts = [source.value, ...withAllUsed(used).map((file) => file.source.value)].flatMap((value) =>
    textsOf(value),
  );
  return new Set(texts.flatMap((text) => columnsIn(text).map(({ column }) => column)));
}

/** The columns that words on the tag, or its title, refer to: any of them may name it, as a width would not. */
export function columnsInWords(source: Pick<SpecPlaces, 'value'>, used: readonly UsedFile[]): Set<string> {
  return columnsOf(source, used, wordsIn);
}

const wordKeys: ReadonlySet<unknown> = new Set(['text', 'lines', 'title']);

function wordsIn(value: unknown, under?: unknown): string[] {
  if (typeof value === 'string') return wordKeys.has(under) ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  const isList = Array.isArray(value);
  return Object.entries(value).flatMap(([key, inner]) => wordsIn(inner, isList ? under : key));
}

function withAllUsed(used: readonly UsedFile[]): UsedFile[] {
  return used.flatMap((file) => [file, ...withAllUsed(file.uses)]);
}

/** Every text in a value of a spec that may ask for columns. */
export function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === 'batch' ? [] : textsIn(inner)));
}

/** Names of a batch that may be set aside for the good of all others: three in twenty, and no more than are looked through at once. Our own judgement. */
const asideShare = 0.15;
const mostAside = 5;

export function mostSetAside(tags: number): number {
  return Math.min(mostAside, Math.ceil(asideShare * tags));
}
