/** Edits that may help, before anyone knows whether they do. */

import { valueAt as valueIn } from '../core/values.ts';
import { finest, shortLength } from '../core/units.ts';
import { columnsIn } from '../spec/batch.ts';
import { asksForColumns } from '../spec/row-values.ts';
import type { Report } from '../engine/engine.ts';
import type { Issue, TextEdit, YamlPath } from '../core/issue.ts';
import type { Shape, TagModel } from '../spec/model.ts';
import type { Piece, Tag } from '../tag/tag.ts';

/** One change of the text and what it does, such as “grow 0.49 mm”. */
export interface Candidate {
  readonly told: string;
  readonly edits: readonly TextEdit[];
}

/** One way to help, in words, and the changes to try for it, least first. */
export interface Remedy {
  readonly words: string;
  readonly candidates: readonly Candidate[];
}

/** An issue with all that is known of the tag it was found on. */
export interface Case {
  readonly issue: Issue;
  readonly report: Report;
  readonly model: TagModel;
  readonly tag: Tag;
  readonly piece: Piece | undefined;
}

/** A length as it is put into a spec: in the spec's own unit, to a hundredth of a millimetre. */
export function written(mm: number, units: 'mm' | 'in'): string {
  if (units === 'in') return shortLength(mm, units, finest);
  // Away from nothing, so that rounding never takes back what is needed.
  const hundredths = mm < 0 ? Math.floor(mm * 100 - 1e-6) : Math.ceil(mm * 100 - 1e-6);
  return `${hundredths / 100} mm`;
}

/** The map at `path` gets this key and value; none where there is no map. What a column gives is changed in its row alone. */
export function setting(at: Case, path: YamlPath, key: string, text: string): Candidate[] {
  const { source } = at.report;
  const written = valueAt(at, [...path, key]);
  const edit = asksForColumns(written, key) ? inCell(at, String(written), text) : source.setKey(path, key, text);
  return edit ? [{ told: `${key} ${text}`, edits: [edit] }] : [];
}

/** `undefined` where the row is of a table, or the value is more than one cell. */
function inCell({ report, issue }: Case, written: string, text: string): TextEdit | undefined {
  const [column, more] = columnsIn(written);
  const row = report.batch?.rows[issue.row ?? report.row];
  const place = more || written.trim() !== `{${column!.column}}` ? undefined : row?.places?.get(column!.column);
  return place && { range: report.source.range(place), text };
}

/** The same for each of some lengths in mm. */
export function settingLengths(at: Case, path: YamlPath, key: string, lengths: readonly number[]): Candidate[] {
  return lengths.flatMap((mm) => setting(at, path, key, written(mm, at.tag.units)));
}

/** The value at `path` is put by another. */
export function replacing({ report }: Case, path: YamlPath, text: string): TextEdit {
  return { range: report.source.range(path), text };
}

/** What the text has at `path`. */
export function valueAt({ report }: Case, path: YamlPath): unknown {
  return valueIn(report.source.value, path);
}

export function samePath(a: YamlPath, b: YamlPath): boolean {
  return a.length === b.length && a.every((step, index) => step === b[index]);
}

/** By how much a shape is grown, in mm, also where it is to grow as much as it needs. */
export function growthOf({ tag }: Case, shape: Shape): number {
  return shape.modifiers.grow ?? tag.growths?.get(shape) ?? 0;
}

/** The shape that is written at `path`: named ones and those written in a piece's lists. */
export function shapeAt({ tag }: Case, path: YamlPath): Shape | undefined {
  return [...tag.made.keys()].find((shape) => samePath(shape.path, path));
}

/** How a shape is called in titles. */
export function nameOf({ name }: Shape): string {
  return name === undefined ? 'the shape' : `“${name}”`;
}

/** The keys of a text's size by what of the font they measure. */
export const fontSizeKeys = { em: 'size', capitals: 'cap_height', 'small letters': 'x_height' } as const;
