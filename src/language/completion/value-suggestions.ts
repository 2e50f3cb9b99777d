/** Suggestions for the value of a key or a list entry. */

import { materialNames } from '../../strength/materials.ts';
import { nameColumn } from '../../spec/batch/batch.ts';
import { generatorKeys } from '../../spec/read/read-generator.ts';
import { tableNameIn } from '../../spec/files/used-files.ts';
import type { Uses } from '../../spec/files/used-files.ts';
import { isFontFile } from '../../text/font-files.ts';
import { exampleSnippet, inUnits, namesFor } from '../examples.ts';
import type { SuggestionSetting } from '../examples.ts';
import { inline } from '../hover/docs.ts';
import { isLeftOutName, namesToLeaveOut } from '../left-out-names.ts';
import { valueOfSnippet } from './suggestion.ts';
import type { Suggestion } from './suggestion.ts';
import type { NamePlace } from '../navigation/names.ts';
import { shapeSnippet } from './new-entries.ts';
import type { CursorContext } from './cursor-context.ts';
import { isLength, nameKindOf, schemasAt } from '../schema.ts';
import type { NameKind, SchemaNode } from '../schema.ts';
import { inShort, sharedDocs, sharedValue } from '../shared-values.ts';
import { literal, Stops, yamlText } from './snippets.ts';
import type { FontNote, WorkspaceNames } from '../workspace-names.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import { withValue } from '../changed-copies.ts';

export function valueSuggestions(
  place: CursorContext,
  names: readonly NamePlace[],
  around: WorkspaceNames,
): Suggestion[] {
  const setting = { path: place.path, root: place.rest, names, uses: around.uses };
  const isEntry = typeof place.path.at(-1) === 'number';
  const nodes = schemasAt(place.path, around.grammar?.root);
  const columns = nodes.some((node) => isForWords(node, place)) ? columnSuggestions(place, around) : [];
  const suggestions = nodes.flatMap((node) => [
    ...columns,
    ...wordSuggestions(node, place, setting, around),
    // On a line of its own below its key, a map is written key by key.
    ...(place.quote || (place.ownLine && !place.flow && !isEntry) ? [] : groupSuggestions(node, place, setting)),
  ]);
  const seen = new Set<string>();
  return suggestions.filter(({ label }) => !seen.has(label) && seen.add(label));
}

function wordSuggestions(
  node: SchemaNode,
  place: CursorContext,
  setting: SuggestionSetting,
  around: WorkspaceNames,
): Suggestion[] {
  const kind = nameKindOf(node);
  if (node.title === 'Product') return productSuggestions(place, around);
  if (isLeftOutName(node))
    return namesToLeaveOut(place.rest, around.uses).map((name) => textSuggestion('value', name, place));
  if (kind === 'font') return fontSuggestions(place, around);
  if (kind && isFile(kind)) {
    const files = around.files.filter((path) => endings[kind].test(path));
    return files.map((path) => textSuggestion('file', path, place));
  }
  if (kind) {
    const what = kind === 'piece' ? 'piece' : 'shape';
    return unusedFirst(namesFor(kind, setting), place).map((name) => ({
      ...textSuggestion(what, name, place),
      ...detailOf(name, kind, setting),
    }));
  }
  if (node.enum)
    return node.enum.map((word) => ({ ...textSuggestion('value', word, place), ...defaultMark(word, node) }));
  if (isLength(node)) return lengthSuggestions(node, place, setting);
  if (place.quote) return [];
  if (node.const !== undefined) return [plainSuggestion('value', String(node.const), place)];
  if (node.type === 'boolean')
    return [true, false].map((value) => ({
      ...plainSuggestion('value', String(value), place),
      ...defaultMark(value, node),
    }));
  if (node.type === 'integer' || node.type === 'number') return numberSuggestions(node, place, around);
  return lastStep(place) === 'material'
    ? commonFirst.map((name) => textSuggestion('value', name, place))
    : textExamples(node, place);
}

/** What most tags are cut from comes first. */
const commonFirst = [true, false].flatMap((isCommon) =>
  materialNames.filter((name) => name.includes('plywood') === isCommon),
);

