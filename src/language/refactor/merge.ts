/** Merges another spec into an existing one. */

import { freeName } from '../../core/names.ts';
import { withEdits } from '../../fixes/find-fixes.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import type { SpecEntry, SpecNode } from '../../spec/yaml/tree.ts';
import { renaming } from '../navigation/find-names.ts';
import { inFlow } from '../completion/flow-text.ts';
import type { NameKind } from '../schema.ts';
import { isGroup, valueAt } from '../../core/values.ts';

const shared: readonly { readonly section: string; readonly kind: NameKind }[] = [
  { section: 'shapes', kind: 'shape' },
  { section: 'pieces', kind: 'piece' },
];

/**
 * Adds the shapes and pieces of `other` after those of `spec`, under free names. Stock and tie stay as they are,
 * because there is one sheet. A blank spec becomes all of `other`.
 */
export function merged(spec: string, other: string): string {
  const root = new SpecSource(spec).value;
  if (root === null || root === undefined) return spec.trim() === '' ? other : `${spec.trimEnd()}\n${other}`;
  let added = other;
  for (const { section, kind } of shared) {
    for (const name of sectionNames(added, section)) {
      const taken = [...sectionNames(spec, section), ...sectionNames(added, section).filter((each) => each !== name)];
      const free = freeName(name, (each) => taken.includes(each));
      if (free !== name) added = withEdits(added, renaming(new SpecSource(added), { kind, name }, free));
    }
  }
  const whole = shared.reduce((text, { section }) => withSection(text, new SpecSource(added), section), spec);
  return withBatch(whole, new SpecSource(added));
}

/** Adds the batch that the merged texts refer to, unless the spec has one already; there can be only one. */
function withBatch(spec: string, { text, tree }: SpecSource): string {
  const source = new SpecSource(spec);
  const batch = tree?.kind === 'map' ? tree.entries.find(({ key }) => key.value === 'batch')?.value : undefined;
  const written = batch && inFlow(text, batch);
  if (written === undefined || valueAt(source.value, ['batch']) !== undefined) return spec;
  const edit = source.setKey([], 'batch', written);
  return edit ? withEdits(spec, [edit]) : spec;
}

function withSection(spec: string, added: SpecSource, section: string): string {
  const entries = entriesIn(added.tree, section);
  if (entries.length === 0) return spec;
  const text = ({ value }: SpecEntry) => (value && inFlow(added.text, value)) ?? '{}';
  if (!isGroup(valueAt(new SpecSource(spec).value, [section]))) {
    const lines = entries.map((entry) => `  ${String(entry.key.value)}: ${text(entry)}`);
    return `${spec.trimEnd()}\n\n${section}:\n${lines.join('\n')}\n`;
  }
  return entries.reduce((before, entry) => {
    const edit = new SpecSource(before).setKey([section], String(entry.key.value), text(entry));
    return edit ? withEdits(before, [edit]) : before;
  }, spec);
}

function entriesIn(tree: SpecNode | undefined, section: string): readonly SpecEntry[] {
  const value = tree?.kind === 'map' ? tree.entries.find(({ key }) => key.value === section)?.value : undefined;
  return value?.kind === 'map' ? value.entries : [];
}

function sectionNames(spec: string, section: string): string[] {
  return entriesIn(new SpecSource(spec).tree, section).map(({ key }) => String(key.value));
}
