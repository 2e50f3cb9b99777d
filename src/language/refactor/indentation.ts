/** Indentation of each line of a spec, and alignment of values within a map. */

import type { SpecSource } from '../../spec/yaml/source.ts';
import type { SpecEntry, SpecMap, SpecNode } from '../../spec/yaml/tree.ts';

/** Spaces for each level. */
const step = 2;

export class Indentation {
  readonly #source: SpecSource;
  /** By line, counted from 1, for lines that begin with a key or a dash. */
  readonly #indents = new Map<number, { readonly old: number; readonly next: number }>();
  /** By the offset of a colon. */
  readonly #gaps = new Map<number, number>();

  constructor(source: SpecSource) {
    this.#source = source;
    if (source.tree) this.#node(source.tree, 0);
  }

  /** Indentation of the first word on a line. A continuation line or a comment moves with its neighbour. */
  indentOf(offset: number): number {
    const { line, column } = this.#source.position(offset);
    const own = this.#indents.get(line);
    if (own) return own.next;
    const isComment = this.#source.text[offset] === '#';
    const neighbour = isComment ? (this.#near(line, 1) ?? this.#near(line, -1)) : this.#near(line, -1);
    if (!neighbour) return column - 1;
    return isComment ? neighbour.next : Math.max(neighbour.next + 1, column - 1 + neighbour.next - neighbour.old);
  }

  /** Shift of the nearest earlier line that begins with a key or a dash. */
  shiftAt(offset: number): number {
    const moved = this.#near(this.#source.position(offset).line, -1);
    return moved ? moved.next - moved.old : 0;
  }

  gapBehind(colon: number): number | undefined {
    return this.#gaps.get(colon);
  }

  #near(line: number, way: 1 | -1): { readonly old: number; readonly next: number } | undefined {
    const lines = [...this.#indents.keys()].filter((each) => (each - line) * way > 0);
    return this.#indents.get(way > 0 ? Math.min(...lines) : Math.max(...lines));
  }

  #node(node: SpecNode, indent: number): void {
    if (node.kind === 'map' && !node.flow) {
      for (const { key, value } of node.entries) {
        this.#line(key.range.start, indent);
        if (value) this.#node(value, indent + step);
      }
      this.#align(node);
    } else if (node.kind === 'list' && !node.flow) {
      for (const item of node.items) {
        if (!item) continue;
        this.#line(this.#source.text.lastIndexOf('-', item.range.start - 1), indent);
        this.#node(item, indent + step);
      }
    }
  }

  /** Only the first word on a line decides its indentation. */
  #line(offset: number, next: number): void {
    const { line, column } = this.#source.position(offset);
    const before = this.#source.text.slice(offset - column + 1, offset);
    if (before.trim() === '') this.#indents.set(line, { old: column - 1, next });
  }

  /** Aligns one-line values on consecutive lines if any of them has extra space before it. */
  #align({ entries }: SpecMap): void {
    let group: SpecEntry[] = [];
    const close = () => {
      const isSpread = group.length > 1 && group.some((entry) => this.#space(entry) > 1);
      const longest = Math.max(0, ...group.map(({ key }) => key.range.end - key.range.start));
      for (const { key } of group) {
        const length = key.range.end - key.range.start;
        this.#gaps.set(this.#colon(key.range.end), isSpread ? longest - length + 1 : 1);
      }
      group = [];
    };
    for (const entry of entries) {
      const line = this.#lineOf(entry);
      if (line === undefined) {
        close();
        continue;
      }
      const last = group.at(-1);
      if (last && this.#lineOf(last) !== line - 1) close();
      group.push(entry);
    }
    close();
  }

  /** Line of an entry whose key and whole value are on one line. */
  #lineOf({ key, value }: SpecEntry): number | undefined {
    if (!value) return undefined;
    const { text } = this.#source;
    const { line } = this.#source.position(key.range.start);
    return text.slice(key.range.start, value.range.end).trimEnd().includes('\n') ? undefined : line;
  }

  #space({ key, value }: SpecEntry): number {
    return value!.range.start - this.#colon(key.range.end) - 1;
  }

  #colon(end: number): number {
    return this.#source.text.indexOf(':', end);
  }
}
