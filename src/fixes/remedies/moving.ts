/** Small moves of a shape, smaller sizes, and removal of a list entry. */

import { boundsOf, boxCentre, distance } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import type { TextEdit, TextRange, YamlPath } from '../../core/issue.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Candidate, Case } from '../candidate.ts';
import { inSteps, sizeOf, moveStep, setting, settingLengths, valueAt, specLength } from '../candidate.ts';
import { shortLength } from '../../core/units.ts';
import type { Units } from '../../core/units.ts';

/** Factors by which a shape is made smaller, and those by which it is where it is moved as well. */
const factors = [0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5];
const modestFactors = factors.slice(0, 4);

/**
 * Margins to an edge, in mm, the nicest first: as if meant so; the least that looks so; and for an edge that runs within its box
 * (our own judgement).
 */
export const marginsMm = [2, 1, 4];

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
export function movedBy(at: Case, shape: Shape, ways: readonly Point[]): Candidate[] {
  if (runsRoundBody(at, shape)) return [];
  const { path, modifiers } = shape;
  const before = modifiers.nudge ?? { x: 0, y: 0 };
  return ways
    .toSorted((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y))
    .flatMap((way) => nudging(at, path, before, way));
}

/** Whether it is lettering on an arc about the middle of the piece, along whose edge it runs: moved, it would run along nothing. */
function runsRoundBody({ tag, piece }: Case, shape: Shape): boolean {
  const centre = tag.made.get(shape)?.arcCentre;
  const box = piece && boundsOf(piece.body);
  return centre !== undefined && box !== undefined && distance(centre, boxCentre(box)) < sameMiddleMm;
}

/** How much further in words that run round are tried, in mm. */
const inwardsMm = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8];

/** Words on an arc, further in on a smaller one. */
export function smallerArc(at: Case, { generator, path }: Shape): Candidate[] {
  const arc = generator.kind === 'text' ? generator.arc : undefined;
  if (!arc || !('radius' in arc)) return [];
  const { radius } = arc;
  const smaller = inwardsMm.map((step) => radius - step).filter((each) => each > radius / 2);
  return settingLengths(at, [...path, 'arc'], 'radius', smaller, radius);
}

/** Two middles nearer to each other than this, in mm, are meant to be the same (our own judgement). */
const sameMiddleMm = 0.5;

/** The shape brought into the room, with each margin in turn; made smaller as well where a move alone does not help. */
export function movedInto(
  at: Case,
  shape: Shape,
  box: Bounds,
  room: Bounds,
  margins: readonly number[] = marginsMm,
): Candidate[] {
  const { path, modifiers } = shape;
  const nudged = (of: Bounds, margin: number) =>
    nudging(at, path, modifiers.nudge ?? { x: 0, y: 0 }, wayInto(of, room, margin));
  const nicest = nicestShare(box, room);
  const both = [...(nicest < 1 ? [nicest] : []), ...modestFactors.filter((each) => each < nicest)].flatMap((factor) =>
    madeSmaller(at, shape, [factor]).flatMap((smaller) =>
      nudged(scaledBox(box, factor), margins[0]!).map((move) => ({
        description: `${move.description}, ${smaller.description}`,
        edits: [...smaller.edits, ...move.edits],
      })),
    ),
  );
  const moves = margins.flatMap((margin) => nudged(box, margin));
  return [...moves.filter((each, index) => moves.findIndex(isLike(each)) === index), ...both];
}

const isLike = (one: Candidate) => (other: Candidate) => one.description === other.description;

/** The shortest move of the box into the room less the margin; along a side that is too short, to its middle. */
export function wayInto(box: Bounds, room: Bounds, margin: number): Point {
  const along = (min: number, max: number, from: number, to: number): number => {
    const [least, most] = [from + margin - min, to - margin - max];
    if (least > most) return (least + most) / 2;
    return least > 0 ? least : Math.min(most, 0);
  };
  return {
    x: along(box.minX, box.maxX, room.minX, room.maxX),
    y: along(box.minY, box.maxY, room.minY, room.maxY),
  };
}

function scaledBox(box: Bounds, factor: number): Bounds {
  const { x, y } = boxCentre(box);
  return {
    minX: x + factor * (box.minX - x),
    minY: y + factor * (box.minY - y),
    maxX: x + factor * (box.maxX - x),
    maxY: y + factor * (box.maxY - y),
  };
}

/** Reduces the size until the box has the nicest margin in the room, or less far in steps. */
export function madeSmallerFor(at: Case, shape: Shape, box: Bounds, room: Bounds): Candidate[] {
  const nicest = nicestShare(box, room);
  return [...(nicest < 1 ? madeSmaller(at, shape, [nicest]) : []), ...madeSmaller(at, shape)];
}

/** Of its size: what has the nicest margin in the room. */
function nicestShare(box: Bounds, room: Bounds): number {
  const share = (from: number, to: number, min: number, max: number) => (to - from - 2 * marginsMm[0]!) / (max - min);
  return Math.min(share(room.minX, room.maxX, box.minX, box.maxX), share(room.minY, room.maxY, box.minY, box.maxY));
}

/** Reduces the size in steps; empty if the shape has none. */
export function madeSmaller(at: Case, shape: Shape, by: readonly number[] = factors): Candidate[] {
  const size = sizeOf(shape);
  if (!size) return [];
  return by
    .filter((factor) => factor >= factors.at(-1)!)
    .flatMap((factor) =>
      setting(at, shape.path, size.key, specLength(Math.floor(size.mm * factor * 10) / 10, at.tag.units)),
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
