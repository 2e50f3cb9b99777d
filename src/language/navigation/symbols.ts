/** Document outline of a spec: its sections, the names defined in them, and the parts of each piece. */

import type { TextRange } from '../../core/issue.ts';
import { generatorKeys } from '../../spec/read/read-generator.ts';
import type { SpecEntry, SpecNode } from '../../spec/yaml/tree.ts';
import { inline } from '../hover/docs.ts';

export interface SpecSymbol {
  readonly kind: 'section' | 'shape' | 'piece' | 'named' | 'key';
  readonly name: string;
  /** Description in a few words. */
  readonly detail: string;
  /** Range of the key with its value, and of the key alone. */
  readonly range: TextRange;
  readonly selection: TextRange;
  readonly children: readonly SpecSymbol[];
}

const kindsIn: Readonly<Partial<Record<string, SpecSymbol['kind']>>> = {
  shapes: 'shape',
  pieces: 'piece',
  hangers: 'named',
  stocks: 'named',
  ties: 'named',
  machines: 'named',
};

export function symbolsOf(tree: SpecNode | undefined): SpecSymbol[] {
  if (tree?.kind !== 'map') return [];
  return tree.entries.map((entry) => {
    const kind = kindsIn[String(entry.key.value)];
    return kind ? symbol(entry, 'section', members(entry, kind)) : symbol(entry, 'key', []);
  });
}

function members({ value }: SpecEntry, kind: SpecSymbol['kind']): SpecSymbol[] {
  if (value?.kind !== 'map') return [];
  return value.entries.map((entry) => symbol(entry, kind, kind === 'piece' ? childSymbols(entry) : []));
}

function childSymbols({ value }: SpecEntry): SpecSymbol[] {
  return value?.kind === 'map' ? value.entries.map((entry) => symbol(entry, 'key', [])) : [];
}

function symbol(entry: SpecEntry, kind: SpecSymbol['kind'], children: readonly SpecSymbol[]): SpecSymbol {
  const { key, value } = entry;
  const range = { start: key.range.start, end: value?.range.end ?? key.range.end };
  return { kind, name: String(key.value), detail: detailOf(kind, value), range, selection: key.range, children };
}

/** Enough for a name or a size, in characters; the outline is narrow. */
const longestDetail = 40;

function detailOf(kind: SpecSymbol['kind'], value: SpecNode | undefined): string {
  if (!value || kind === 'section' || kind === 'piece') return '';
  if (kind === 'shape' && value.kind === 'map') {
    const generator = value.entries.find(({ key }) => generatorKeys.some((each) => each === key.value));
    return generator ? clippedText(`${String(generator.key.value)} ${valueText(generator.value)}`) : '';
  }
  return clippedText(valueText(value));
}

function valueText(node: SpecNode | undefined): string {
  if (node?.kind === 'scalar') return String(node.value);
  return node?.kind === 'list' ? `[${node.items.map(valueText).join(', ')}]` : groupText(node);
}

function groupText(node: SpecNode | undefined): string {
  return node?.kind === 'map'
    ? inline(Object.fromEntries(node.entries.map(({ key, value }) => [String(key.value), valueText(value)])))
    : '';
}

function clippedText(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > longestDetail ? `${line.slice(0, longestDetail - 1)}…` : line;
}
