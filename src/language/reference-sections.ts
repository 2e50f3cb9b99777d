/** The sections of the guide's reference: one for each group of keys, under the schema's own name for it. */

import type { YamlPath } from '../core/issue.ts';
import { alternatives, nodesAt, schemasAt, specSchema } from './schema.ts';
import type { SchemaNode } from './schema.ts';

export const rootSection = 'The spec';

/** In small letters; that of its key where the schema has no name for it. */
export function groupName(node: SchemaNode, key: string): string {
  const title = node.title?.replace(/Spec$/, '').replaceAll(/(?<=[a-z])(?=[A-Z])/g, ' ');
  return title?.toLowerCase() ?? key;
}

/** Of a heading of letters and spaces. */
export function sectionAnchor(name: string): string {
  return name.toLowerCase().replaceAll(' ', '-');
}

/** The anchor of what says most of a key: of the group it opens, else of the one it stands in. */
export function referenceSectionOf(path: YamlPath): string | undefined {
  const words = path.filter((step) => typeof step === 'string');
  const [key, around = ''] = words.toReversed();
  if (key === undefined) return undefined;
  const forms = nodesAt(path).flatMap(alternatives);
  // What may be a list is no group of its own.
  const opened = forms.some(({ items }) => items) ? undefined : forms.find((each) => each.properties);
  if (opened) return sectionAnchor(groupName(opened, key));
  const holder = schemasAt(path.slice(0, -1)).find((each) => each.properties && Object.hasOwn(each.properties, key));
  if (!holder) return undefined;
  return sectionAnchor(holder === specSchema ? rootSection : groupName(holder, around));
}
