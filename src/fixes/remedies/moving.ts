/** Moving a shape a little, making it smaller, and taking an entry out of a list. */

import type { Bounds, Point } from '../../geometry/types.ts';
import type { TextEdit, TextRange, YamlPath } from '../../issue.ts';
import type { Shape } from '../../spec/model.ts';
import type { Candidate, Case } from '../candidate.ts';
import { setting, valueAt, written } from '../candidate.ts';

/** A shape is made smaller in these steps. */
const factors = [0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5];

const fontSizeKeys = { em: 'size', capitals: 'cap_height', 'small letters': 'x_height' } as const;

/** A push by hand is put to what is at `path`, which has been pushed by `before`, or another is put for it. */
export function nudging(at: Case, path: YamlPath, before: Point, by: Point): Candidate[] {
  const [right, up] = [before.x + by.x, before.y + by.y];
  const words = [
    ...(Math.abs(up) < 0.005 ? [] : [`${up > 0 ? 'up' : 'down'}: ${written(Math.abs(up), at.tag.units)}`]),
    ...(Math.abs(right) < 0.005 ? [] : [`${right > 0 ? 'right' : 'left'}: ${written(Math.abs(right), at.tag.units)}`]),
  ];
  if (words.length === 0) return [];
  const told = words.map((each) => each.replace(':', '')).join(', ');
  return setting(at, path, 'nudge', `{${words.join(', ')}}`).map(({ edits }) => ({ told, edits }));
}

/** The shape moved by each of some ways, in mm, the shortest first. */
export function movedBy(at: Case, { path, modifiers }: Shape, ways: readonly Point[]): Candidate[] {
  const before = modifiers.nudge ?? { x: 0, y: 0 };
  return ways
    .toSorted((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y))
    .flatMap((way) => nudging(at, path, before, way));
}

/** Short steps in mm, tried before a box is moved clear of another. */
const stepsMm = [0.5, 1, 2, 3.5, 5, 7, 10];

/** Left between two boxes that were moved apart, in mm. */
const clearMm = 1;

/** Ways in the four directions by which one box comes off another: a little, and wholly. */
export function waysApart(moved: Bounds, other: Bounds): Point[] {
  const directions = [
    { x: 1, y: 0, clear: other.maxX - moved.minX },
    { x: -1, y: 0, clear: moved.maxX - other.minX },
    { x: 0, y: 1, clear: other.maxY - moved.minY },
    { x: 0, y: -1, clear: moved.maxY - other.minY },
  ];
  return directions.flatMap(({ x, y, clear }) => {
    const wholly = Math.ceil(2 * (clear + clearMm)) / 2;
    return [...stepsMm.filter((step) => step < wholly), wholly].map((step) => ({ x: x * step, y: y * step }));
  });
}

/** The size that is asked for, in smaller steps; none where nothing asks for one. */
export function madeSmaller(at: Case, { modifiers, generator, path }: Shape): Candidate[] {
  const { width, height } = modifiers;
  const font = generator.kind === 'text' ? generator.size : undefined;
  const outlineKey = width === undefined ? 'height' : 'width';
  const key = font ? fontSizeKeys[font.of] : outlineKey;
  const size = font?.mm ?? width ?? height;
  if (size === undefined) return [];
  return factors.flatMap((factor) =>
    setting(at, path, key, written(Math.floor(size * factor * 10) / 10, at.tag.units)),
  );
}

/** Takes an entry out of a list that has others; `undefined` where a comment would go with it. */
export function withoutEntry(at: Case, path: YamlPath): TextEdit | undefined {
  const list = valueAt(at, path.slice(0, -1));
  if (!Array.isArray(list) || list.length < 2) return undefined;
  const { source } = at.report;
  const { start, end } = source.range(path);
  const [before, after] = [source.text.slice(0, start), source.text.slice(end)];
  const comma = /,\s*$/.exec(before);
  const next = /^\s*,\s*/.exec(after);
  const dash = /(?<=\n)[^\S\n]*-[^\S\n]+$/.exec(before);
  const rest = /^[^\S\n]*(?:\n|$)/.exec(after);
  let range: TextRange;
  if (comma) range = { start: start - comma[0].length, end };
  else if (next) range = { start, end: end + next[0].length };
  else if (dash && rest) range = { start: start - dash[0].length, end: end + rest[0].length };
  else return undefined;
  return source.text.slice(range.start, range.end).includes('#') ? undefined : { range, text: '' };
}
