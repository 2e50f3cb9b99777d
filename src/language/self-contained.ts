/**
 * Makes a spec self-contained by inserting the values of the files it uses, so that it gives the same tag when it is
 * sent alone.
 */

import { newLineOf } from '../core/lines.ts';
import { removeKey } from '../edits/remove-key.ts';
import { withValue } from '../edits/set-value.ts';
import { withEdits } from '../core/issue.ts';
import type { YamlPath } from '../core/issue.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { onMachine } from '../spec/read/stock-on-machine.ts';
import { folderOf, joinedPath } from '../spec/files/used-files.ts';
import { allUsedFiles } from '../spec/files/used-files.ts';
import type { Uses } from '../spec/files/used-files.ts';
import { isFontFile } from '../text/font-files.ts';
import { namesIn } from './navigation/names.ts';
import { isLength, nameKindOf, schemasAt } from './schema.ts';
import { flowOf } from './along/spec-text.ts';
import { isGroup, valueAt, unitsOf } from '../core/values.ts';

export type SelfContained = { readonly text: string } | { readonly problem: string };

type Group = Readonly<Record<string, unknown>>;

/** A used file with what is needed from it. */
interface File {
  readonly name: string;
  readonly value: unknown;
  readonly units: string;
}

const single = ['stock', 'tie', 'sheet', 'machine', 'output'] as const;
const named = { shape: 'shapes', hanger: 'hangers', stock: 'stocks', tie: 'ties', machine: 'machines' } as const;

/** `source`: a spec without errors, whose used files have been read. Returns its text unchanged if it uses none. */
export function selfContained(source: SpecSource, { used }: Pick<Uses, 'used'>): SelfContained {
  if (valueAt(source.value, ['use']) === undefined) return { text: source.text };
  const files = allUsedFiles(used).map(({ name, source: { value } }) => ({ name, value, units: unitsOf(value) }));
  const units = unitsOf(source.value);
  if (files.some((file) => file.units !== units && hasPathData(file.value)))
    return {
      problem:
        'A file that this spec uses is in other units and has a shape drawn by path data, which cannot be converted.',
    };
  const carried = (file: File, path: YamlPath, value: unknown) => {
    return flowOf(carriedValue(value, path, file, file.units === units ? undefined : file.units));
  };
  let { text } = source;
  const put = (path: YamlPath, value: string) => {
    const changed = withSection(text, path, value);
    if (changed === undefined) return false;
    text = changed;
    return true;
  };
  for (const key of single) {
    const definingFile = valueAt(source.value, [key]) === undefined ? fileWith(files, [key]) : undefined;
    // A machine from a file ranks below that of the stock, and is inserted together with it.
    if (!definingFile || (key === 'machine' && stockMachine(text, files))) continue;
    if (!put([key], carried(definingFile, [key], valueAt(definingFile.value, [key])))) return failure(key);
  }
  const taken = (file: File, path: YamlPath, schemaPath: YamlPath): unknown =>
    carriedValue(valueAt(file.value, path), schemaPath, file, file.units === units ? undefined : file.units);
  const own = { name: '', value: source.value, units };
  const machine = machineFor([own, ...files], taken);
  for (const key of ['stock', 'tie'] as const) {
    const name = valueAt(new SpecSource(text).value, [key]);
    const path = [`${key}s`, String(name)];
    const definingFile = typeof name === 'string' ? fileWith(files, path) : undefined;
    if (!definingFile) continue;
    const value = taken(definingFile, path, [key]);
    const whole = key === 'stock' && isGroup(value) ? workedStock(value, machine) : value;
    if (!put([key], flowOf(whole))) return failure(key);
    // Its values are now part of the stock.
    if (key === 'stock' && machine.name !== undefined) text = withoutKey(text, 'machine') ?? text;
  }
  // An inserted value may refer to further names.
  for (let missing = missingIn(text, files); missing; missing = missingIn(text, files)) {
    const { file, path } = missing;
    if (!put(path, carried(file, path, valueAt(file.value, path)))) return failure(String(path[0]));
  }
  const last = withoutKey(text, 'use');
  return last === undefined ? failure('use') : { text: last };
}

function failure(key: string): SelfContained {
  return { problem: `“${key}” could not be written into the spec.` };
}

/** Whether the chosen stock states its own machine. */
function stockMachine(text: string, files: readonly File[]): boolean {
  const name = valueAt(new SpecSource(text).value, ['stock']);
  const path = ['stocks', String(name), 'machine'];
  return typeof name === 'string' && fileWith(files, path) !== undefined;
}

interface ChosenMachine {
  readonly name?: string;
  /** What it adds to the machine of a stock; absent if the spec's own values take precedence. */
  readonly value?: unknown;
}

