/** Sections of the guide's reference: one for each group of keys, named after its title in the schema. */

import type { YamlPath } from '../core/issue.ts';
import { alternatives, nodesAt, schemasAt, specSchema } from './schema.ts';
import type { SchemaNode } from './schema.ts';

export const rootSection = 'The spec';

/** In lower case; the name of its key if the schema gives no title. */
export function groupName(node: SchemaNode, key: string): string {
  const title = node.title?.replace(/Spec$/, '').replaceAll(/(?<=[a-z])(?=[A-Z])/g, ' ');
  return title?.toLowerCase() ?? key;
}

/** Anchor of a heading made of letters and spaces. */
export function sectionAnchor(name: string): string {
  return name.toLowerCase().replaceAll(' ', '-');
}

/**
 * Where a group is a choice among groups, such as of hangers, the keys that all of those take, each with its nodes: they
 * are told once, in the section of the choice.
 */
export function sharedKeys({ properties = {} }: SchemaNode): ReadonlyMap<string, readonly SchemaNode[]> {
  const choices = Object.entries(properties).map(([key, node]) => ({ key, group: openedBy(node) }));
  const groups = choices.flatMap(({ group }) => group ?? []);
  const names = new Set(choices.map(({ key, group }) => group && groupName(group, key)));
  if (names.size < 2 || names.size < choices.length || names.has(undefined)) return new Map();
  const [first] = groups;
  const shared = Object.keys(first!.properties!).filter((key) =>
    groups.every((group) => Object.hasOwn(group.properties!, key)),
  );
  return new Map(shared.map((key) => [key, groups.map((group) => group.properties![key]!)]));
}

function openedBy(node: SchemaNode): SchemaNode | undefined {
  return alternatives(node).find((each) => each.properties);
}

/** Anchor of the section that says most about a key: of the group that it opens, else of the group that it is in. */
export function referenceSectionOf(path: YamlPath): string | undefined {
  const words = path.filter((step) => typeof step === 'string');
  const [key, around = ''] = words.toReversed();
  if (key === undefined) return undefined;
  const choice = schemasAt(path.slice(0, -2)).find((each) => sharedKeys(each).has(key));
  if (choice) return sectionAnchor(groupName(choice, around));
  const forms = nodesAt(path).flatMap(alternatives);
  // A value that may be a list does not open a group of its own.
  const opened = forms.some(({ items }) => items) ? undefined : forms.find((each) => each.properties);
  if (opened) return sectionAnchor(groupName(opened, key));
  const holder = schemasAt(path.slice(0, -1)).find((each) => each.properties && Object.hasOwn(each.properties, key));
  if (!holder) return undefined;
  return sectionAnchor(holder === specSchema ? rootSection : groupName(holder, around));
}
