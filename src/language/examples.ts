/** Initial values for keys, as snippets: examples from the schema, with names from the spec. */

import type { YamlPath } from '../core/issue.ts';
import type { UsedFile, Uses } from '../spec/files/used-files.ts';
import { bundledFonts } from '../text/bundled-fonts.ts';
import { isLeftOutName, namesToLeaveOut } from './left-out-names.ts';
import { shapesFor } from './navigation/names.ts';
import type { NamePlace } from './navigation/names.ts';
import { alternatives, isLength, nameKindOf, schemasUnder } from './schema.ts';
import type { NameKind, SchemaNode } from './schema.ts';
import type { Stops } from './completion/snippets.ts';
import { yamlText } from './completion/snippets.ts';
import { roundInches } from '../core/units.ts';
import { isGroup, valueAt, unitsOf } from '../core/values.ts';

/** The names that can be used, and the position in the spec. */
export interface SuggestionSetting {
  readonly path: YamlPath;
  readonly root: unknown;
  readonly names: readonly NamePlace[];
  readonly uses: Uses;
}

/** A first value, or `undefined` if the spec has nothing yet to build one from. */
export function exampleSnippet(node: SchemaNode, setting: SuggestionSetting, stops: Stops): string | undefined {
  const options = alternatives(node);
  for (const option of options) {
    const example = option.examples?.[0];
    const snippet =
      example === undefined ? fromSchema(option, setting, stops) : filled(example, option, setting, stops);
    if (snippet !== undefined) return snippet;
  }
  return undefined;
}

function fromSchema(node: SchemaNode, setting: SuggestionSetting, stops: Stops): string | undefined {
  const kind = nameKindOf(node);
  if (kind) {
    const names = namesFor(kind, setting);
    return names.length > 0 ? stops.choice(names.map(yamlText)) : undefined;
  }
  if (node.enum) return stops.choice(defaultFirst(node.enum, node.default).map(String));
  if (node.const !== undefined) return String(node.const);
  if (isLength(node)) return stops.stop(inUnits('3 mm', setting.root));
  switch (node.type) {
    case 'boolean':
      return stops.choice(defaultFirst([true, false], node.default).map(String));
    case 'array':
      return listSnippet(node, setting, stops);
    case 'object':
      return groupSnippet(node, setting, stops);
    default:
      return undefined;
  }
}

function listSnippet(node: SchemaNode, setting: SuggestionSetting, stops: Stops): string | undefined {
  const item = schemasUnder([node], 0)[0];
  const entry = item && exampleSnippet(item, { ...setting, path: [...setting.path, 0] }, stops);
  return entry === undefined ? undefined : `[${entry}]`;
}

/** The required keys of a map. */
function groupSnippet(node: SchemaNode, setting: SuggestionSetting, stops: Stops): string | undefined {
  const entries = (node.required ?? []).map((key) => {
    const inner = node.properties?.[key];
    const value = inner && exampleSnippet(inner, { ...setting, path: [...setting.path, key] }, stops);
    return value === undefined ? undefined : `${key}: ${value}`;
  });
  return entries.length === 0 || entries.includes(undefined) ? undefined : `{${entries.join(', ')}}`;
}

/** An example from the schema with a tab stop at each number and word. */
function filled(example: unknown, node: SchemaNode, setting: SuggestionSetting, stops: Stops): string {
  const inner = (step: string | number, value: unknown): string => {
    const [schema] = schemasUnder([node], step);
    return schema ? filled(value, schema, setting, stops) : yamlScalar(value, setting.root);
  };
  if (Array.isArray(example)) return `[${example.map((value, index) => inner(index, value)).join(', ')}]`;
  if (isGroup(example)) {
    const entries = Object.entries(example).map(([key, value]) => `${key}: ${inner(key, value)}`);
    return `{${entries.join(', ')}}`;
  }
  const kind = nameKindOf(node);
  if (kind === 'shape') {
    const names = namesFor(kind, setting);
    if (names.length > 0) return stops.choice(names.map(yamlText));
  }
  const named = isLeftOutName(node) ? namesToLeaveOut(setting.root, setting.uses) : [];
  if (named.length > 0) return stops.choice(named.map(yamlText));
  if (kind === 'font') return stops.choice(bundledFirst(String(example)).map(yamlText));
  if (node.enum) return stops.choice(defaultFirst(node.enum, example).map(String));
  if (typeof example === 'boolean') return stops.choice([String(example), String(!example)]);
  return stops.stop(yamlScalar(example, setting.root));
}

function yamlScalar(value: unknown, root: unknown): string {
  if (typeof value !== 'string') return String(value);
  // A force is the same in either unit of length, and plain text in YAML.
  if (/^[\d.]+ (N|kg)$/.test(value)) return value;
  return /^-?[\d.]+ mm$/.test(value) ? inUnits(value, root) : yamlText(value);
}

/** A length of an example; in a spec in inches the round one near it. */
export function inUnits(millimetres: string, root: unknown): string {
  return unitsOf(root) === 'mm' ? millimetres : `${roundInches(Number.parseFloat(millimetres))} in`;
}

function bundledFirst(family: string): string[] {
  const others = bundledFonts.map((font) => font.family).filter((each) => each !== family);
  return [family, ...others];
}

function defaultFirst<T>(values: readonly T[], first: unknown): T[] {
  return [...values].sort((a, b) => Number(b === first) - Number(a === first));
}

/** Names in the spec that may stand at a path. */
export function namesFor(kind: NameKind, { path, root, names, uses }: SuggestionSetting): string[] {
  switch (kind) {
    case 'shape':
      return [...shapesFor(path, names), ...usedNames('shapes', uses.used)];
    case 'hanger':
    case 'stock':
    case 'tie':
    case 'machine': {
      const own = names.filter((each) => each.kind === kind && each.isDefinition).map(({ name }) => name);
      return [...own, ...usedNames(`${kind}s`, uses.used)];
    }
    case 'piece':
      return names
        .filter((each) => each.kind === 'piece' && each.isDefinition && each.name !== path[1])
        .map(({ name }) => name);
    case 'part':
      return stackMembers(path, root);
    case 'font':
      return bundledFonts.map((font) => font.family);
    case 'drawing':
    case 'spec':
    case 'table':
    case 'approval':
    case 'tag':
    case 'offcuts':
      return [];
  }
}

/** Names defined in used files, and in the files that those use. */
function usedNames(group: string, used: readonly UsedFile[]): string[] {
  const names = used.flatMap(({ source, uses }) => {
    const own = valueAt(source.value, [group]);
    return [...(isGroup(own) ? Object.keys(own) : []), ...usedNames(group, uses)];
  });
  return [...new Set(names)];
}

/** Members of the stack that `on` or `in` names, beside `part`. */
function stackMembers(path: YamlPath, root: unknown): string[] {
  const group = valueAt(root, path.slice(0, -1));
  const target = isGroup(group) ? (group['on'] ?? group['in']) : undefined;
  const members = typeof target === 'string' ? valueAt(root, ['shapes', target, 'stack', 'shapes']) : undefined;
  return Array.isArray(members) ? members.filter((name) => typeof name === 'string') : [];
}