/** `files`: the spec comes first. */
function machineFor(
  files: readonly File[],
  taken: (file: File, path: YamlPath, schemaPath: YamlPath) => unknown,
): ChosenMachine {
  const definingFile = fileWith(files, ['machine']);
  const written = definingFile && valueAt(definingFile.value, ['machine']);
  if (!definingFile || typeof written !== 'string')
    return definingFile && definingFile !== files[0] ? { value: taken(definingFile, ['machine'], ['machine']) } : {};
  const path = ['machines', written];
  const owner = fileWith(files, path);
  return { name: written, value: owner && taken(owner, path, ['machine']) };
}

/** A stock from a file, reduced to its values for the chosen machine. */
function workedStock(stock: Group, { name, value }: ChosenMachine): Group {
  const over = name === undefined ? undefined : valueAt(stock, ['machines', name]);
  const own = Object.entries(isGroup(over) ? onMachine(stock, over) : stock);
  const rest = Object.fromEntries(own.filter(([key]) => key !== 'machine' && key !== 'machines'));
  const { machine } = stock;
  const ofStock = isGroup(over) && isGroup(over['machine']) ? mergedOver(over['machine'], machine) : machine;
  if (name === undefined && ofStock === undefined) return rest;
  const worked = isGroup(ofStock) ? mergedOver(ofStock, value) : value;
  return isGroup(worked) && Object.keys(worked).length > 0 ? { ...rest, machine: worked } : rest;
}

function withoutKey(text: string, key: string): string | undefined {
  const source = new SpecSource(text);
  if (valueAt(source.value, [key]) === undefined) return undefined;
  const edit = removeKey(source, [key], Object.keys((source.value as Group | undefined) ?? {}).length - 1);
  return edit && withEdits(text, [edit]);
}

/** Merges two maps key by key; `over` takes precedence. */
function mergedOver(over: Group, under: unknown): Group {
  if (!isGroup(under)) return over;
  const keys = new Set([...Object.keys(under), ...Object.keys(over)]);
  return Object.fromEntries(
    [...keys].map((key) => {
      const [first, second] = [over[key], under[key]];
      return [key, isGroup(first) && isGroup(second) ? mergedOver(first, second) : (first ?? second)];
    }),
  );
}

function fileWith(files: readonly File[], path: YamlPath): File | undefined {
  return files.find(({ value }) => valueAt(value, path) !== undefined);
}

/** A name that the text uses without defining it, and the file that defines it. */
function missingIn(text: string, files: readonly File[]): { readonly file: File; readonly path: YamlPath } | undefined {
  const source = new SpecSource(text);
  for (const { kind, name, isDefinition } of namesIn(source)) {
    if (
      isDefinition ||
      (kind !== 'shape' &&
        kind !== 'hanger' &&
        kind !== 'stock' &&
        kind !== 'tie' &&
        kind !== 'machine' &&
        kind !== 'part')
    )
      continue;
    const path = [named[kind === 'part' ? 'shape' : kind], name];
    if (valueAt(source.value, path) !== undefined) continue;
    const file = fileWith(files, path);
    if (file) return { file, path };
  }
  return undefined;
}

/** Adds the section after the others if there is none. */
function withSection(text: string, path: YamlPath, value: string): string | undefined {
  const [section, name] = path;
  const source = new SpecSource(text);
  if (name === undefined || valueAt(source.value, [section!]) !== undefined) return withValue(text, path, value);
  const newLine = newLineOf(text);
  return `${text.trimEnd()}${newLine}${newLine}${String(section)}:${newLine}  ${String(name)}: ${value}${newLine}`;
}

/** Adds units to bare numbers of a file with other units, and makes file paths relative to the spec. */
function carriedValue(value: unknown, path: YamlPath, file: File, units: string | undefined): unknown {
  if (Array.isArray(value)) return value.map((each, i) => carriedValue(each, [...path, i], file, units));
  if (isGroup(value))
    return Object.fromEntries(
      Object.entries(value).map(([key, each]) => [key, carriedValue(each, [...path, key], file, units)]),
    );
  const schemas = schemasAt(path);
  if (units !== undefined && schemas.some(isLength) && isBare(value)) return `${String(value).trim()} ${units}`;
  return fileKind(value, path) ? joinedPath(folderOf(file.name), value as string) : value;
}

/** Whether the value at a path of a spec is the name of a file, and of which kind. */
export function fileKind(value: unknown, path: YamlPath): 'font' | 'drawing' | undefined {
  if (typeof value !== 'string') return undefined;
  const kind = schemasAt(path)
    .map(nameKindOf)
    .find((each) => each === 'font' || each === 'drawing');
  return kind === 'font' && !isFontFile(value) ? undefined : kind;
}

function isBare(value: unknown): boolean {
  return typeof value === 'number' || (typeof value === 'string' && /^[-+]?[\d./ ]+$/.test(value.trim()));
}

function hasPathData(value: unknown): boolean {
  if (Array.isArray(value)) return value.some(hasPathData);
  return isGroup(value) && (typeof value['path'] === 'string' || Object.values(value).some(hasPathData));
}
