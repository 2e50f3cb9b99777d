/** Pins and unpins pieces by editing the job's text; comments and everything else stay as they are. */

import { lastLineEnd, lineStart, newLineOf } from '../../core/lines.ts';
import { lengthText } from '../../edits/length-text.ts';
import type { TextEdit } from '../../core/issue.ts';
import type { Units } from '../../core/units.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { SpecList } from '../../spec/yaml/tree.ts';
import { flowText } from '../../spec/yaml/yaml-list.ts';
import type { JobPiece } from '../orders/job-piece.ts';
import type { FixedEntry } from '../read/read-fixed.ts';

export interface PlaceToFix extends Pick<FixedEntry, 'on' | 'at' | 'turned'> {
  readonly of: JobPiece;
  /** The piece's present entry, if any. */
  readonly entry?: FixedEntry;
}

interface FixedText {
  readonly source: SpecSource;
  readonly units: Units;
  /** Every piece of the job, to decide which names an entry needs. */
  readonly all: readonly JobPiece[];
}

/** `undefined` if the text has no place for it, because its value is not a block map. */
export function fixEdits(places: readonly PlaceToFix[], job: FixedText): TextEdit[] | undefined {
  const moved = places.flatMap((place) => (place.entry ? movedEdits(place, place.entry, job) : []));
  const added = places.filter(({ entry }) => !entry).map((place) => entryText(place, job));
  if (added.length === 0) return moved;
  const insertion = insertionOf(added, job.source);
  return insertion && [...moved, insertion];
}

function movedEdits({ on, at, turned }: PlaceToFix, entry: FixedEntry, { source, units }: FixedText): TextEdit[] {
  const { path } = entry;
  const written = (source.value as { readonly fixed?: readonly { readonly at?: readonly unknown[] }[] }).fixed;
  const before = written?.[Number(path[1])]?.at ?? [];
  const edits = [source.setKey(path, 'at', atText(at, units, before))];
  const other = entry.on.kind;
  if (on.kind === other) {
    if (on.number !== entry.on.number) edits.push(source.setKey(path, other, `${on.number}`));
  } else {
    const key = source.keyRange([...path, other]);
    const { end } = source.range([...path, other]);
    edits.push({ range: { start: key.start, end }, text: `${on.kind}: ${on.number}` });
  }
  if (turned !== entry.turned) edits.push(source.setKey(path, 'turned', `${turned}`));
  return edits.filter((edit) => edit !== undefined);
}

function atText({ x, y }: FixedEntry['at'], units: Units, before: readonly unknown[] = []): string {
  return `[${[x, y].map((mm, axis) => lengthText(mm, before[axis], units)).join(', ')}]`;
}

function entryText({ of, on, at, turned }: PlaceToFix, { units, all }: FixedText): string {
  const length = (mm: number) => lengthText(mm, undefined, units);
  return flowText({
    ...identifyingKeys(of, all),
    [on.kind]: on.number,
    at: [length(at.x), length(at.y)],
    ...(turned === 0 ? {} : { turned }),
  });
}

/** The names needed to tell a piece from all others. */
function identifyingKeys(of: JobPiece, all: readonly JobPiece[]): Record<string, unknown> {
  const names: Record<string, unknown> = { spec: of.of.spec };
  let left = all.filter((each) => each.of.spec === of.of.spec);
  const keys = [
    ['order', (each: JobPiece) => each.of.order],
    ['tag', (each: JobPiece) => each.of.label],
    ['piece', (each: JobPiece) => each.piece.id],
  ] as const;
  for (const [key, nameOf] of keys) {
    const own = nameOf(of);
    if (new Set(left.map(nameOf)).size === 1) continue;
    names[key] = asNumber(own);
    left = left.filter((each) => nameOf(each) === own);
  }
  return of.copy > 1 ? { ...names, copy: of.copy } : names;
}

/** Written without quotes if it reads back the same. */
function asNumber(text: string): string | number {
  return /^[1-9]\d{0,14}$/.test(text) ? Number(text) : text;
}

function listIn({ tree }: SpecSource): {
  readonly list?: SpecList;
  readonly isThere: boolean;
  readonly isFlow: boolean;
} {
  const isMap = tree?.kind === 'map';
  const entry = isMap ? tree.entries.find(({ key }) => key.value === 'fixed') : undefined;
  const list = entry?.value?.kind === 'list' ? entry.value : undefined;
  return { ...(list ? { list } : {}), isThere: entry !== undefined, isFlow: !isMap || tree.flow };
}

function insertionOf(added: readonly string[], source: SpecSource): TextEdit | undefined {
  const { text } = source;
  const { list, isThere, isFlow } = listIn(source);
  const newLine = newLineOf(text);
  const lines = (indent: string) => added.map((entry) => `${newLine}${indent}- ${entry}`).join('');
  if (isFlow) return undefined;
  if (!isThere) {
    const end = text.length;
    const before = text === '' || text.endsWith('\n') ? newLine : `${newLine}${newLine}`;
    return { range: { start: end, end }, text: `${before}fixed:${lines('  ')}${newLine}` };
  }
  const last = list?.items.length ? list.items.at(-1) : undefined;
  if (!list || !last) {
    // Nothing, or an empty list, follows the key.
    const { end: from } = source.keyRange(['fixed']);
    const colon = from + /^\s*:/.exec(text.slice(from))![0].length;
    const end = list ? list.range.end : colon;
    return { range: { start: colon, end }, text: lines('  ') };
  }
  if (list.flow) return { range: { start: last.range.end, end: last.range.end }, text: `, ${added.join(', ')}` };
  const end = lastLineEnd(text, last.range);
  return { range: { start: end, end }, text: lines(indentOf(text, list.range.start)) };
}

/** Indentation of the line around the offset. */
function indentOf(text: string, offset: number): string {
  const line = text.slice(lineStart(text, offset), offset);
  return /^[^\S\n]*/.exec(line)![0];
}

/** Removes entries, and the key with the last of them. */
export function releaseEdits(entries: readonly FixedEntry[], source: SpecSource): TextEdit[] {
  const { list } = listIn(source);
  if (!list) return [];
  const gone = new Set(entries.map(({ path }) => Number(path[1])));
  const { text } = source;
  const next = (offset: number) => offset + (/^\r?\n/.exec(text.slice(offset))?.[0].length ?? 0);
  if (list.items.every((_, index) => gone.has(index))) {
    const start = lineStart(text, source.keyRange(['fixed']).start);
    const end = next(lastLineEnd(text, list.range));
    // Includes the empty line above if the section is the last one.
    const blank = end === text.length && /\r?\n\r?\n$/.test(text.slice(0, start));
    return [{ range: { start: blank ? start - newLineOf(text).length : start, end }, text: '' }];
  }
  if (list.flow) {
    const kept = list.items.filter((item, index) => item !== undefined && !gone.has(index));
    const written = kept.map((item) => text.slice(item!.range.start, item!.range.end));
    return [{ range: list.range, text: `[${written.join(', ')}]` }];
  }
  return [...gone].flatMap((index): TextEdit[] => {
    const item = list.items[index];
    if (!item) return [];
    return [
      { range: { start: lineStart(text, item.range.start), end: next(lastLineEnd(text, item.range)) }, text: '' },
    ];
  });
}
