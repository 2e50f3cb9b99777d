/** Repairs shapes that are written in a form of their own: `hexagon: 40 mm`, `rectangle: {width: …, height: …}`. */

import type { Issue } from '../../core/issue.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import type { SpecSource } from '../yaml/source.ts';
import { entryRange, writtenValue } from './entries.ts';
import { quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';

export function shapeRepairs(issue: Issue, source: SpecSource): Repair[] {
  const { path, range, code } = issue;
  const key = path.at(-1);
  if (typeof key !== 'string') return [];
  if (code === 'unknown-key') {
    const entry = entryRange(source, path);
    const written = writtenValue(source, path);
    const said = entry && written !== undefined ? inOwnWords(key, written) : undefined;
    if (!entry || !said) return [];
    return [
      {
        slip: range,
        message: `Unknown key “${key}”; here it is ${quoted(said)}.`,
        title: `Change to ${quoted(said)}`,
        edits: [replacement(entry.start, entry.end, said)],
        rarity: 0,
        explains: true,
      },
    ];
  }
  if (code !== 'bad-value') return [];
  return [...sidesAsList(issue, source, key), ...oneSize(issue, source, key), ...textOfLines(issue, source, key)];
}

const corners: Readonly<Record<string, number>> = { triangle: 3, pentagon: 5, hexagon: 6, octagon: 8 };

/** A length alone, and two lengths in a list. */
const oneLength = /^[\d.]+\s*(?:mm|cm|in|pt|px)?$/;
const twoLengths = /^\[\s*([\d.]+)\s*(\w*)\s*,\s*([\d.]+)\s*(\w*)\s*\]$/;

function inOwnWords(key: string, written: string): string | undefined {
  if (Object.hasOwn(corners, key) && oneLength.test(written))
    return `polygon: {sides: ${corners[key]!}, across: ${written}}`;
  if (key === 'square' && oneLength.test(written)) return `rectangle: [${written}, ${written}]`;
  const [, width, ofWidth, height, ofHeight] = twoLengths.exec(written) ?? [];
  if (!/^(?:pill|capsule|stadium|lozenge)$/.test(key) || width === undefined || ofWidth !== ofHeight) return undefined;
  const radius = `${Math.min(Number(width), Number(height)) / 2} ${ofWidth}`.trim();
  return `rectangle: ${written}, radius: ${radius}`;
}

/** `{width: 40 mm, height: 20 mm}` where a list of the two belongs. */
function sidesAsList({ path, range }: Issue, source: SpecSource, key: string): Repair[] {
  const value = valueAt(source.value, path);
  if (!isGroup(value) || !['rectangle', 'ellipse', 'size', 'heart', 'oval'].includes(key)) return [];
  const [width, height] = (['width', 'height'] as const).map((side) => writtenValue(source, [...path, side]));
  if (width === undefined || height === undefined || Object.keys(value).length !== 2) return [];
  const list = `[${width}, ${height}]`;
  return [
    {
      slip: { start: range.start, end: range.end },
      message: `Width and height are a list of two: ${quoted(list)}.`,
      title: `Change to ${quoted(list)}`,
      edits: [replacement(range.start, range.end, list)],
      rarity: 0,
    },
  ];
}

/** `circle: {diameter: 40 mm}`, `circle: [40 mm, 40 mm]` and `rectangle: [40 mm]`. */
function oneSize({ path, range }: Issue, source: SpecSource, key: string): Repair[] {
  const value = valueAt(source.value, path);
  const change = (message: string, text: string): Repair[] => [
    {
      slip: range,
      message,
      title: `Change to ${quoted(text)}`,
      edits: [replacement(range.start, range.end, text)],
      rarity: 0,
    },
  ];
  if (key === 'circle') {
    const [name] = isGroup(value) ? Object.keys(value) : [];
    const diameter = name === 'diameter' || name === 'across' ? writtenValue(source, [...path, name]) : undefined;
    const [, width, ofWidth = '', height, ofHeight] = twoLengths.exec(source.text.slice(range.start, range.end)) ?? [];
    const size =
      diameter ??
      (width !== undefined && width === height && ofWidth === ofHeight ? `${width} ${ofWidth}`.trim() : undefined);
    return size === undefined ? [] : change(`A circle is given by its diameter: ${quoted(size)}.`, size);
  }
  const [, alone] = /^\[\s*([^,[\]]+?)\s*\]$/.exec(source.text.slice(range.start, range.end)) ?? [];
  if (key !== 'rectangle' || alone === undefined) return [];
  const square = `[${alone}, ${alone}]`;
  return change(`Width and height are a list of two: ${quoted(square)} for a square.`, square);
}

/** `text: [Dill, Rue]`. */
function textOfLines({ path, range }: Issue, source: SpecSource, key: string): Repair[] {
  const value: unknown = valueAt(source.value, path);
  const entry = entryRange(source, path);
  if (key !== 'text' || !entry || !Array.isArray(value) || !value.every((each) => typeof each === 'string')) return [];
  const list = source.text.slice(range.start, range.end);
  return [
    {
      slip: { start: entry.start, end: entry.start + key.length },
      message: 'Several lines are written under “lines”, instead of “text”.',
      title: 'Change “text” to “lines”',
      edits: [replacement(entry.start, entry.end, `lines: ${list}`)],
      rarity: 0,
    },
  ];
}