/** In a piece, what no piece has yet: what is engraved is hardly ever the plate. */
function unusedFirst(names: readonly string[], { path: [section, id, list], rest }: CursorContext): readonly string[] {
  if (section !== 'pieces' || !inPieces.some((each) => each === list)) return names;
  const pieces = Object.entries(asGroup(valueAt(rest, ['pieces'])));
  const used = new Set(
    pieces.flatMap(([piece, written]) =>
      inPieces.flatMap((each) => (piece === id && each === list ? [] : [asGroup(written)[each]].flat())),
    ),
  );
  return [...names.filter((name) => !used.has(name)), ...names.filter((name) => used.has(name))];
}

const inPieces = ['body', 'engrave', 'score', 'cut'] as const;

const asGroup = (value: unknown): Readonly<Record<string, unknown>> => (isGroup(value) ? value : {});

/** What the table of the entry has in its column `product`. */
function productSuggestions(place: CursorContext, { products }: WorkspaceNames): Suggestion[] {
  const table = valueAt(place.rest, [...place.path.slice(0, 2), 'orders']);
  const known = (typeof table === 'string' ? products?.get(table) : undefined) ?? [];
  return known.filter((product) => product !== '').map((product) => textSuggestion('value', product, place));
}

/** Columns of the batch, for values other than words; they come after the usual values. */
export function columnValues(place: CursorContext, around: WorkspaceNames): Suggestion[] {
  const nodes = around.grammar ? [] : schemasAt(place.path);
  const isFor = nodes.some(isPlain) && !nodes.some((node) => isForWords(node, place));
  return isFor ? columnSuggestions(place, around) : [];
}

function isForWords({ type }: SchemaNode, place: CursorContext): boolean {
  return type === 'string' && ['text', 'title', 'code'].includes(String(lastStep(place)));
}

/** Whether it is neither a map nor a list. */
const isPlain = ({ type }: SchemaNode): boolean => type !== 'object' && type !== 'array';

/** Sections in which values may come from the batch. */
const inRows: ReadonlySet<unknown> = new Set(['title', 'shapes', 'pieces', 'hangers', 'stock', 'tie']);

