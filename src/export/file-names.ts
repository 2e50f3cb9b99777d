/** File names for a batch: the spec's name followed by the tag's label. */

import { freeName } from '../core/names.ts';
import { labelOf } from '../spec/batch/batch.ts';

/** Longest name, in characters, that is accepted everywhere. */
const longest = 60;

export function rowFileName(spec: string, label: string): string {
  return `${spec}-${plainName(label)}`;
}

/** Letters and digits of any script; anything between them becomes a dash. */
export function plainName(label: string): string {
  const plain = label
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase();
  return Array.from(plain).slice(0, longest).join('') || 'tag';
}

/** Base name of a tag's files: the spec's or, in a batch, with the tag's label. */
export function tagFileName(spec: string, tag: Parameters<typeof labelOf>[0]): string {
  const label = labelOf(tag);
  return label === undefined ? spec : rowFileName(spec, label);
}

/** Adds a number to a name that is taken, ignoring case as some file systems do. */
export function freeFileName(wanted: string, taken: ReadonlySet<string>): string {
  const names = new Set([...taken].map((name) => name.toLowerCase()));
  return freeName(wanted, (name) => names.has(name.toLowerCase()), '-');
}
