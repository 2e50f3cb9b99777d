/** Suggestions for keys that a map lacks, each with a first value. */

import { generatorKeys } from '../../spec/read/read-generator.ts';
import { keyDocs, kindOfValue } from '../hover/docs.ts';
import { exampleSnippet } from '../examples.ts';
import type { SuggestionSetting } from '../examples.ts';
import { valueOfSnippet } from './suggestion.ts';
import type { Suggestion } from './suggestion.ts';
import type { NamePlace } from '../navigation/names.ts';
import { newEntrySuggestions, sheetSuggestions } from './new-entries.ts';
import { entrySeparator } from './cursor-context.ts';
import type { CursorContext } from './cursor-context.ts';
import { alternatives, isLength, schemasAt } from '../schema.ts';
import type { SchemaNode } from '../schema.ts';
import { Stops, yamlText } from './snippets.ts';
import type { WorkspaceNames } from '../workspace-names.ts';
import type { SuggestionTrial } from './trial.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import { withValue } from '../changed-copies.ts';

const generators = new Set<string>(generatorKeys);

/** Keys that a generator is useless without, in the order in which a writer thinks of them. */
const wanted: Readonly<Partial<Record<string, readonly string[]>>> = { text: ['font', 'width'], around: ['by'] };

/** Tried for a length if its example conflicts with the rest, such as a radius on a small plate. */
const otherLengths = ['1 mm', '5 mm', '20 mm', '60 mm', '150 mm', '0.2 mm'];

/** Keys that cause no new problem. */
export function keySuggestions(
  place: CursorContext,
  names: readonly NamePlace[],
  around: WorkspaceNames,
  trial: SuggestionTrial,
): Suggestion[] {
  const setting = { path: place.path, root: place.rest, names, uses: around.uses };
  const known = schemasAt(place.path, around.grammar?.root).flatMap(({ properties }) =>
    Object.entries(properties ?? {}),
  );
  const group = valueAt(place.rest, place.path);
  const missing = known.filter(([key]) => !isGroup(group) || !Object.hasOwn(group, key));
  const fits = (suggestion: Suggestion) => trial.brings(suggestion).every((problem) => isItsOwn(problem, suggestion));
  if (place.colon) return missing.map(([key, node]) => bareKey(key, node, place)).filter(fits);
  return [
    ...missing.flatMap(
      ([key, node]) =>
        first([...tableSuggestions(key, node, place, around), ...attempts(key, node, place, setting)], fits) ?? [],
    ),
    ...(around.grammar ? sheetSuggestions(place, setting) : newEntrySuggestions(place, setting, around)).filter(fits),
  ];
}

/** A first value is meant to be typed over: a problem that another value would avoid does not rule the key out. */
function isItsOwn(problem: string, { label }: Suggestion): boolean {
  return label === 'batch' && /There is no column|has no “/.test(problem);
}

/** `batch` with the tables beside the spec: with a table there, a list is seldom typed. */
function tableSuggestions(
  key: string,
  node: SchemaNode,
  place: CursorContext,
  { files }: WorkspaceNames,
): Suggestion[] {
  const found = key === 'batch' && place.path.length === 0 ? files.filter((file) => /\.csv$/i.test(file)) : [];
  return found.length === 0
    ? []
    : [suggestionOf(key, node, [`${key}: ${new Stops().choice(found.map(yamlText))}`], place)];
}

/** Replaces a key that already has its value. */
function bareKey(key: string, node: SchemaNode, place: CursorContext): Suggestion {
  const whole = withValue(place.rest, [...place.path, key], place.kept);
  return { ...keyDescription(key, node), snippet: key, whole };
}

function keyDescription(key: string, node: SchemaNode): Pick<Suggestion, 'kind' | 'label' | 'detail' | 'docs'> {
  const kind = generators.has(key) ? 'generator' : 'key';
  return { kind, label: key, detail: kindOfValue(node), docs: keyDocs(key, node) };
}

/** The key with one first value after another, likely ones first. */
function* attempts(
  key: string,
  node: SchemaNode,
  place: CursorContext,
  setting: SuggestionSetting,
): Generator<Suggestion | undefined> {
  if (wanted[key]) yield withWanted(key, node, wanted[key], place, setting);
  yield oneKey(key, node, place, setting);
  if (!isLength(alternatives(node)[0] ?? {})) return;
  for (const length of otherLengths) yield oneKey(key, { ...node, examples: [length] }, place, setting);
}

function first<T>(items: Iterable<T | undefined>, isWanted: (item: T) => boolean): T | undefined {
  for (const item of items) if (item !== undefined && isWanted(item)) return item;
  return undefined;
}

function oneKey(
  key: string,
  node: SchemaNode,
  place: CursorContext,
  setting: SuggestionSetting,
): Suggestion | undefined {
  const entry = entrySnippet(key, node, setting, new Stops());
  return entry === undefined ? undefined : suggestionOf(key, node, [entry], place);
}

/** The key together with the missing keys that it needs. */
function withWanted(
  key: string,
  node: SchemaNode,
  others: readonly string[],
  place: CursorContext,
  setting: SuggestionSetting,
): Suggestion | undefined {
  const stops = new Stops();
  const group = valueAt(setting.root, setting.path);
  const siblings = schemasAt(setting.path).find(({ properties }) => properties?.[key])?.properties ?? {};
  const entries = [
    entrySnippet(key, node, setting, stops),
    ...others
      .filter((other) => siblings[other] && !(isGroup(group) && Object.hasOwn(group, other)))
      .map((other) => entrySnippet(other, siblings[other]!, setting, stops)),
  ];
  return entries.some((entry) => entry === undefined) ? undefined : suggestionOf(key, node, entries as string[], place);
}

function entrySnippet(key: string, node: SchemaNode, setting: SuggestionSetting, stops: Stops): string | undefined {
  const value = exampleSnippet(node, { ...setting, path: [...setting.path, key] }, stops);
  return value === undefined ? undefined : `${key}: ${value}`;
}

function suggestionOf(key: string, node: SchemaNode, entries: readonly string[], place: CursorContext): Suggestion {
  const added = valueOfSnippet(`{${entries.join(', ')}}`);
  const group = valueAt(place.rest, place.path);
  const whole = withValue(place.rest, place.path, {
    ...(isGroup(group) ? group : {}),
    ...(isGroup(added) ? added : {}),
  });
  return { ...keyDescription(key, node), snippet: entries.join(entrySeparator(place)), whole };
}
