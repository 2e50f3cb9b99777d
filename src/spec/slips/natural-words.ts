/** Repairs values that are said in other words than the spec language has: `at: top left`, `weight: bold`, `mirror: true`. */

import type { Issue } from '../../core/issue.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import type { SpecSource } from '../yaml/source.ts';
import { entryRange, takenOut, writtenValue } from './entries.ts';
import { quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';
import { placeIn, sidesMeant } from './side-words.ts';

export function wordRepairs(issue: Issue, source: SpecSource): Repair[] {
  return [
    ...places(issue, source),
    ...directions(issue, source),
    ...weights(issue, source),
    ...mirrored(issue, source),
    ...degrees(issue, source),
    ...besideHanger(issue, source),
    ...flags(issue, source),
    ...sideWithoutShape(issue, source),
    ...sideOfHanger(issue, source),
    ...doubledRadius(issue, source),
  ];
}

const hangers: ReadonlySet<unknown> = new Set(['ring', 'hole', 'slot', 'keyhole']);

/** Keys of which `at` says on which sides of a part, such as `top-bottom`. */
const holding: ReadonlySet<unknown> = new Set(['straps', 'bridges']);

/** `undefined` unless the value is wrong and on one line. */
function wrongValue({ code, range }: Issue, { text }: SpecSource): string | undefined {
  const value = text.slice(range.start, range.end).replace(/^(['"])(.*)\1$/, '$2');
  return code === 'bad-value' && !value.includes('\n') ? value : undefined;
}

function change({ range }: Issue, message: string, text: string): Repair {
  return {
    slip: range,
    message,
    title: `Change to ${quoted(text)}`,
    edits: [replacement(range.start, range.end, text)],
    rarity: 0,
  };
}

/** `top left`, `upper-left`, `lefttop`, `middle`, `oben links`. */
function places(issue: Issue, source: SpecSource): Repair[] {
  const key = issue.path.at(-1);
  const value = wrongValue(issue, source);
  if (value === undefined || (key !== 'at' && key !== 'align' && !hangers.has(key))) return [];
  if (key === 'at' && holding.has(issue.path.at(-2))) {
    const sides = sidesMeant(value);
    const says = sides?.includes('-') ? 'Both sides are written' : 'This is called';
    return sides === undefined
      ? []
      : [change(issue, `${says} ${quoted(sides)}${sides.includes('-') ? '' : ' here'}.`, sides)];
  }
  const place = placeIn(value);
  if (place === undefined) return [];
  const isCorner = place.includes('-');
  const message = `${isCorner ? 'A corner is written' : 'This is called'} ${quoted(place)}${isCorner ? '' : ' here'}.`;
  return [change(issue, message, place)];
}

/** `along: horizontal`. */
function directions(issue: Issue, source: SpecSource): Repair[] {
  const value = issue.path.at(-1) === 'along' ? wrongValue(issue, source)?.toLowerCase() : undefined;
  const way =
    value === undefined
      ? undefined
      : value.startsWith('horiz')
        ? 'right'
        : value.startsWith('vert')
          ? 'down'
          : undefined;
  return way === undefined ? [] : [change(issue, `A row runs towards a side: ${quoted(way)}.`, way)];
}

/** The usual names of weights (CSS Fonts 4, `font-weight`). */
const weightNames: Readonly<Record<string, number>> = {
  ...{
    thin: 100,
    light: 300,
    regular: 400,
    normal: 400,
    medium: 500,
    semibold: 600,
    bold: 700,
    heavy: 900,
    black: 900,
  },
};

function weights(issue: Issue, source: SpecSource): Repair[] {
  const value =
    issue.path.at(-1) === 'weight'
      ? wrongValue(issue, source)
          ?.toLowerCase()
          .replace(/[\s_-]/g, '')
      : undefined;
  if (value === undefined || !Object.hasOwn(weightNames, value)) return [];
  const weight = String(weightNames[value]);
  return [change(issue, `A weight is a number: ${weight} for ${value}.`, weight)];
}

function mirrored(issue: Issue, source: SpecSource): Repair[] {
  const value = issue.path.at(-1) === 'mirror' ? wrongValue(issue, source)?.toLowerCase() : undefined;
  if (value === undefined) return [];
  const ways = /^(?:x|h|horizontal(?:ly)?|true|yes|left|right)$/.test(value)
    ? ['left-right']
    : /^(?:y|v|vertical(?:ly)?|up|down)$/.test(value)
      ? ['up-down']
      : [];
  return ways.map((way) => change(issue, `“mirror” says which sides change places: “left-right” or “up-down”.`, way));
}

/** `rotate: 90 deg`. */
function degrees(issue: Issue, source: SpecSource): Repair[] {
  const key = String(issue.path.at(-1));
  if (!['rotate', 'sweep', 'tip', 'at'].includes(key) && !hangers.has(key)) return [];
  const [, figure] = /^(-?[\d.]+)\s*(?:°|deg(?:rees?)?)$/i.exec(wrongValue(issue, source) ?? '') ?? [];
  return figure === undefined
    ? []
    : [change(issue, `An angle is a number of degrees, without a unit: ${figure}.`, figure)];
}

/** The side of the body on which a hanger is beside something. */
const hangerSides: Readonly<Record<string, string>> = {
  above: 'top',
  below: 'bottom',
  left_of: 'left',
  right_of: 'right',
};

/** `hole: {below: name}`. */
function besideHanger({ code, path, range }: Issue, source: SpecSource): Repair[] {
  const key = path.at(-1);
  if (code !== 'unknown-key' || typeof key !== 'string' || !hangers.has(path.at(-2))) return [];
  const entry = entryRange(source, path);
  if (key === 'gap' && Object.keys(hangerSides).some((side) => entryRange(source, [...path.slice(0, -1), side]))) {
    const taken = entry && takenOut(source, entry);
    const message = 'A hanger has no “gap”: “inset” is what is left to the edge.';
    return taken ? [{ slip: range, message, title: 'Remove “gap”', edits: [taken], rarity: 0, explains: true }] : [];
  }
  if (!Object.hasOwn(hangerSides, key) || !entry) return [];
  const at = `at: ${hangerSides[key]!}`;
  return [
    {
      slip: range,
      message: `A hanger goes to a side of the piece, and keeps clear of the words by itself: ${quoted(at)}.`,
      title: `Change to ${quoted(at)}`,
      edits: [replacement(entry.start, entry.end, at)],
      rarity: 0,
      explains: true,
    },
  ];
}

/** `place: top`, and `at: top` or `position: top` of a shape: a side without the shape that it is a side of. */
function sideWithoutShape({ code, path: at, range }: Issue, source: SpecSource): Repair[] {
  // The short form of a place is its shape.
  const path = at.at(-2) === 'place' ? at.slice(0, -1) : at;
  const key = path.at(-1);
  const isAlone = code === 'unknown-shape' && key === 'place' && path[0] === 'shapes';
  const isOther =
    code === 'unknown-key' && (key === 'at' || key === 'position') && path[0] === 'shapes' && path.length === 3;
  const entry = isAlone || isOther ? entryRange(source, path) : undefined;
  const side = writtenValue(source, path);
  const target = Object.keys(groupAt(source, ['shapes'])).find((name) => name !== path[1]);
  const named = placeIn(side ?? '');
  if (!entry || target === undefined || named === undefined) return [];
  const text = `place: {on: ${target}, at: ${named}}`;
  return [
    {
      slip: range,
      message: `“place” names the shape to put it on, and “at” the side: ${quoted(text)}.`,
      title: `Change to ${quoted(text)}`,
      edits: [replacement(entry.start, entry.end, text)],
      rarity: 0,
    },
  ];
}

function groupAt(source: SpecSource, path: Issue['path']): Readonly<Record<string, unknown>> {
  const value = valueAt(source.value, path);
  return isGroup(value) ? value : {};
}

/** `hanger: {at: top}`. */
function sideOfHanger({ code, path, range }: Issue, source: SpecSource): Repair[] {
  const entry = entryRange(source, path);
  const side = writtenValue(source, path);
  if (code !== 'unknown-key' || path.at(-1) !== 'at' || path.at(-2) !== 'hanger' || !entry || side === undefined)
    return [];
  if (Object.keys(groupAt(source, path.slice(0, -1))).length !== 1) return [];
  const text = `hole: ${side}`;
  return [
    {
      slip: range,
      message: `A hanger is a hole, a ring, a slot or a keyhole: ${quoted(text)}.`,
      title: `Change to ${quoted(text)}`,
      edits: [replacement(entry.start, entry.end, text)],
      rarity: 0,
    },
  ];
}

/** `stencil: true` and `outline: true` of a text. */
function flags({ code, path, range }: Issue, source: SpecSource): Repair[] {
  const key = path.at(-1);
  const entry = entryRange(source, path);
  if (code !== 'unknown-key' || !entry || writtenValue(source, path) !== 'true') return [];
  if (key === 'stencil') {
    const message = 'Bridges hold the counters of letters that are cut through: “bridges: auto”.';
    const edits = [replacement(entry.start, entry.end, 'bridges: auto')];
    return [{ slip: range, message, title: 'Change to “bridges: auto”', edits, rarity: 0 }];
  }
  const taken = takenOut(source, entry);
  if (key !== 'outline' || !taken) return [];
  const message = 'To draw the outline of a shape, list the shape under “score” in a piece.';
  return [{ slip: range, message, title: 'Remove “outline”', edits: [taken], rarity: 0 }];
}

/** `hole: {radius: 2 mm}`. */
function doubledRadius({ code, path, range }: Issue, source: SpecSource): Repair[] {
  const entry = entryRange(source, path);
  if (code !== 'unknown-key' || path.at(-1) !== 'radius' || !hangers.has(path.at(-2)) || !entry) return [];
  const [, figure, unit = ''] = /^([\d.]+)(\s*[a-z]*)$/.exec(writtenValue(source, path) ?? '') ?? [];
  if (figure === undefined) return [];
  const text = `diameter: ${2 * Number(figure)}${unit}`;
  return [
    {
      slip: range,
      message: `An opening is given by its diameter: ${quoted(text)}.`,
      title: `Change to ${quoted(text)}`,
      edits: [replacement(entry.start, entry.end, text)],
      rarity: 0,
    },
  ];
}
