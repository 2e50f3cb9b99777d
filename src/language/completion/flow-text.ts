/** Rewrites part of a spec in flow style, on one line. */

import type { SpecSource } from '../../spec/yaml/source.ts';
import { tokensOf } from '../../spec/yaml/tokens.ts';
import type { SpecNode } from '../../spec/yaml/tree.ts';

/** `undefined` if something would be lost: a comment, an anchor, or multi-line text. */
export function flowText(source: SpecSource, node: SpecNode): string | undefined {
  const { start, end } = node.range;
  const written = source.text.slice(start, end).trimEnd();
  const isSafe = tokensOf(written).every(({ kind, text }) => kind !== 'comment' && !/^[&*!]/.test(text));
  return isSafe ? inFlow(source.text, node) : undefined;
}

/** The text as written, without comments. */
export function inFlow(text: string, node: SpecNode): string | undefined {
  const written = text.slice(node.range.start, node.range.end).trimEnd();
  switch (node.kind) {
    case 'alias':
      return undefined;
    case 'scalar':
      if (written.includes('\n')) return undefined;
      // Plain text in a block may contain characters that separate entries in flow style.
      return !node.quoted && /[,[\]{}]/.test(written) ? JSON.stringify(node.value) : written;
    case 'list': {
      const items = node.items.map((item) => item && inFlow(text, item));
      return items.includes(undefined) ? undefined : `[${items.join(', ')}]`;
    }
    case 'map': {
      const entries = node.entries.map(({ key, value }) => {
        const inner = value && inFlow(text, value);
        return inner === undefined ? undefined : `${text.slice(key.range.start, key.range.end)}: ${inner}`;
      });
      return entries.includes(undefined) ? undefined : `{${entries.join(', ')}}`;
    }
  }
}
