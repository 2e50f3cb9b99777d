/** Makes a new tag from a sample, with other words, another font, another size. */

import { newLineOf } from '../core/lines.ts';
import { withEdits } from '../fixes/find-fixes.ts';
import type { YamlPath } from '../core/issue.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { yamlText } from './completion/snippets.ts';
import { isGroup, valueAt } from '../core/values.ts';

/** Kinds of tag, after the samples that they begin as. Some samples are no kind: they show faults, or measure. */
export const kindNames: Readonly<Record<string, string>> = {
  '1-jar-initial.tag.yaml': 'Cut-out initial',
  '2-script-name.tag.yaml': 'Script name',
  '3-engraved-backing.tag.yaml': 'Word engraved on a backing',
  '4-glued-letters.tag.yaml': 'Letters glued on a backing',
  '5-stacked-plate.tag.yaml': 'Stacked plate',
  '6-bed-arrow.tag.yaml': 'Arrow',
  '8-round-token.tag.yaml': 'Disc, words on a circle',
  '9-luggage-label.tag.yaml': 'Luggage label',
  '10-seedling-names.tag.yaml': 'One label for a list of names',
};

export interface LetteringChoice {
  readonly path: YamlPath;
  readonly text: string;
  /** Absent if the spec leaves it to the default. */
  readonly font?: string;
}

export interface TagChoices {
  /** Replace the lettering of the sample, in order; missing or blank ones leave it unchanged. */
  readonly texts: readonly string[];
  /** Font of the first lettering. */
  readonly font?: string;
  /** Width of the whole tag if it is one piece, else of the first lettering, to which the pieces are fitted. */
  readonly width?: string;
}

/** The text of every named shape, and of every line of those that have several. */
export function letteringOf({ value }: SpecSource): LetteringChoice[] {
  const shapes = valueAt(value, ['shapes']);
  return Object.entries(isGroup(shapes) ? shapes : {}).flatMap(([name, shape]): LetteringChoice[] => {
    const path = ['shapes', name];
    const lines = isGroup(shape) ? shape['lines'] : undefined;
    return Array.isArray(lines)
      ? lines.flatMap((line: unknown, index) => textAt([...path, 'lines', index], line))
      : textAt(path, shape);
  });
}

function textAt(path: YamlPath, value: unknown): LetteringChoice[] {
  if (!isGroup(value) || typeof value['text'] !== 'string') return [];
  const { text, font } = value;
  return [{ path, text, ...(typeof font === 'string' ? { font } : {}) }];
}

export function tagOf(sample: string, { texts, font, width }: TagChoices): string {
  const lettering = letteringOf(new SpecSource(sample));
  let spec = sample;
  for (const [index, { path, text: old }] of lettering.entries()) {
    const text = texts[index]?.trim();
    if (!text) continue;
    const title = valueAt(new SpecSource(spec).value, ['title']);
    if (typeof title === 'string') spec = withKey(spec, [], 'title', yamlText(retitled(title, old, text, index === 0)));
    spec = withKey(spec, path, 'text', yamlText(text));
  }
  const [first] = lettering;
  if (font !== undefined && first) spec = withKey(spec, first.path, 'font', yamlText(font));
  if (width !== undefined) spec = withWidth(spec, first, width);
  return spec;
}

/** Most titles contain the word on the tag; the first text is put in front of one that does not. */
function retitled(title: string, old: string, text: string, isFirst: boolean): string {
  if (title.includes(old)) return title.replace(old, () => text);
  return isFirst && text !== old ? `${text}, ${title.slice(0, 1).toLowerCase()}${title.slice(1)}` : title;
}

/** Takes the stock from a file, which the spec then uses. `file`: path from the spec. */
export function fromStock(spec: string, file: string, name: string): string {
  const chosen = withKey(spec, [], 'stock', name);
  const use = valueAt(new SpecSource(chosen).value, ['use']);
  if (use !== undefined) return withKey(chosen, [], 'use', yamlText(file));
  const newLine = newLineOf(chosen);
  return chosen.replace(/^tagwright: *1.*$/m, (line) => `${line.trimEnd()}${newLine}use: ${yamlText(file)}`);
}

/** Whether a width is that of the finished tag. */
export function isOnePiece({ value }: SpecSource): boolean {
  const pieces = valueAt(value, ['pieces']);
  return isGroup(pieces) && Object.keys(pieces).length === 1;
}

function withWidth(spec: string, first: LetteringChoice | undefined, width: string): string {
  const pieces = valueAt(new SpecSource(spec).value, ['pieces']);
  const [only] = Object.keys(isGroup(pieces) ? pieces : {});
  if (only !== undefined && isOnePiece(new SpecSource(spec))) return withKey(spec, ['pieces', only], 'width', width);
  if (!first) return spec;
  // Lines have their size together.
  const path = first.path.slice(0, 2);
  const shape = valueAt(new SpecSource(spec).value, path);
  const side = isGroup(shape) && 'height' in shape ? 'height' : 'width';
  return withKey(spec, path, side, width);
}

function withKey(spec: string, path: YamlPath, key: string, text: string): string {
  const edit = new SpecSource(spec).setKey(path, key, text);
  return edit ? withEdits(spec, [edit]) : spec;
}
