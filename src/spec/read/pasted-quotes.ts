/**
 * Typographic quotes round all the words of a text: to YAML they are letters like any other and would be cut, while a
 * writer who pasted them most likely took them for the quotes of YAML.
 */

import type { Issue, YamlPath } from '../../core/issue.ts';
import { inQuotes, quoted } from '../slips/repair.ts';
import type { SpecSource } from '../yaml/source.ts';
import type { SpecNode, SpecScalar } from '../yaml/tree.ts';

/** The pairs that the languages of Europe use (Unicode's CLDR, `delimiters`; from memory). */
const pairs: readonly string[] = ['“”', '„“', '„”', '””', '«»', '»«', '‘’', '‚‘', '‚’', '‹›', '›‹'];

const anyQuote = /[“”„«»‘’‚‹›]/;

/** Keys whose values are words to cut. A value in quotes of YAML has the others on purpose. */
const wordKeys: ReadonlySet<unknown> = new Set(['text', 'lines', 'batch']);

export function pastedQuotes(source: SpecSource): Issue[] {
  if (!anyQuote.test(source.text)) return [];
  return scalarsOf(source.tree, [], false).flatMap(({ node, path }) => {
    const words = node.quoted || typeof node.value !== 'string' ? undefined : wordsWithin(node.value);
    if (words === undefined) return [];
    const text = needsQuotes(words) ? inQuotes(words) : words;
    return {
      code: 'odd-value' as const,
      severity: 'info' as const,
      path,
      range: node.range,
      message: `The quotes round ${quoted(words)} are letters here and are cut with the words; were they pasted?`,
      repairs: [{ title: 'Take the quotes off', edits: [{ range: node.range, text }] }],
    };
  });
}

/** The words that a pair encloses; `undefined` if it encloses less than the whole. */
function wordsWithin(text: string): string | undefined {
  const signs = Array.from(text.trim());
  const pair = `${signs[0] ?? ''}${signs.at(-1) ?? ''}`;
  const words = signs.slice(1, -1).join('').trim();
  // An apostrophe within single quotes is no quote: ‘Gran’s jar’.
  const inner = words.replace(/(?<=\p{L})’(?=\p{L})/gu, '');
  return signs.length > 2 && pairs.includes(pair) && words !== '' && !anyQuote.test(inner) ? words : undefined;
}

/** Whether YAML would read the words as anything but this text. */
function needsQuotes(words: string): boolean {
  return !/^\p{L}[\p{L}\p{M}\p{N} .'’-]*$/u.test(words) || /^(true|false|null|yes|no|on|off)$/i.test(words);
}

interface Placed {
  readonly node: SpecScalar;
  readonly path: YamlPath;
}

/** Every scalar under a key of words. */
function scalarsOf(node: SpecNode | undefined, path: YamlPath, isWords: boolean): Placed[] {
  switch (node?.kind) {
    case 'scalar':
      return isWords ? [{ node, path }] : [];
    case 'map':
      return node.entries.flatMap(({ key, value }) =>
        scalarsOf(value, [...path, String(key.value)], isWords || wordKeys.has(key.value)),
      );
    case 'list':
      return node.items.flatMap((item, index) => scalarsOf(item, [...path, index], isWords));
    default:
      return [];
  }
}
