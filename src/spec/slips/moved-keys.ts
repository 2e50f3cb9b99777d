/** Repairs keys that are valid elsewhere or under another name. */

import type { Issue, TextEdit, YamlPath } from '../../core/issue.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import { shortKeyOf } from '../yaml/short-forms.ts';
import type { SpecSource } from '../yaml/source.ts';
import { entryRange, takenOut, writtenValue } from './entries.ts';
import { homes, otherNames } from './other-names.ts';
import { insertion, quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';

export function movedKeyRepairs(issue: Issue, source: SpecSource): Repair[] {
  const key = issue.path.at(-1);
  if (issue.code !== 'unknown-key' || typeof key !== 'string') return [];
  return [
    ...boldAsWeight(issue, key, source),
    ...limitOfFit(issue, key, source),
    ...sidesAsSize(issue, key, source),
    ...namedStock(issue, source),
    ...renamedKey(issue, key),
    ...movedKey(issue, key, source),
    ...inNewGroup(issue, key, source),
  ];
}

/** `bold: true` becomes a weight. */
function boldAsWeight({ path, range }: Issue, key: string, source: SpecSource): Repair[] {
  const entry = key === 'bold' ? entryRange(source, path) : undefined;
  if (!entry) return [];
  return [
    {
      slip: range,
      message: 'Bold is a weight here: “weight: 700”.',
      title: 'Change to “weight: 700”',
      edits: [replacement(entry.start, entry.end, 'weight: 700')],
      rarity: 1,
    },
  ];
}

/** `fit: {in: plate, x_height: 5 mm}`: a size beside `fit` can only be a limit. */
function limitOfFit({ path, range }: Issue, key: string, source: SpecSource): Repair[] {
  const entry = entryRange(source, path);
  const written = writtenValue(source, path);
  const limit = key.replace(/^max_/, '');
  if (path.at(-2) !== 'fit' || !entry || !['width', 'x_height', 'cap_height'].includes(limit)) return [];
  const text = `at_most: {${limit}: ${written ?? ''}}`;
  return [
    {
      slip: range,
      message: `A limit of the size is written ${quoted(text)}.`,
      title: `Change to ${quoted(text)}`,
      edits: [replacement(entry.start, entry.end, text)],
      rarity: 0,
    },
  ];
}

/** `stock: {maple: {…}, walnut: {…}}` becomes `stocks`. */
function namedStock({ path, range }: Issue, source: SpecSource): Repair[] {
  if (path.length !== 2 || path[0] !== 'stock' || !isGroup(valueAt(source.value, path))) return [];
  const stock = source.keyRange(['stock']);
  return [
    {
      slip: range,
      message: `Stocks with names go under “stocks”, and a piece names its own: ${quoted(`stock: ${String(path[1])}`)}.`,
      title: 'Change “stock” to “stocks”',
      edits: [replacement(stock.start, stock.end, 'stocks')],
      rarity: 0,
      explains: true,
    },
  ];
}

/** Plates whose width and height are a list of two under `size`. */
const plates: ReadonlySet<unknown> = new Set(['house', 'label', 'ticket', 'oval']);

/** `{width: 60 mm, height: 70 mm}` of a plate becomes its `size`. */
function sidesAsSize({ path, range }: Issue, key: string, source: SpecSource): Repair[] {
  const home = path.slice(0, -1);
  if (!plates.has(home.at(-1)) || (key !== 'width' && key !== 'height')) return [];
  const [width, height] = (['width', 'height'] as const).map((side) => ({
    written: writtenValue(source, [...home, side]),
    entry: entryRange(source, [...home, side]),
  }));
  const taken = height!.entry && takenOut(source, height!.entry);
  if (!width?.written || !width.entry || !height?.written || !taken) return [];
  const size = `size: [${width.written}, ${height.written}]`;
  return [
    {
      slip: range,
      message: `Width and height are a list of two here: ${quoted(size)}.`,
      title: `Change to ${quoted(size)}`,
      edits: [replacement(width.entry.start, width.entry.end, size), taken],
      rarity: 0,
      explains: true,
    },
  ];
}

function renamedKey({ range }: Issue, key: string): Repair[] {
  return (Object.hasOwn(otherNames, key) ? otherNames[key]! : []).map((name) => ({
    slip: range,
    message: `Unknown key “${key}”; here it is “${name}”.`,
    title: `Change to “${name}”`,
    edits: [replacement(range.start, range.end, name)],
    rarity: 1,
    explains: true,
  }));
}

/**
 * Moves a key into a group beside it, such as `tail` beside `arrow`, into one further in, such as `hanger` at the top,
 * or out of its group.
 */
function movedKey({ path, range }: Issue, key: string, source: SpecSource): Repair[] {
  const home = path.slice(0, -1);
  const entry = entryRange(source, path);
  const taken = entry && takenOut(source, entry);
  const written = writtenValue(source, path);
  if (!taken || written === undefined) return [];
  // Sections of named members only contain groups: no shape is a number.
  const isGroupOfItsOwn = isGroup(valueAt(source.value, path));
  const outer = home.length > 0 && (isGroupOfItsOwn || !named.has(String(home.at(-2)))) ? [home.slice(0, -1)] : [];
  return [...groupsWithin(source.value, home), ...shortFormsIn(source.value, home), ...outer].flatMap(
    (goal): Repair[] => {
      const put = source.setKey(goal, key, written);
      const name = goal.findLast((step) => typeof step === 'string') ?? 'the top of the spec';
      return put && !overlap(put, taken)
        ? [
            {
              slip: range,
              message: `“${key}” belongs in ${quoted(name)}.`,
              title: `Move it into ${quoted(name)}`,
              edits: [taken, put],
              rarity: 1,
              explains: true,
            },
          ]
        : [];
    },
  );
}

function overlap(a: TextEdit, b: TextEdit): boolean {
  return a.range.start < b.range.end && b.range.start < a.range.end;
}

/** Puts the key in a group of its own, such as `stock: {kerf: 0.16 mm}`. */
function inNewGroup({ path, range }: Issue, key: string, source: SpecSource): Repair[] {
  const home = Object.hasOwn(homes, key) ? homes[key]! : undefined;
  const entry = entryRange(source, path);
  if (home === undefined || !entry || writtenValue(source, path) === undefined) return [];
  return [
    {
      slip: range,
      message: `“${key}” belongs in “${home}”.`,
      title: `Put it in “${home}”`,
      edits: [insertion(entry.start, `${home}: {`), insertion(entry.end, '}')],
      rarity: 1,
    },
  ];
}

/** Groups that are written as a single value: `border: plate`. */
function shortFormsIn(root: unknown, home: YamlPath): YamlPath[] {
  const value = valueAt(root, home);
  if (!isGroup(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    isGroup(inner) || shortKeyOf([...home, key]) === undefined ? [] : [[...home, key]],
  );
}

/** Sections whose keys are names that the writer chose. */
const named: ReadonlySet<string> = new Set(['shapes', 'pieces', 'hangers']);

/** Most groups tried; keys are not misplaced by more than two levels. */
const mostGroups = 8;

function groupsWithin(root: unknown, path: YamlPath): YamlPath[] {
  const value = path.reduce<unknown>((at, step) => (at as Record<string | number, unknown>)[step], root);
  const children = (of: unknown, at: YamlPath): YamlPath[] =>
    typeof of !== 'object' || of === null || Array.isArray(of)
      ? []
      : Object.entries(of).flatMap(([key, inner]) =>
          typeof inner === 'object' && inner !== null && !Array.isArray(inner) ? [[...at, key]] : [],
        );
  const near = children(value, path);
  const further = near.flatMap((at) => children((value as Record<string, unknown>)[String(at.at(-1))], at));
  return [...near, ...further].slice(0, mostGroups);
}
