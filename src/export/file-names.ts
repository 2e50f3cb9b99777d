/** Names of the files of a batch: that of the spec, and what each tag goes by. */

import { freeName } from '../core/names.ts';
import { labelOf } from '../spec/batch.ts';

/** Longer ones do not go everywhere. */
const longest = 60;

export function rowFileName(spec: string, label: string): string {
  return `${spec}-${plainName(label)}`;
}

/** Letters and figures of any script, with a dash for whatever else stands between them. */
export function plainName(label: string): string {
  const plain = label
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase();
  return Array.from(plain).slice(0, longest).join('') || 'tag';
}

/** Of a tag's files: the spec's own or, of a batch, with what the tag goes by. */
export function tagFileName(spec: string, tag: Parameters<typeof labelOf>[0]): string {
  const label = labelOf(tag);
  return label === undefined ? spec : rowFileName(spec, label);
}

/** The name, with a number behind it where it is taken; capitals make no difference to some file systems. */
export function freeFileName(wanted: string, taken: ReadonlySet<string>): string {
  const names = new Set([...taken].map((name) => name.toLowerCase()));
  return freeName(wanted, (name) => names.has(name.toLowerCase()), '-');
}
