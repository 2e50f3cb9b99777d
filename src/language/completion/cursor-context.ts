/**
 * The context of an offset in a spec, even while the text is half typed: a placeholder that nobody writes is inserted
 * there, and the YAML parser, which tolerates a lot, shows where it ends up.
 */

import type { TextRange, YamlPath } from '../../core/issue.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { tokensOf } from '../../spec/yaml/tokens.ts';
import type { SpecToken } from '../../spec/yaml/tokens.ts';
import type { SpecNode } from '../../spec/yaml/tree.ts';
import { without } from '../changed-copies.ts';

/** Letters only, so that it can be a key or a value and is never read as a number. */
export const placeholderWord = 'zzStopgapzz';

export interface CursorContext {
  /** `key`: a key of the map at `path`. `value`: the value at `path`, or a list entry. */
  readonly role: 'key' | 'value';
  readonly path: YamlPath;
  /** Range of the word there, with its quotes, or the empty range at the offset. */
  readonly replace: TextRange;
  readonly written: string;
  /** The word's quotation marks. */
  readonly quote: string;
  /** Whether it is in a flow collection, where commas separate entries. */
  readonly flow: boolean;
  /** Whether it comes first on its line, apart from dashes. */
  readonly ownLine: boolean;
  /** Indentation of the line, and the column of the word. */
  readonly lineIndent: number;
  readonly column: number;
  /** Separators needed between a word inserted here and the text before and after it. */
  readonly before: string;
  readonly after: string;
  /** Whether a key already has its colon, and what follows that. */
  readonly colon: boolean;
  /** The value of the whole spec as written, and without the word and, for a key, without its value. */
  readonly now: unknown;
  readonly rest: unknown;
  /** The value of a key that already has its colon. */
  readonly kept: unknown;
  /** The spec with the placeholder in it: after the offset, ranges are shifted by its length. */
  readonly held: SpecSource;
}

/** Separator between two entries of the map that a key is in. */
export function entrySeparator({ flow, lineIndent, column }: CursorContext): string {
  // Editors indent the further lines of a snippet like the first; after a list dash that is not enough.
  return flow ? ', ' : `\n${' '.repeat(column - lineIndent)}`;
}

/** Empty inside comments and multi-line text, and where nothing can be inserted without more around it. */
export function placesAt(text: string, offset: number): readonly CursorContext[] {
  const word = wordAt(text, offset);
  if (!word) return [];
  if (last?.text !== text || last.word.start !== word.start || last.word.end !== word.end)
    last = { text, word, places: placesOf(text, word) };
  return last.places;
}

/** Cached, because editors ask about one word many times: completions, signature help, and both again. */
let last: { readonly text: string; readonly word: Word; readonly places: readonly CursorContext[] } | undefined;

function placesOf(text: string, word: Word): CursorContext[] {
  const source = new SpecSource(text);
  const places: CursorContext[] = [];
  for (const attempt of attempts(text, word)) {
    if (places.length > 0 && !attempt.colon) continue;
    const place = contextFrom(text, word, attempt, source);
    // A flow list takes words as well as maps, but a colon of its own would make an odd map of one entry.
    if (!place || (attempt.colon && place.flow)) continue;
    if (!places.some(({ role }) => role === place.role)) places.push(place);
  }
  return places;
}

interface Word extends TextRange {
  readonly quote: string;
}

/** The plain or quoted word that touches the offset, or an empty one at it. */
function wordAt(text: string, offset: number): Word | undefined {
  const near = tokensOf(text).filter(({ start, text: token }) => start <= offset && offset <= start + token.length);
  const inside = near.filter(({ start }) => start < offset);
  if (inside.some(({ kind, text: token }) => kind === 'comment' || isOther(token))) return undefined;
  const token = near.find(({ kind }) => kind === 'plain' || kind === 'quoted') ?? beforeSpace(text, offset, inside[0]);
  if (!token) return { start: offset, end: offset, quote: '' };
  if (token.text.includes('\n') && (token.kind === 'quoted' || token.text.endsWith('\n'))) return undefined;
  if (token.kind === 'plain') {
    // A key without a colon is parsed as one text with the lines below it.
    const line = token.text.slice(0, offset - token.start).lastIndexOf('\n') + 1;
    const indent = line === 0 ? 0 : /^\s*/.exec(token.text.slice(line))![0].length;
    const word = /^.*/.exec(token.text.slice(line + indent))![0];
    const start = token.start + line + indent;
    return { start, end: Math.max(start + word.length, offset), quote: '' };
  }
  const quote = token.text[0]!;
  const closed = token.text.length > 1 && token.text.endsWith(quote);
  return closed ? { start: token.start, end: token.start + token.text.length, quote } : undefined;
}

