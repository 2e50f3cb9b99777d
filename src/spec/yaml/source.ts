/** The text of a spec as a YAML tree, with the place of each part in the text. */

import { newLineOf } from '../../core/lines.ts';
import { isAlias, isMap, isPair, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { Document, Node, ParsedNode } from 'yaml';
import { memoizeRecent } from '../../core/recent.ts';
import { sentences, yamlMessage } from './yaml-messages.ts';
import { lostLetter } from './lost-letters.ts';
import { toTree } from './tree.ts';
import type { SpecNode } from './tree.ts';
import { shortKeyOf } from './short-forms.ts';
import { renameKeys } from './renamed-keys.ts';
import type { OldKey } from './renamed-keys.ts';
import type { Issue, TextEdit, TextRange, YamlPath } from '../../core/issue.ts';
import { groupAsKey, nodeRange, isDeeper, withoutStacks } from './yaml-limits.ts';

/**
 * Longest spec, in characters. A spec is a page of text; anything much larger is another kind of file, and would only
 * keep the editor waiting.
 */
export const longestSpec = 500_000;

/** Most nodes that aliases may unfold to; otherwise a handful of lines can ask for billions. */
const mostAliases = 200;

/** Most errors kept: one slip can make the parser stumble on every line after it. */
const mostErrors = 20;

/** Plain values only: no dates, sets or binary data, whatever tags a text has; and no output on the console. */
const yamlOptions = { prettyErrors: false, resolveKnownTags: false, logLevel: 'error' } as const;

/** The parts of a source that reading a spec needs: the value, and the places of its parts. */
export type SpecPlaces = Pick<SpecSource, 'value' | 'issues' | 'range' | 'keyRange' | 'position'> &
  Partial<Pick<SpecSource, 'written'>>;

/** Deepest nesting of values; tags need about eight levels, and readers recurse for each. */
const deepest = 200;

export class SpecSource {
  readonly text: string;
  /** The plain value, or `undefined` if the text is not valid YAML. */
  readonly value: unknown;
  readonly issues: readonly Issue[];
  /** Keys with a new name; `value` and `tree` use the new names. */
  readonly oldKeys: readonly OldKey[] = [];
  readonly #document: Document<ParsedNode> | undefined;
  readonly #lines = new LineCounter();

  constructor(text: string) {
    this.text = text;
    if (text.length > longestSpec) {
      const size = `${(text.length / 1e6).toFixed(1)} million characters`;
      this.issues = [
        this.#issue('file-too-large', `This file has ${size}; a tag spec has at most half a million.`, 0, 0),
      ];
      return;
    }
    let document: Document.Parsed;
    try {
      document = withoutStacks(() => parseDocument(text, { ...yamlOptions, lineCounter: this.#lines }));
    } catch {
      // The parser only fails on its own stack.
      this.issues = [this.#tooDeep()];
      return;
    }
    const lost = lostLetter(text);
    if (lost !== undefined) {
      this.issues = [this.#issue('not-a-spec', 'This file is not UTF-8 text; save it as UTF-8.', lost, lost + 1)];
      return;
    }
    this.#document = document;
    const issues: Issue[] = document.errors.slice(0, mostErrors).map((error) => {
      const start = Math.min(error.pos[0], text.length);
      return this.#issue('yaml-syntax', yamlMessage(error), start, Math.max(error.pos[1], start + 1));
    });
    try {
      const odd = groupAsKey(document);
      if (odd) {
        // Turning such a key into text takes time that grows with every group inside it.
        const message = 'A group cannot be a key; is a closing bracket missing?';
        this.issues = [this.#issue('yaml-syntax', message, odd.start, odd.start + 1), ...issues];
        return;
      }
      if (document.errors.length === 0) this.oldKeys = renameKeys(document.contents);
      const value: unknown = document.toJS({ maxAliasCount: mostAliases });
      // Whatever else the parser says of such a text comes from its own stack.
      if (isDeeper(value, deepest)) issues.splice(0, issues.length, this.#tooDeep());
      else this.value = value;
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      const unknown = /^Unresolved alias.*: (.+)$/.exec(reason)?.[1];
      const start = unknown === undefined ? -1 : text.indexOf(`*${unknown}`);
      issues.push(
        start < 0
          ? this.#issue(
              'yaml-syntax',
              'What & and * stand for cannot be put in here; write it out instead.',
              0,
              this.#firstLineEnd(),
            )
          : this.#issue('yaml-syntax', sentences.BAD_ALIAS, start, start + unknown!.length + 1),
      );
    }
    this.issues = issues;
  }

  /** Whether the first fault is a key that occurs twice. */
  get hasKeyTwice(): boolean {
    return this.#document?.errors[0]?.code === 'DUPLICATE_KEY';
  }

  /** The parsed text, as far as the parser understood it; `undefined` whenever `value` is. */
  get tree(): SpecNode | undefined {
    return this.value === undefined ? undefined : toTree(this.#document?.contents);
  }

  /** 1-based line and column of an offset, columns in UTF-16 units as editors count them. */
  position(offset: number): { line: number; column: number } {
    if (this.#lines.lineStarts.length === 0) return { line: 1, column: offset + 1 };
    const { line, col } = this.#lines.linePos(offset);
    // In an empty file, an offset at the very start comes back as line 0.
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  }

  /** Range of the value at `path`; without a value, of its key; else of the nearest ancestor that has a range. */
  range(path: YamlPath): TextRange {
    for (let length = path.length; length >= 0; length--) {
      const found = this.#find(path.slice(0, length));
      const range = nodeRange(found.value) ?? nodeRange(found.key);
      if (range) return this.#shown(range);
    }
    return { start: 0, end: this.#firstLineEnd() };
  }

  /** Range of the key that `path` ends in; without one, of the first line of the value. */
  keyRange(path: YamlPath): TextRange {
    const key = nodeRange(this.#find(path).key);
    if (key) return this.#shown(key);
    const { start, end } = this.range(path);
    return { start, end: start + /^[^\r\n]*/.exec(this.text.slice(start, end))![0].length };
  }

  /** A plain value without quotes as it is written, such as `007` for the number 7. */
  written(path: YamlPath): string | undefined {
    const { value } = this.#find(path);
    return isScalar(value) ? value.source : undefined;
  }

  /**
   * The smallest edit that gives the map at `path` this key and value: it replaces the old value, or adds an entry in
   * the style of the others, and leaves comments and line endings untouched. `undefined` if there is no map.
   */
  setKey(path: YamlPath, key: string, text: string): TextEdit | undefined {
    let { value: map } = this.#find(path);
    if (isAlias(map)) map = map.resolve(this.#document!);
    if (isScalar(map) || (isSeq(map) && map.flow)) return this.#expanded(map, path, key, text);
    if (!isMap(map) || !map.range) return undefined;
    const old = nodeRange(this.#find([...path, key]).value);
    if (old) return { range: this.#shown(old), text };
    const last = map.items.at(-1);
    const entry = `${key}: ${text}`;
    if (!last) return map.flow ? { range: at(map.range[0] + 1), text: entry } : undefined;
    const end = nodeRange(last.value)?.end ?? nodeRange(last.key)?.end;
    const first = nodeRange(map.items[0]?.key);
    if (end === undefined || !first) return undefined;
    if (map.flow) return { range: at(end), text: `, ${entry}` };
    // After the line of the last entry, including its comment.
    const content = this.#shown({ start: first.start, end }).end;
    const lineEnd = /\r?\n|$/.exec(this.text.slice(content))!;
    const newLine = newLineOf(this.text);
    const indent = ' '.repeat(this.position(first.start).column - 1);
    return { range: at(content + lineEnd.index), text: `${newLine}${indent}${entry}` };
  }

  /** Expands a group written as a single value, such as `ring: top`, and adds another key. */
  #expanded(short: unknown, path: YamlPath, key: string, text: string): TextEdit | undefined {
    const only = shortKeyOf(path);
    const range = nodeRange(short);
    if (only === undefined || !range) return undefined;
    const shown = this.#shown(range);
    const written = this.text.slice(shown.start, shown.end);
    return { range: shown, text: key === only ? text : `{${only}: ${written}, ${key}: ${text}}` };
  }

  /** The path of the innermost value whose text, key included, contains the offset. */
  pathAt(offset: number): YamlPath {
    const path: (string | number)[] = [];
    let node: unknown = this.#document?.contents;
    for (;;) {
      if (isMap(node)) {
        const pair = node.items.find((item) => covers(item.key, item.value, offset));
        if (!pair || !isScalar(pair.key)) return path;
        path.push(String(pair.key.value));
        node = pair.value;
      } else if (isSeq(node)) {
        const index = node.items.findIndex((item) => covers(item, item, offset));
        if (index < 0) return path;
        path.push(index);
        node = node.items[index];
      } else {
        return path;
      }
    }
  }

  #find(path: YamlPath): { key: unknown; value: unknown } {
    let key: unknown;
    let value: unknown = this.#document?.contents;
    for (const step of path) {
      if (isAlias(value)) value = value.resolve(this.#document!);
      if (isMap(value)) {
        const pair = value.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step));
        key = pair?.key;
        value = pair?.value;
      } else if (isSeq(value) && typeof step === 'number') {
        key = undefined;
        value = value.items[step];
        if (isPair(value)) value = value.value;
      } else {
        return { key: undefined, value: undefined };
      }
    }
    return { key, value };
  }

  /** A block's range without the trailing line breaks and comments that YAML includes in it. */
  #shown({ start, end }: TextRange): TextRange {
    const trimmed = this.text.slice(start, end).trimEnd().length;
    return { start, end: start + Math.max(trimmed, 1) };
  }

  #firstLineEnd(): number {
    const end = this.text.search(/\r?\n/);
    return end < 0 ? this.text.length : end;
  }

  #tooDeep(): Issue {
    const message = `Values in this file are nested more than ${deepest} deep.`;
    return this.#issue('yaml-syntax', message, 0, this.#firstLineEnd());
  }

  #issue(code: Issue['code'], message: string, start: number, end: number): Issue {
    return {
      code,
      severity: 'error',
      message,
      path: [],
      range: { start, end: Math.min(end, Math.max(this.text.length, 1)) },
    };
  }
}

export const sourceOf = memoizeRecent(8, (text) => new SpecSource(text));

function at(offset: number): TextRange {
  return { start: offset, end: offset };
}

function covers(first: unknown, last: unknown, offset: number): boolean {
  const start = (first as Node | null)?.range?.[0];
  const end = (last as Node | null)?.range?.[2] ?? (first as Node | null)?.range?.[2];
  return start !== undefined && end !== undefined && start <= offset && offset < end;
}