/** Placeholders for the columns of a batch, if no value has been written yet. */
function columnSuggestions(place: CursorContext, { uses }: WorkspaceNames): Suggestion[] {
  if (!inRows.has(place.path[0]) || !/^["']?\{?\w*["']?$/.test(place.written)) return [];
  return batchColumns(place.rest, uses).map((column) => textSuggestion('value', `{${column}}`, place));
}

function batchColumns(root: unknown, { table }: Uses): readonly string[] {
  const batch = valueAt(root, ['batch']);
  if (!Array.isArray(batch)) return tableNameIn(batch) === undefined ? [] : (table?.header ?? []);
  return [...new Set(batch.flatMap((row: unknown) => (isGroup(row) ? Object.keys(row) : [nameColumn])))];
}

const lastStep = ({ path }: CursorContext): string | number | undefined => path.at(-1);
const endings = {
  drawing: /\.svg$/i,
  spec: /\.ya?ml$/i,
  table: /\.csv$/i,
  approval: /\.approved\.json$/i,
  tag: /\.tag\.ya?ml$/i,
  offcuts: /\.offcuts\.ya?ml$/i,
} as const;

function isFile(kind: NameKind): kind is keyof typeof endings {
  return kind in endings;
}

function fontSuggestions(place: CursorContext, { fonts, files }: WorkspaceNames): Suggestion[] {
  return [
    ...fonts.map(({ family, note }) => ({
      ...textSuggestion('font', family, place),
      ...(note === undefined ? {} : { detail: note }),
    })),
    ...files.filter(isFontFile).map((path) => ({ ...textSuggestion('file', path, place), detail: 'beside the spec' })),
  ];
}

function detailOf(name: string, kind: string, { root, uses }: SuggestionSetting): Pick<Suggestion, 'detail' | 'docs'> {
  if (kind === 'stock' || kind === 'tie' || kind === 'machine') {
    const value = sharedValue(`${kind}s`, name, root, uses);
    return value ? { detail: inShort(`${kind}s`, value), docs: sharedDocs(name, value) } : {};
  }
  const shape = kind !== 'shape' && kind !== 'part' ? undefined : valueAt(root, ['shapes', name]);
  const generator = isGroup(shape) ? generatorKeys.find((each) => each in shape) : undefined;
  return generator ? { detail: generator } : {};
}

function defaultMark(value: unknown, node: SchemaNode): Pick<Suggestion, 'detail'> {
  return node.default === value ? { detail: 'default' } : {};
}

const units = ['mm', 'cm', 'in', 'pt', 'px'];

/** Units for a number that is already there, else initial values. */
function lengthSuggestions(node: SchemaNode, place: CursorContext, { root }: SuggestionSetting): Suggestion[] {
  const figure = /^["']?([+-]?(?:\d+(?:\.\d*)?|\.\d+|\d+\/\d+|\d+ \d+\/\d+)) *[a-z]*["']?$/.exec(place.written)?.[1];
  if (figure !== undefined) return units.map((unit) => textSuggestion('unit', `${figure} ${unit}`, place, false));
  if (place.written !== '') return [];
  const starts = [...(node.examples ?? []), ...(node.default === undefined ? [] : [node.default])];
  const lengths = (starts.length > 0 ? starts : ['3 mm']).filter((each) => typeof each !== 'object');
  return lengths.map((length) => {
    const text = inUnits(String(length), root);
    return { ...textSuggestion('value', text, place, false), ...defaultMark(length, node) };
  });
}

/** Weight names of the OpenType specification (OS/2, usWeightClass). */
const weightNames: Readonly<Partial<Record<number, string>>> = {
  100: 'thin',
  200: 'extra light',
  300: 'light',
  400: 'regular',
  500: 'medium',
  600: 'semibold',
  700: 'bold',
  800: 'extra bold',
  900: 'black',
};

function numberSuggestions(node: SchemaNode, place: CursorContext, { fonts }: WorkspaceNames): Suggestion[] {
  if (lastStep(place) === 'weight') {
    const family = valueAt(place.rest, [...place.path.slice(0, -1), 'font']);
    const known = fonts.find((font) => sameFamily(font, family))?.weights;
    return (known ?? Object.keys(weightNames).map(Number)).map((weight) => {
      const detail = weightNames[weight];
      return { ...plainSuggestion('value', String(weight), place), ...(detail ? { detail } : {}) };
    });
  }
  const values = [...new Set([...(node.examples ?? []), ...(node.default === undefined ? [] : [node.default])])];
  return values.map((value) => ({ ...plainSuggestion('value', String(value), place), ...defaultMark(value, node) }));
}

function sameFamily({ family }: FontNote, written: unknown): boolean {
  return typeof written === 'string' && family.toLowerCase() === written.trim().toLowerCase();
}

/** Only for an empty value: an example is no improvement on what the writer has typed. */
function textExamples(node: SchemaNode, place: CursorContext): Suggestion[] {
  if (node.type !== 'string' || place.written !== '') return [];
  return (node.examples ?? []).map((text) => textSuggestion('value', String(text), place));
}

function groupSuggestions(node: SchemaNode, place: CursorContext, setting: SuggestionSetting): Suggestion[] {
  if (node.title === 'ShapeSpec') {
    return generatorKeys.flatMap((each) =>
      snippetSuggestion(shapeSnippet(each, setting, new Stops()), `{${each} …}`, place),
    );
  }
  if (node.type !== 'object' && node.type !== 'array') return [];
  const snippet = exampleSnippet(node, setting, new Stops());
  return snippetSuggestion(snippet, snippet === undefined ? '' : inline(valueOfSnippet(snippet)), place);
}

function snippetSuggestion(snippet: string | undefined, label: string, place: CursorContext): Suggestion[] {
  if (snippet === undefined) return [];
  const whole = withValue(place.rest, place.path, valueOfSnippet(snippet));
  return [{ kind: 'snippet', label, snippet, whole }];
}

/** A word in the quotes that are already there, or in those that it needs. */
function textSuggestion(
  kind: Suggestion['kind'],
  text: string | number,
  place: CursorContext,
  mayNeedQuotes = true,
): Suggestion {
  const written = String(text);
  const quoted = { '"': JSON.stringify(written), "'": `'${written.replaceAll("'", "''")}'` }[place.quote];
  const yaml = quoted ?? (mayNeedQuotes && typeof text === 'string' ? yamlText(written) : written);
  return { kind, label: written, snippet: literal(yaml), whole: withValue(place.rest, place.path, text) };
}

function plainSuggestion(kind: Suggestion['kind'], text: string, place: CursorContext): Suggestion {
  return { kind, label: text, snippet: literal(text), whole: withValue(place.rest, place.path, valueOfSnippet(text)) };
}