/** Anchors, aliases, tags, directives and document markers. */
const isOther = (token: string): boolean => /^[&*!%]|^(---|\.\.\.)$/.test(token);

/**
 * A word followed by spaces can continue: `80 ` may become `80 mm`. Not at the start of a line, where the word has
 * ended.
 */
function beforeSpace(text: string, offset: number, space: SpecToken | undefined): SpecToken | undefined {
  if (space?.kind !== 'space' || space.text.includes('\n') || !/^ *([,}\]#\r\n]|$)/.test(text.slice(offset)))
    return undefined;
  const before = tokensOf(text.slice(0, space.start)).at(-1);
  return before?.kind === 'plain' ? before : undefined;
}

interface Attempt {
  readonly colon: boolean;
  readonly after: string;
}

function attempts(text: string, word: Word): Attempt[] {
  const follows = /^[^\S\n]*(?:#.*)?/.exec(text.slice(word.end))![0];
  const lineIsOver = /^(?:\r?\n|$)/.test(text.slice(word.end + follows.length));
  const plain = { colon: false, after: '' };
  const parted = { colon: false, after: follows === '' && !lineIsOver ? ', ' : ',' };
  return lineIsOver && startsLine(text, word) ? [plain, parted, { colon: true, after: '' }] : [plain, parted];
}

function lineStartOf(text: string, offset: number): number {
  return text.slice(0, offset).lastIndexOf('\n') + 1;
}

function startsLine(text: string, { start }: TextRange): boolean {
  return /^\s*(?:-\s+)*$/.test(text.slice(lineStartOf(text, start), start));
}

function contextFrom(
  text: string,
  word: Word,
  { colon, after }: Attempt,
  source: SpecSource,
): CursorContext | undefined {
  const written = text.slice(word.start, word.end);
  const before = /(?:^|\s)-$|[:,]$/.test(text.slice(0, word.start)) ? ' ' : '';
  const start = word.start + before.length;
  const lineStart = lineStartOf(text, word.start);
  const changed = `${text.slice(0, word.start)}${before}${placeholderWord}${colon ? ':' : ''}${after}${text.slice(word.end)}`;
  const held = new SpecSource(changed);
  const hasColon = /^[ \t]*:(?:\s|$|[,}\]])/.test(text.slice(word.end));
  const found = held.tree && find(held.tree, [], false);
  if (!found || faultCount(held) > faultCount(source)) return undefined;
  const { role, path, flow } = found;
  if (role === 'key' && written.endsWith(' ')) return undefined;
  // Separated from it by a comma, the value that follows would become a key.
  if (after !== '' && role === 'value' && typeof path.at(-1) === 'string') return undefined;
  const at = role === 'key' ? [...path, placeholderWord] : path;
  return {
    role,
    path,
    replace: { start: word.start, end: word.end },
    written,
    quote: word.quote,
    flow,
    ownLine: startsLine(text, word),
    lineIndent: /^ */.exec(text.slice(lineStart, word.start))![0].length,
    column: word.start - lineStart,
    before,
    after,
    colon: role === 'key' && hasColon,
    now: source.value,
    rest: without(held.value, at),
    kept: role === 'key' && hasColon ? at.reduce<unknown>(stepInto, held.value) : undefined,
    held,
  };

  function find(
    node: SpecNode,
    path: YamlPath,
    flow: boolean,
  ): Pick<CursorContext, 'role' | 'path' | 'flow'> | undefined {
    const { range } = node;
    if (range.start > start || range.end < start) return undefined;
    if (node.kind === 'scalar') return node.value === placeholderWord ? { role: 'value', path, flow } : undefined;
    if (node.kind === 'list')
      return first(node.items, (item, index) => item && find(item, [...path, index], node.flow));
    if (node.kind === 'alias') return undefined;
    return first(node.entries, ({ key, value }) => {
      // The text after it would become part of it.
      if (key.value === placeholderWord) return value && !hasColon ? undefined : { role: 'key', path, flow: node.flow };
      return value && find(value, [...path, String(key.value)], node.flow);
    });
  }
}

const faultCount = (source: SpecSource): number => source.issues.length;

function stepInto(value: unknown, step: string | number): unknown {
  return (value as Readonly<Record<string | number, unknown>> | null | undefined)?.[step];
}

function first<T, R>(items: readonly T[], look: (item: T, index: number) => R | undefined): R | undefined {
  for (const [index, item] of items.entries()) {
    const found = look(item, index);
    if (found !== undefined) return found;
  }
  return undefined;
}
