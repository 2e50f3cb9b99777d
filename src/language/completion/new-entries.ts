/** Suggestions for whole entries: a new shape or piece under a new name, or a whole tag in an empty file. */

import { freeName } from '../../core/names.ts';
import { generatorKeys } from '../../spec/read/read-generator.ts';
import { exampleSnippet, inUnits, namesFor } from '../examples.ts';
import type { SuggestionSetting } from '../examples.ts';
import { valueOfSnippet } from './suggestion.ts';
import type { Suggestion } from './suggestion.ts';
import { entrySeparator } from './cursor-context.ts';
import type { CursorContext } from './cursor-context.ts';
import { resolved, specSchema } from '../schema.ts';
import { literal, Stops } from './snippets.ts';
import type { WorkspaceNames } from '../workspace-names.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import { withValue } from '../changed-copies.ts';

export function newEntrySuggestions(
  place: CursorContext,
  setting: SuggestionSetting,
  around: WorkspaceNames,
): Suggestion[] {
  const section = place.path.length === 1 ? place.path[0] : undefined;
  if (section === 'shapes') return shapeSuggestions(place, setting);
  if (section === 'pieces') return pieceSuggestions(place, setting);
  if (place.path.at(-1) === 'machines' && section === undefined) return machineSuggestions(place, setting);
  return place.path.length === 0
    ? [...sectionSuggestions(place, setting), ...tagSuggestions(place, setting, around)]
    : [];
}

/** Default names, used when nothing has been typed. */
const usualNames: Readonly<Partial<Record<string, string>>> = {
  text: 'word',
  rectangle: 'plate',
  ellipse: 'disc',
  around: 'backing',
  stack: 'plate',
  drawing: 'picture',
  border: 'edge',
  code: 'link',
  stick: 'spike',
  repeat: 'row',
};

/** One for each generator, under the name that has been typed. */
function shapeSuggestions(place: CursorContext, setting: SuggestionSetting): Suggestion[] {
  return generatorKeys.flatMap((key): Suggestion[] => {
    const stops = new Stops();
    const name = place.written || freeEntry(usualNames[key] ?? key, place);
    const start = `${stops.stop(name)}: `;
    const path = ['shapes', name];
    const group = shapeSnippet(key, { ...setting, path }, stops);
    if (group === undefined) return [];
    const shown = place.written ? `${name}: ${key} …` : `${key} …`;
    const docs = resolved(specSchema.definitions!['shape']!).properties?.[key]?.description ?? '';
    return [{ ...entry(shown, start + group, place), docs, detail: 'new shape', ...asTyped(place) }];
  });
}

/** Keys that a generator is useless without. */
const alongWith: Readonly<Partial<Record<string, readonly string[]>>> = {
  text: ['font', 'width'],
  around: ['by'],
  code: ['size'],
};

/** `{text: Sorrel, …}`: the generator with the keys that it is useless without. */
export function shapeSnippet(key: string, setting: SuggestionSetting, stops: Stops): string | undefined {
  const { properties = {} } = resolved(specSchema.definitions!['shape']!);
  const keys = [key, ...(alongWith[key] ?? [])];
  const entries = keys.map((each) => {
    const value = exampleSnippet(properties[each]!, { ...setting, path: [...setting.path, each] }, stops);
    return value === undefined ? undefined : `${each}: ${value}`;
  });
  return entries.includes(undefined) ? undefined : `{${entries.join(', ')}}`;
}

function pieceSuggestions(place: CursorContext, setting: SuggestionSetting): Suggestion[] {
  const hangers = [undefined, 'ring', 'hole', 'slot', 'keyhole'] as const;
  return hangers.flatMap((hanger): Suggestion[] => {
    const stops = new Stops();
    const name = place.written || freeEntry('tag', place);
    const start = stops.stop(name);
    const { properties = {} } = resolved(specSchema.definitions!['piece']!);
    const body = exampleSnippet(properties['body']!, { ...setting, path: ['pieces', name, 'body'] }, stops);
    const keys = [
      `body: ${body ?? `[{ellipse: ${stops.stop(inUnits('30 mm', setting.root))}}]`}`,
      ...(hanger ? [`hanger: {${hanger}: {at: ${stops.choice(hanger === 'ring' ? ['auto', ...sides] : sides)}}}`] : []),
    ];
    const separator = entrySeparator(place);
    const snippet = place.flow
      ? `${start}: {${keys.join(separator)}}`
      : `${start}:\n${keys.map((key) => `  ${key}`).join('\n')}`;
    const what = hanger ? `piece with a ${hanger} …` : 'piece …';
    const suggestion = entry(place.written ? `${name}: ${what}` : what, `${start}: {${keys.join(', ')}}`, place);
    return [{ ...suggestion, snippet, detail: 'new piece', ...asTyped(place) }];
  });
}

