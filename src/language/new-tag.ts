/** Makes a new tag from a sample, with other words, another font, another size. */

import { newLineOf } from '../core/lines.ts';
import { withEdits } from '../fixes/find-fixes.ts';
import type { YamlPath } from '../core/issue.ts';
import { roundInches, type Units } from '../core/units.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { columnsIn } from '../spec/batch/batch.ts';
import { namesOfBatch, withNames } from './names-of-batch.ts';
import type { NamesOfBatch } from './names-of-batch.ts';
import { yamlText } from './completion/snippets.ts';
import { isGroup, unitsOf, valueAt } from '../core/values.ts';
import { withPlateWidth } from './plate-width.ts';
import { unitConversion } from './refactor/convert-units.ts';

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
  /** Replace the words of the sample that are its own, in order; missing or blank ones leave them unchanged. */
  readonly texts: readonly string[];
  /** For each a tag, of a sample that is for a list of names. */
  readonly names?: readonly string[];
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

/** The names that a sample is for; `undefined` if it is for no list. */
export function namesToAsk(source: SpecSource): NamesOfBatch | undefined {
  return namesOfBatch(
    source,
    letteringOf(source).map(({ text }) => text),
  );
}

/** The lettering that has words of its own: what the rows of a batch put there is not asked for. */
export function wordsToAsk(source: SpecSource): LetteringChoice[] {
  const isBatch = valueAt(source.value, ['batch']) !== undefined;
  return letteringOf(source).filter(({ text }) => !isBatch || columnsIn(text).length === 0);
}

function textAt(path: YamlPath, value: unknown): LetteringChoice[] {
  if (!isGroup(value) || typeof value['text'] !== 'string') return [];
  const { text, font } = value;
  return [{ path, text, ...(typeof font === 'string' ? { font } : {}) }];
}

export function tagOf(sample: string, { texts, names = [], font, width }: TagChoices): string {
  const source = new SpecSource(sample);
  const listed = names.length > 0 ? namesToAsk(source) : undefined;
  let spec = listed ? withNames(sample, listed, names) : sample;
  for (const [index, { path, text: old }] of wordsToAsk(source).entries()) {
    const text = texts[index]?.trim();
    if (!text) continue;
    const title = valueAt(new SpecSource(spec).value, ['title']);
    if (typeof title === 'string') spec = withKey(spec, [], 'title', yamlText(retitled(title, old, text, index === 0)));
    spec = withKey(spec, path, 'text', yamlText(text));
    if (text !== old) spec = withoutGrowth(spec, path);
  }
  const [first] = letteringOf(source);
  if (font !== undefined && first) {
    spec = withKey(spec, first.path, 'font', yamlText(font));
    if (font !== first.font) spec = withoutGrowth(spec, first.path);
  }
  if (width !== undefined) spec = withWidth(spec, first, width);
  return spec;
}

/** Growth that suits the words of a sample fills smaller letters in, and does not join all others. */
function withoutGrowth(spec: string, path: YamlPath): string {
  const source = new SpecSource(spec);
  const at = [...path, 'grow'];
  if (valueAt(source.value, at) === undefined) return spec;
  const range = { start: source.keyRange(at).start, end: source.range(at).end };
  return withEdits(spec, [{ range, text: 'overlap: auto' }]);
}

/** Most titles contain the word on the tag; the first text is put in front of one that does not. */
function retitled(title: string, old: string, text: string, isFirst: boolean): string {
  if (title.includes(old)) return title.replace(old, () => text);
  return isFirst && text !== old ? `${text}, ${title.slice(0, 1).toLowerCase()}${title.slice(1)}` : title;
}

/** Takes the stock or the tie from a file, which the spec then uses. `file`: path from the spec. */
export function fromWorkshop(spec: string, key: 'stock' | 'tie', file: string, name: string): string {
  const chosen = withKey(spec, [], key, yamlText(name));
  const use = valueAt(new SpecSource(chosen).value, ['use']);
  const used: readonly unknown[] = Array.isArray(use) ? use : use === undefined ? [] : [use];
  if (used.includes(file)) return chosen;
  // A sample uses nothing by itself; what is there was chosen before.
  if (use !== undefined)
    return withKey(chosen, [], 'use', `[${[...used, file].map((each) => yamlText(String(each))).join(', ')}]`);
  const newLine = newLineOf(chosen);
  return chosen.replace(/^tagwright: *1.*$/m, (line) => `${line.trimEnd()}${newLine}use: ${yamlText(file)}`);
}

/** The unit of a new tag: that of the workshop's files, or else of the specs there are, if they agree. */
export function usualUnits(workshops: readonly unknown[], specs: readonly unknown[]): Units {
  const all = workshops.length > 0 ? workshops : specs;
  return all.length > 0 && all.every((each) => unitsOf(each) === 'in') ? 'in' : 'mm';
}

/** A sample with its sizes in round figures of the unit. */
export function sampleIn(units: Units, sample: string): string {
  const source = new SpecSource(sample);
  if (units === unitsOf(source.value)) return sample;
  const round = (mm: number): string => `${roundInches(mm)} in`;
  return withEdits(sample, unitConversion(source, round)?.edits ?? []);
}

/** Whether a width is that of the finished tag. */
export function isOnePiece({ value }: SpecSource): boolean {
  const pieces = valueAt(value, ['pieces']);
  return isGroup(pieces) && Object.keys(pieces).length === 1;
}

/** Where a plate says its width, and nothing beside it makes the tag wider, the plate has it; else the piece. */
function withWidth(spec: string, first: LetteringChoice | undefined, width: string): string {
  const source = new SpecSource(spec);
  const pieces = valueAt(source.value, ['pieces']);
  const [only] = Object.keys(isGroup(pieces) ? pieces : {});
  if (only !== undefined && isOnePiece(source)) {
    return withPlateWidth(source, width) ?? withKey(spec, ['pieces', only], 'width', width);
  }
  if (!first) return spec;
  // Lines have their size together.
  const path = first.path.slice(0, 2);
  const shape = valueAt(source.value, path);
  const side = isGroup(shape) && 'height' in shape ? 'height' : 'width';
  return withKey(spec, path, side, width);
}

function withKey(spec: string, path: YamlPath, key: string, text: string): string {
  const edit = new SpecSource(spec).setKey(path, key, text);
  return edit ? withEdits(spec, [edit]) : spec;
}
