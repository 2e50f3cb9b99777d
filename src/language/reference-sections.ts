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

/** Anchor of the section that says most about a key: of the group that it opens, else of the group that it is in. */
export function referenceSectionOf(path: YamlPath): string | undefined {
  const words = path.filter((step) => typeof step === 'string');
  const [key, around = ''] = words.toReversed();
  if (key === undefined) return undefined;
  const forms = nodesAt(path).flatMap(alternatives);
  // A value that may be a list does not open a group of its own.
  const opened = forms.some(({ items }) => items) ? undefined : forms.find((each) => each.properties);
  if (opened) return sectionAnchor(groupName(opened, key));
  const holder = schemasAt(path.slice(0, -1)).find((each) => each.properties && Object.hasOwn(each.properties, key));
  if (!holder) return undefined;
  return sectionAnchor(holder === specSchema ? rootSection : groupName(holder, around));
}
