/**
 * The YAML of a spec as a plain tree with ranges, for work on the text itself. It also exists for a half-typed text:
 * whatever the parser could make of it. Ranges are UTF-16 offsets.
 */

import { isAlias, isMap, isScalar, isSeq } from 'yaml';
import type { TextRange } from '../../core/issue.ts';

export interface SpecScalar {
  readonly kind: 'scalar';
  readonly range: TextRange;
  readonly value: unknown;
  readonly quoted: boolean;
}

export interface SpecEntry {
  readonly key: SpecScalar;
  /** Absent if nothing is written after the colon. */
  readonly value?: SpecNode;
}

export interface SpecMap {
  readonly kind: 'map';
  readonly range: TextRange;
  readonly flow: boolean;
  readonly entries: readonly SpecEntry[];
}

export interface SpecList {
  readonly kind: 'list';
  readonly range: TextRange;
  readonly flow: boolean;
  /** `undefined` if nothing is written after the dash. */
  readonly items: readonly (SpecNode | undefined)[];
}

/** A reference to an anchored value elsewhere in the text. */
export interface SpecAlias {
  readonly kind: 'alias';
  readonly range: TextRange;
}

export type SpecNode = SpecScalar | SpecMap | SpecList | SpecAlias;

/** The tree of a YAML node, if any. Entries without a plain key are left out: no spec has any. */
export function toTree(node: unknown): SpecNode | undefined {
  const range = rangeOf(node);
  if (!range) return undefined;
  if (isScalar(node)) {
    if (range.end === range.start) return undefined;
    const quoted = node.type !== undefined && node.type !== 'PLAIN';
    return { kind: 'scalar', range, value: node.value, quoted };
  }
  if (isMap(node)) {
    const entries = node.items.flatMap((pair): SpecEntry[] => {
      const key = toTree(pair.key);
      const value = toTree(pair.value);
      return key?.kind === 'scalar' ? [{ key, ...(value ? { value } : {}) }] : [];
    });
    return { kind: 'map', range, flow: node.flow === true, entries };
  }
  if (isSeq(node)) return { kind: 'list', range, flow: node.flow === true, items: node.items.map(toTree) };
  return isAlias(node) ? { kind: 'alias', range } : undefined;
}

function rangeOf(node: unknown): TextRange | undefined {
  const range = (node as { range?: readonly number[] | null } | null | undefined)?.range;
  return range ? { start: range[0]!, end: range[1]! } : undefined;
}