/** The known machines, for values of a stock that differ by machine. */
function machineSuggestions(place: CursorContext, setting: SuggestionSetting): Suggestion[] {
  const there = valueAt(place.rest, place.path);
  const names = namesFor('machine', setting).filter((name) => !isGroup(there) || !Object.hasOwn(there, name));
  return names.flatMap((name): Suggestion[] => {
    const node = resolved(specSchema.definitions!['stockOnMachine']!);
    const value = exampleSnippet(node, { ...setting, path: [...place.path, name] }, new Stops());
    return value === undefined ? [] : [{ ...entry(name, `${name}: ${value}`, place), detail: 'machine' }];
  });
}

/** In a job: the stocks that have no sheets yet. */
export function sheetSuggestions(place: CursorContext, setting: SuggestionSetting): Suggestion[] {
  if (place.path.length !== 1 || place.path[0] !== 'sheets') return [];
  const there = valueAt(place.rest, place.path);
  const names = namesFor('stock', setting).filter((name) => !isGroup(there) || !Object.hasOwn(there, name));
  return names.map((name) => {
    const stops = new Stops();
    const value = `[{size: [${stops.stop(inUnits('600 mm', setting.root))}, ${stops.stop(inUnits('300 mm', setting.root))}]}]`;
    return { ...entry(name, `${name}: ${value}`, place), detail: 'sheets of this stock' };
  });
}

/** `shapes` and `pieces`, each with a first entry. */
function sectionSuggestions(place: CursorContext, setting: SuggestionSetting): Suggestion[] {
  const shapes = new Stops();
  const word = shapes.stop('word');
  const body = namesFor('shape', { ...setting, path: ['pieces'] });
  const pieces = new Stops();
  const tag = pieces.stop('tag');
  const entries = [
    { key: 'shapes', name: word, value: shapeSnippet('text', { ...setting, path: ['shapes', 'word'] }, shapes)! },
    {
      key: 'pieces',
      name: tag,
      value: `{body: [${body.length > 0 ? pieces.choice(body) : `{ellipse: ${pieces.stop(inUnits('30 mm', setting.root))}}`}]}`,
    },
  ].filter(({ key }) => !(isGroup(place.rest) && Object.hasOwn(place.rest, key)));
  return entries.map(({ key, name, value }) => {
    const docs = specSchema.properties?.[key]?.description ?? '';
    const snippet = place.flow ? `${key}: {${name}: ${value}}` : `${key}:\n  ${name}: ${value}`;
    return { ...entry(key, `${key}: {${name}: ${value}}`, place), kind: 'key', snippet, detail: 'group', docs };
  });
}

const sides = ['top', 'left', 'right', 'bottom'];

/** The typed word becomes the name, so entries must not be filtered by it. */
function asTyped({ written }: CursorContext): Pick<Suggestion, 'filter'> {
  return written === '' ? {} : { filter: written };
}

function entry(label: string, flowSnippet: string, place: CursorContext): Suggestion {
  const added = valueOfSnippet(`{${flowSnippet}}`);
  const group = valueAt(place.rest, place.path);
  const whole = withValue(place.rest, place.path, {
    ...(isGroup(group) ? group : {}),
    ...(isGroup(added) ? added : {}),
  });
  return { kind: 'snippet', label, snippet: flowSnippet, whole };
}

function freeEntry(name: string, { rest, path }: CursorContext): string {
  const group = valueAt(rest, path);
  const taken = (candidate: string) => isGroup(group) && Object.hasOwn(group, candidate);
  return freeName(name, taken);
}

/** The samples, for an empty file; the words on the tag are meant to be typed over. */
function tagSuggestions(place: CursorContext, { root }: SuggestionSetting, { samples }: WorkspaceNames): Suggestion[] {
  if (place.flow || (isGroup(root) && Object.keys(root).length > 0)) return [];
  return samples.map(({ title, purpose, text }) => ({
    kind: 'snippet',
    label: title,
    detail: 'whole tag',
    docs: purpose,
    snippet: wordsToType(text),
    whole: valueOfSnippet(literal(text)),
  }));
}

function wordsToType(sample: string): string {
  const stops = new Stops();
  const pattern = /(\btext: +)([^,{}\n]+)/g;
  let snippet = '';
  let end = 0;
  for (const { 0: match, 1: key, 2: words, index } of sample.matchAll(pattern)) {
    snippet += literal(sample.slice(end, index) + key!) + stops.stop(words!);
    end = index + match.length;
  }
  return snippet + literal(sample.slice(end));
}
