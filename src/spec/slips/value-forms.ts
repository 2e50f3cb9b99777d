/** Repairs values in a form that YAML, or the spec language, reads differently from what was meant. */

import type { Issue } from '../../core/issue.ts';
import { pointNotComma } from '../../core/length.ts';
import type { SpecSource } from '../yaml/source.ts';
import type { SpecLine } from './spec-lines.ts';
import { numberSlips } from './number-slips.ts';
import { inQuotes, quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';

export function valueRepairs(issue: Issue, source: SpecSource, line: SpecLine): Repair[] {
  return [
    ...decimalCommas(source.text, line),
    ...comments(issue, source.text, line),
    ...roundBrackets(source.text, line),
    ...tieInWords(issue, source),
    ...wrappedValue(issue, source),
    ...sizes(issue, source),
    ...yesAndNo(issue, source),
    ...units(issue, source),
    ...numberSlips(issue, source),
    ...columns(issue, source),
  ];
}

/** `5,8 cm`: a decimal comma. */
function decimalCommas(text: string, { start, contentEnd }: SpecLine): Repair[] {
  return [
    ...text
      .slice(start, contentEnd)
      .matchAll(/(?<![\w.,])(\d+),(\d+)(?=\s*(?:mm|cm|in|pt|px)?\s*(?:$|[,}\]"'])|\s*(?:mm|cm|in|pt|px)\b)/g),
  ].map(({ index, 0: figure, 1: whole = '', 2: fraction = '' }) => {
    const at = start + index;
    return {
      slip: { start: at, end: at + figure.length },
      message: pointNotComma(`${whole}.${fraction}`, figure),
      title: `Change to ${whole}.${fraction}`,
      edits: [replacement(at + whole.length, at + whole.length + 1, '.')],
      rarity: 0,
    };
  });
}

/** `text: #1 mug`: a key without a value, followed by a comment. `!` and `&` are misread in the same way. */
function comments({ code, range }: Issue, text: string, line: SpecLine): Repair[] {
  const rest = text.slice(range.end, line.end);
  const found = /^\s*:\s+([#!&].*?)\s*$/.exec(rest);
  if (code !== 'bad-value' || !found) return [];
  const value = found[1]!;
  const start = range.end + rest.indexOf(value);
  return [
    {
      slip: { start, end: start + value.length },
      message: value.startsWith('#')
        ? `“#” starts a comment, so this text is empty. Put it in quotes: ${inQuotes(value)}.`
        : `A text that starts with “${value[0]!}” needs quotes: ${inQuotes(value)}.`,
      title: 'Put in quotes',
      edits: [replacement(start, start + value.length, inQuotes(value))],
      rarity: 0,
    },
  ];
}

/** `(60 mm, 30 mm)`. */
function roundBrackets(text: string, { start, contentEnd }: SpecLine): Repair[] {
  return [...text.slice(start, contentEnd).matchAll(/\(([^()]*)\)/g)].map(({ index, 0: found, 1: inner = '' }) => {
    const at = start + index;
    return {
      slip: { start: at, end: at + found.length },
      message: `A list goes in square brackets: ${quoted(`[${inner}]`)}.`,
      title: 'Change to square brackets',
      edits: [replacement(at, at + found.length, `[${inner}]`)],
      rarity: 1,
    };
  });
}

/** `tie: twine 3 mm`, `tie: 25 mm split ring`. */
function tieInWords({ code, path, range }: Issue, { text }: SpecSource): Repair[] {
  const value = text.slice(range.start, range.end).replace(/^(['"])(.*)\1$/, '$2');
  const [, before, length = '', after] =
    /^(twine|ribbon|(?:split|key)[ _]?ring)?[\s:]*([\d./]+\s*(?:mm|cm|in|pt|px)?)\s*(twine|ribbon|(?:split|key)[ _]?ring)?$/i.exec(
      value.trim(),
    ) ?? [];
  const kind = (before ?? after)?.toLowerCase().replace(/^(?:split|key).*$/, 'split_ring');
  if (code !== 'unknown-name' || path.at(-1) !== 'tie' || kind === undefined) return [];
  const group = `{${kind}: ${length.trim()}}`;
  return [
    {
      slip: range,
      message: `A tie is written as a group: ${quoted(group)}.`,
      title: `Change to ${quoted(group)}`,
      edits: [replacement(range.start, range.end, group)],
      rarity: 0,
    },
  ];
}

/** The key that a single value most often stands for, by the key it is written under. */
const firstKeys: Readonly<Record<string, readonly string[]>> = {
  at_most: ['x_height', 'cap_height', 'width'],
  tie: ['twine', 'ribbon'],
  arc: ['radius'],
  stock: ['material', 'thickness'],
  polygon: ['sides'],
  sheet: ['size'],
  along: ['outline'],
  hole: ['diameter'],
  ring: ['diameter'],
  keyhole: ['diameter'],
  slot: ['length'],
};

/** `at_most: 8 mm`, `union: plate` and `hanger: ring`: adds the missing brackets, and the key within them. */
function wrappedValue(issue: Issue, source: SpecSource): Repair[] {
  const key = issue.path.findLast((step) => typeof step === 'string');
  const { start, end } = issue.range;
  const value = source.text.slice(start, end);
  if (key === undefined || value === '' || value.includes('\n') || value.startsWith('{')) return [];
  const put = (text: string, message: string, title: string): Repair => ({
    slip: { start, end },
    message,
    title,
    edits: [replacement(start, end, text)],
    rarity: 1,
  });
  if (issue.code === 'unknown-hanger' && /^(?:top|bottom|left|right)(?:-(?:left|right))?$/.test(value)) {
    const text = `{hole: ${value}}`;
    return [
      put(text, `A hanger is a hole, a ring, a slot or a keyhole: ${quoted(text)}.`, `Change to ${quoted(text)}`),
    ];
  }
  if (['ring', 'hole', 'slot', 'keyhole'].includes(value)) {
    const text = `{${value}: ${value === 'ring' ? 'auto' : 'top'}}`;
    return [put(text, `A ${value} is written as a group: ${quoted(text)}.`, `Change to ${quoted(text)}`)];
  }
  const groups = (Object.hasOwn(firstKeys, key) ? firstKeys[key]! : []).map((first) => {
    const text = `{${first}: ${value}}`;
    return put(text, `“${key}” is a group of keys: ${quoted(text)}.`, `Change to ${quoted(text)}`);
  });
  const list = `[${value}]`;
  const isList = /should be a list/.test(issue.message) && !value.startsWith('[');
  return [
    ...groups,
    ...(isList ? [put(list, `“${key}” is a list, in square brackets: ${quoted(list)}.`, 'Put in brackets')] : []),
  ];
}

/** Most characters that two lengths take. */
const longestSizes = 60;

/** `60 x 30 mm` and `[60 mm 30 mm]`: two lengths, width and height. */
function sizes({ range, message }: Issue, source: SpecSource): Repair[] {
  if (!/list|entries|length|fit/.test(message)) return [];
  const value = source.text.slice(range.start, range.end);
  if (value.length > longestSizes || value.includes('\n')) return [];
  const alone = /^[\d.]+\s*(?:mm|cm|in|pt|px)?$/.test(value) && /should be a list/.test(message);
  if (alone) {
    const square = `[${value}, ${value}]`;
    return [
      {
        slip: range,
        message: `Width and height are a list of two: ${quoted(square)} for a square.`,
        title: `Change to ${quoted(square)}`,
        edits: [replacement(range.start, range.end, square)],
        rarity: 0,
      },
    ];
  }
  const found =
    /^\[?\s*([\d.]+)\s*(mm|cm|in|pt|px)?(?:\s*[x×*]\s*|\s+(?:by\s+)?)([\d.]+)\s*(mm|cm|in|pt|px)?\s*\]?$/i.exec(value);
  if (!found) return [];
  const [, width = '', ofWidth, height = '', ofHeight] = found;
  const unit = ofHeight ?? ofWidth;
  const length = (figure: string, own: string | undefined) =>
    unit === undefined ? figure : `${figure} ${own ?? unit}`;
  const text = `[${length(width, ofWidth)}, ${length(height, ofHeight)}]`;
  return [
    {
      slip: range,
      message: `Width and height are a list of two: ${quoted(text)}.`,
      title: `Change to ${quoted(text)}`,
      edits: [replacement(range.start, range.end, text)],
      rarity: 0,
    },
  ];
}

/** `italic: yes`. */
function yesAndNo({ range, message }: Issue, { text }: SpecSource): Repair[] {
  if (!/true or false/.test(message)) return [];
  const value = text.slice(range.start, range.end);
  const meant = /^["']?(?:yes|on|y|true)["']?$/i.test(value) ? 'true' : 'false';
  if (meant === 'false' && !/^["']?(?:no|off|n|false)["']?$/i.test(value)) return [];
  return [
    {
      slip: range,
      message: `Yes is written “true” here, and no “false”.`,
      title: `Change to ${meant}`,
      edits: [replacement(range.start, range.end, meant)],
      rarity: 0,
    },
  ];
}

const unitWords: readonly (readonly [RegExp, string])[] = [
  [/^(?:mm|millimet(?:er|re)s?|mms)$/i, 'mm'],
  [/^(?:cm|centimet(?:er|re)s?|cms)$/i, 'cm'],
  [/^(?:in|inch|inches|ins|"|″)$/i, 'in'],
  [/^(?:pt|pts|points?)$/i, 'pt'],
];

/** `40 millimetres` and `2"`. */
function units({ code, range }: Issue, { text }: SpecSource): Repair[] {
  const value = text.slice(range.start, range.end).replace(/^(['"])(.*)\1$/, '$2');
  const found = code === 'bad-length' ? /^([\d./ ]*\d)\s*(.+)$/.exec(value.trim()) : null;
  const unit = unitWords.find(([words]) => words.test(found?.[2]?.replace(/\.$/, '') ?? ''))?.[1];
  if (!found || !unit) return [];
  const length = `${found[1]!.trim()} ${unit}`;
  return [
    {
      slip: range,
      message: `A length is a number with mm, cm, in, pt or px: ${length}.`,
      title: `Change to ${length}`,
      edits: [replacement(range.start, range.end, length)],
      rarity: 0,
    },
  ];
}

/** Replaces a column that the batch does not have with the nearest, or offers each of those it has. */
function columns({ code, range, message }: Issue, { text }: SpecSource): Repair[] {
  const found = code === 'unknown-name' ? /^There is no column “([^”]+)” in the batch\.(.*)$/.exec(message) : null;
  const at = found ? text.slice(range.start, range.end).indexOf(`{${found[1]!}}`) : -1;
  if (!found || at < 0) return [];
  const start = range.start + at;
  return [...found[2]!.matchAll(/“([^”]+)”|\{([^}]+)\}/g)].map(({ 1: near, 2: listed }) => {
    const column = `{${near ?? listed ?? ''}}`;
    return {
      slip: { start, end: start + found[1]!.length + 2 },
      message,
      title: `Change to ${column}`,
      edits: [replacement(start, start + found[1]!.length + 2, column)],
      rarity: 1,
    };
  });
}
