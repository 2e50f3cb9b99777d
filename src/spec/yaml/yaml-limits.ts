/** What of YAML would keep the editor waiting or overflow a stack: groups as keys, deep nesting, stacks of many errors. */

import { isCollection, visit } from 'yaml';
import type { Document, Node } from 'yaml';
import type { TextRange } from '../../core/issue.ts';

/** Range of the first map or list used as a key, if there is one. */
export function groupAsKey(document: Document.Parsed): TextRange | undefined {
  let found: TextRange | undefined;
  visit(document, {
    Pair: (_, { key }) => {
      if (!isCollection(key)) return undefined;
      found = nodeRange(key) ?? { start: 0, end: 1 };
      return visit.BREAK;
    },
  });
  return found;
}

export function nodeRange(node: unknown): TextRange | undefined {
  const range = (node as Node | undefined | null)?.range;
  return range && range[1] > range[0] ? { start: range[0], end: range[1] } : undefined;
}

/** Checks level by level, each object once per level: aliases may lead to one value many times, or in a circle. */
export function isDeeper(value: unknown, most: number): boolean {
  let level = new Set([value]);
  for (let depth = 0; level.size > 0; depth++) {
    if (depth > most) return true;
    const next = new Set<unknown>();
    for (const each of level) {
      if (typeof each !== 'object' || each === null) continue;
      for (const inner of Object.values(each)) if (typeof inner === 'object' && inner !== null) next.add(inner);
    }
    level = next;
  }
  return false;
}

/**
 * Runs the action without recording stacks: a broken text has hundreds of errors, and recording where in the parser
 * each arose takes longer than finding it.
 */
export function withoutStacks<T>(action: () => T): T {
  const { stackTraceLimit } = Error;
  Error.stackTraceLimit = 0;
  try {
    return action();
  } finally {
    Error.stackTraceLimit = stackTraceLimit;
  }
}
