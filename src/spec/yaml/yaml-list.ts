/** Changes a list of groups in a YAML text entry by entry; comments and unchanged parts stay as they are. */

import { Document, isMap, isSeq, parseDocument, YAMLSeq } from 'yaml';

/** A change to an entry: keys put first, keys set or removed, or the entry dropped. */
export interface EntryChange {
  readonly first?: Readonly<Record<string, unknown>>;
  readonly set?: Readonly<Record<string, unknown>>;
  readonly remove?: readonly string[];
  readonly drop?: boolean;
}

export interface ListChange {
  readonly change: (index: number) => EntryChange;
  /** New entries, each on a line of its own. */
  readonly add: readonly Readonly<Record<string, unknown>>[];
}

/** The text with the list under `key` of its top group changed, or created if missing. `text` must be valid YAML. */
export function withList(text: string, key: string, { change, add }: ListChange): string {
  const document = parseDocument(text);
  const list = document.get(key, true);
  const items = isSeq(list) ? list.items : [];
  const kept = items.filter((item, index) => {
    const { first = {}, set = {}, remove = [], drop = false } = change(index);
    if (!isMap(item)) return true;
    for (const [name, value] of Object.entries(first))
      if (!item.has(name)) item.items.unshift(document.createPair(name, value));
    for (const [name, value] of Object.entries(set)) item.set(name, value);
    for (const name of remove) item.delete(name);
    return !drop;
  });
  const sequence = new YAMLSeq();
  sequence.items.push(...kept, ...add.map((entry) => document.createNode(entry, { flow: true })));
  if (isSeq(list)) {
    if (list.commentBefore != null) sequence.commentBefore = list.commentBefore;
    if (list.comment != null) sequence.comment = list.comment;
  }
  document.set(key, sequence);
  return document.toString({ lineWidth: 0, flowCollectionPadding: false });
}

/** A group written on one line: `{size: [310 mm, 120 mm], id: 1}`. */
export function flowText(group: Readonly<Record<string, unknown>>): string {
  const document = new Document(group);
  if (isMap(document.contents)) document.contents.flow = true;
  return document.toString({ lineWidth: 0, flowCollectionPadding: false }).trimEnd();
}
