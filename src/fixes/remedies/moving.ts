/** Small moves of a shape, smaller sizes, and removal of a list entry. */

import type { Bounds, Point } from '../../geometry/types.ts';
import type { TextEdit, TextRange, YamlPath } from '../../core/issue.ts';
import type { Shape } from '../../spec/shape-model.ts';
import type { Candidate, Case } from '../candidate.ts';
import { fontSizeKeys, inSteps, moveStep, setting, valueAt, specLength } from '../candidate.ts';
import { shortLength } from '../../core/units.ts';
import type { Units } from '../../core/units.ts';

/** Factors by which a shape is made smaller. */
const factors = [0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5];

/** Changes the nudge at `path`, so far `before`, by a move, in round steps; the description gives the move. */
export function nudging(at: Case, path: YamlPath, before: Point, by: Point): Candidate[] {
  const { units } = at.tag;
  const after = { x: moved(before.x, by.x, units), y: moved(before.y, by.y, units) };
  const way = components({ x: after.x - before.x, y: after.y - before.y }, units);
  if (way.length === 0) return [];
  const nudge = components(after, units).join(', ') || `up: ${shortLength(0, units)}`;
  const description = way.map((each) => each.replace(/^(\w+): (.+)$/, '$2 $1')).join(', ');
  return setting(at, path, 'nudge', `{${nudge}}`).map(({ edits }) => ({ description, edits }));
}

/** Smaller moves than this are ignored, in mm. */
const seenMm = 0.02;

function moved(before: number, by: number, units: Units): number {
  return Math.abs(by) < seenMm ? before : inSteps(before + by, moveStep[units], before);
}

/** Such as `["up: 1 mm", "left: 0.3 mm"]`; what is 0 as written is left out. */
function components({ x, y }: Point, units: Units): string[] {
  return [
    { side: y > 0 ? 'up' : 'down', mm: Math.abs(y) },
    { side: x > 0 ? 'right' : 'left', mm: Math.abs(x) },
  ].flatMap(({ side, mm }) => (mm < nothingMm ? [] : [`${side}: ${shortLength(mm, units)}`]));
}

/** Written as 0, in mm. */
const nothingMm = 0.005;

/** The shape moved by each of several vectors in mm, shortest first. */
export function movedBy(at: Case, { path, modifiers }: Shape, ways: readonly Point[]): Candidate[] {
  const before = modifiers.nudge ?? { x: 0, y: 0 };
  return ways
    .toSorted((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y))
    .flatMap((way) => nudging(at, path, before, way));
}

/**
 * The shortest move that brings the box into the room less the margin; `undefined` if it does not fit or lies there
 * already.
 */
export function intoRoom(box: Bounds, room: Bounds, margin: number): Point | undefined {
  const x = shift(box.minX, box.maxX, room.minX + margin, room.maxX - margin);
  const y = shift(box.minY, box.maxY, room.minY + margin, room.maxY - margin);
  return x === undefined || y === undefined || (x === 0 && y === 0) ? undefined : { x, y };
}

function shift(min: number, max: number, from: number, to: number): number | undefined {
  if (max - min > to - from) return undefined;
  return min < from ? from - min : Math.min(0, to - max);
}

/** Reduces the size in steps; empty if the shape has none. */
export function madeSmaller(at: Case, { modifiers, generator, path }: Shape): Candidate[] {
  const { width, height } = modifiers;
  const font = generator.kind === 'text' ? generator.size : undefined;
  const outlineKey = width === undefined ? 'height' : 'width';
  const key = font ? fontSizeKeys[font.of] : outlineKey;
  const size = font?.mm ?? width ?? height;
  if (size === undefined) return [];
  return factors.flatMap((factor) =>
    setting(at, path, key, specLength(Math.floor(size * factor * 10) / 10, at.tag.units)),
  );
}

/** Removes an entry from a list of several; `undefined` if a comment would be lost with it. */
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
