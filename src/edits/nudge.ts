/** Moves a shape or a hanger by hand through its `nudge`, and leaves the rest of the text as it is. */

import type { Point } from '../geometry/types.ts';
import type { TextEdit, YamlPath } from '../core/issue.ts';
import type { Units } from '../core/units.ts';
import { asksForColumns } from '../spec/batch/row-values.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { lengthInMm, lengthText } from './length-text.ts';
import { removeKey } from './remove-key.ts';
import { valueAt } from '../core/values.ts';

/** Distances below this, in mm, are no nudge: half of the smallest step written. */
const nothingMm = 0.005;

/** The words for each direction, the one in which the coordinate grows first. */
const words = { x: ['right', 'left'], y: ['up', 'down'] } as const;
type Axis = keyof typeof words;

/** The present nudge, in mm, right and up positive. */
export function nudgeAt(source: SpecSource, path: YamlPath, units: Units): Point {
  const written = mapAt(source, [...path, 'nudge']) ?? {};
  const along = ([grows, falls]: readonly [string, string]): number =>
    lengthInMm(written[grows], units) - lengthInMm(written[falls], units);
  return { x: along(words.x), y: along(words.y) };
}

/**
 * Edits, without overlaps, that move what is defined at `path` by `by`, in mm, right and up positive. `undefined` if
 * the text has no place for them.
 */
export function nudgeEdits(source: SpecSource, path: YamlPath, by: Point, units: Units): TextEdit[] | undefined {
  const at = [...path, 'nudge'];
  const now = nudgeAt(source, path, units);
  const wanted = { x: now.x + by.x, y: now.y + by.y };
  const written = mapAt(source, at);
  if (asksForColumns(written)) return undefined;
  const isNothing = Math.abs(wanted.x) < nothingMm && Math.abs(wanted.y) < nothingMm;
  if (!written) return isNothing ? [] : wholeNudge(source, path, wanted, units);
  if (isNothing) {
    const siblings = Object.keys(mapAt(source, path) ?? {}).length - 1;
    const removal = removeKey(source, at, siblings);
    if (removal) return [removal];
  }
  // A map that is shared through an alias, or has both words of a direction, is replaced by a new one in the fewest
  // words.
  const isShared = source.text.startsWith('*', source.range(at).start);
  const isDoubled = Object.values(words).some(([grows, falls]) => grows in written && falls in written);
  if (isShared || isDoubled) return wholeNudge(source, path, wanted, units);
  const edits = (['x', 'y'] as const).map((axis) =>
    alongEdits(source, at, written, axis, now[axis], wanted[axis], units),
  );
  return edits.some((each) => each === undefined) ? undefined : edits.flatMap((each) => each!);
}

/**
 * Replaces the name of a shape at `path`, in a list of a piece, with a copy of the shape moved by `by`, so that
 * everything else made of the shape stays in place.
 */
export function nudgedCopy(source: SpecSource, path: YamlPath, by: Point, units: Units): TextEdit | undefined {
  const range = source.range(path);
  if (typeof valueAt(source.value, path) !== 'string') return undefined;
  const name = source.text.slice(range.start, range.end);
  return { range, text: `{from: ${name}, nudge: ${nudgeText(by, units)}}` };
}

function wholeNudge(source: SpecSource, path: YamlPath, by: Point, units: Units): TextEdit[] | undefined {
  const edit = source.setKey(path, 'nudge', nudgeText(by, units));
  return edit && [edit];
}

function nudgeText({ x, y }: Point, units: Units): string {
  const parts = [nudgeEntry('x', x, undefined, units), nudgeEntry('y', y, undefined, units)].filter(
    (part) => part !== undefined,
  );
  return `{${parts.join(', ') || `right: ${lengthText(0, undefined, units)}`}}`;
}

/** An entry such as `left: 2 mm`; `undefined` for a distance of zero. */
function nudgeEntry(axis: Axis, mm: number, before: unknown, units: Units): string | undefined {
  if (Math.abs(mm) < nothingMm) return undefined;
  return `${words[axis][mm > 0 ? 0 : 1]}: ${lengthText(Math.abs(mm), before, units)}`;
}

/** Edits that change the figure of one direction, and its word where the direction reverses. */
function alongEdits(
  source: SpecSource,
  at: YamlPath,
  written: Readonly<Record<string, unknown>>,
  axis: Axis,
  now: number,
  wanted: number,
  units: Units,
): TextEdit[] | undefined {
  if (Math.abs(wanted - now) < nothingMm) return [];
  const word = words[axis].find((each) => each in written);
  if (word === undefined) {
    const added = words[axis][wanted > 0 ? 0 : 1];
    const edit = source.setKey(at, added, lengthText(Math.abs(wanted), undefined, units));
    return edit && [edit];
  }
  const path = [...at, word];
  const before = written[word];
  if (Math.abs(wanted) < nothingMm) {
    const removal = removeKey(source, path, Object.keys(written).length - 1);
    if (removal && Object.keys(written).length > 1) return [removal];
    return [{ range: source.range(path), text: lengthText(0, before, units) }];
  }
  // The sign is expressed by the word, so a negative figure changes both.
  const wantedWord = words[axis][wanted > 0 ? 0 : 1];
  const figure = { range: source.range(path), text: lengthText(Math.abs(wanted), before, units) };
  return word === wantedWord ? [figure] : [{ range: source.keyRange(path), text: wantedWord }, figure];
}

function mapAt(source: SpecSource, path: YamlPath): Readonly<Record<string, unknown>> | undefined {
  const value = valueAt(source.value, path);
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Record<string, unknown>)
    : undefined;
}
