/** Candidates: edits that may help, before they have been tried. */

import { samePath, valueAt as valueIn } from '../core/values.ts';
import { mmPerInch, shortLength } from '../core/units.ts';
import type { Units } from '../core/units.ts';
import { columnsIn } from '../spec/batch/batch.ts';
import { asksForColumns } from '../spec/batch/row-values.ts';
import type { Report } from '../engine/engine.ts';
import type { Issue, TextEdit, YamlPath } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { TagModel } from '../spec/model/model.ts';
import type { Piece, Tag } from '../tag/tag.ts';

/** One change of the text and its description, such as “grow 0.49 mm”. */
export interface Candidate {
  readonly description: string;
  readonly edits: readonly TextEdit[];
}

/** One way to help, in words, and the changes to try for it, smallest first. */
export interface Remedy {
  readonly words: string;
  readonly candidates: readonly Candidate[];
  /** Whether it changes how tags are meant, and is made only when asked for. */
  readonly isChoice?: true;
  /** Whether a tag that had the problem looks better for it; always, if left out. */
  readonly isWorth?: (was: Report, is: Report) => boolean;
}

/** An issue with everything known about the tag it was found on. */
export interface Case {
  readonly issue: Issue;
  readonly report: Report;
  readonly model: TagModel;
  readonly tag: Tag;
  readonly piece: Piece | undefined;
}

/** Steps of lengths and of moves as a maker writes them, in mm: 0.05 mm or two thousandths of an inch, and about twice that. */
export const lengthStep: Readonly<Record<Units, number>> = { mm: 0.05, in: 0.002 * mmPerInch };
export const moveStep: Readonly<Record<Units, number>> = { mm: 0.1, in: 0.005 * mmPerInch };

/**
 * A length as written into a spec: in the spec's own unit, in round steps.
 * @param from What it was, in mm: rounded away from that, so that rounding never undoes part of the change.
 */
export function specLength(mm: number, units: Units, from = 0): string {
  return shortLength(inSteps(mm, lengthStep[units], from), units);
}

/** The next multiple of the step beyond `mm`, away from `from`. */
export function inSteps(mm: number, step: number, from: number): number {
  const steps = mm / step;
  return step * (mm < from ? Math.floor(steps + 1e-6) : Math.ceil(steps - 1e-6));
}

/**
 * Sets a key of the map at `path`; empty if there is no map. A value that comes from a column is changed in its row
 * only.
 */
export function setting(at: Case, path: YamlPath, key: string, text: string): Candidate[] {
  const { source } = at.report;
  const written = valueAt(at, [...path, key]);
  const edit = asksForColumns(written, key) ? inCell(at, String(written), text) : source.setKey(path, key, text);
  return edit ? [{ description: `${key} ${text}`, edits: [edit] }] : [];
}

/** `undefined` if the row comes from a table, or the value is more than one cell. */
function inCell({ report, issue }: Case, written: string, text: string): TextEdit | undefined {
  const [column, more] = columnsIn(written);
  const row = report.batch?.rows[issue.row ?? report.row];
  const place = more || written.trim() !== `{${column!.column}}` ? undefined : row?.places?.get(column!.column);
  return place && { range: report.source.range(place), text };
}

/** `setting` for each of several lengths in mm, rounded away from what it was. */
export function settingLengths(
  at: Case,
  path: YamlPath,
  key: string,
  lengths: readonly number[],
  from = 0,
): Candidate[] {
  const texts = new Set(lengths.map((mm) => specLength(mm, at.tag.units, from)));
  return [...texts].flatMap((text) => setting(at, path, key, text));
}

/** Replaces the value at `path`. */
export function replacing({ report }: Case, path: YamlPath, text: string): TextEdit {
  return { range: report.source.range(path), text };
}

/** The value at `path` in the text. */
export function valueAt({ report }: Case, path: YamlPath): unknown {
  return valueIn(report.source.value, path);
}

/** Growth of a shape in mm, including growth that was computed for `auto`. */
export function growthOf({ tag }: Case, shape: Shape): number {
  return shape.modifiers.grow ?? tag.growths?.get(shape) ?? 0;
}

/** The shape written at `path`, named or inside a piece's lists. */
export function shapeAt({ tag }: Case, path: YamlPath): Shape | undefined {
  return [...tag.made.keys()].find((shape) => samePath(shape.path, path));
}

/** Name of a shape in titles. */
export function shapeTitle({ name }: Shape): string {
  return name === undefined ? 'the shape' : `“${name}”`;
}

/** The key that gives a shape its size, and the size in mm; `undefined` if it has none of its own. */
export function sizeOf({ generator, modifiers: { width, height } }: Shape): Size | undefined {
  const font = generator.kind === 'text' ? generator.size : undefined;
  if (font) return { key: fontSizeKeys[font.of], mm: font.mm };
  if (width !== undefined) return { key: 'width', mm: width };
  return height === undefined ? undefined : { key: 'height', mm: height };
}

interface Size {
  readonly key: 'width' | 'height' | (typeof fontSizeKeys)[keyof typeof fontSizeKeys];
  readonly mm: number;
}

/** Key of a text's size, by the part of the font that it measures. */
export const fontSizeKeys = { em: 'size', capitals: 'cap_height', 'small letters': 'x_height' } as const;
