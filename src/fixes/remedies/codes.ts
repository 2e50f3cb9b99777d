/** Remedies that make a code easier to scan. */

import { samePath } from '../../core/values.ts';
import { boundsOf, contains } from '../../geometry/measure.ts';
import { clearModules, squareOf } from '../../tag/shapes/code.ts';
import type { ShapeEntry } from '../../spec/model/model.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, setting, settingLengths } from '../candidate.ts';
import { clearWays } from './clear-ways.ts';
import { wayInto, madeSmaller, movedBy } from './moving.ts';

/** Factors that shrink a mark for more clear space around the code, smallest change first. */
const smaller = [0.95, 0.9, 0.8, 0.7];

export function scannable(at: Case): Remedy[] {
  const { issue, model } = at;
  const entries = model.pieces.flatMap(({ engrave, score, cut }) => [...engrave, ...score, ...cut]);
  const shape = entries.find(({ path }) => samePath(path, issue.path))?.shape;
  if (!shape) return [];
  if (shape.generator.kind !== 'code') return outOfQuietZone(at, shape, entries);
  const { width = 0, minimum = 0 } = issue;
  const larger = width > 0 ? minimum / width : 1;
  return [
    { words: `Make ${shapeTitle(shape)} larger`, candidates: sized(at, shape, [larger, 1.02 * larger]) },
    { words: `Move ${shapeTitle(shape)} inwards`, candidates: movedBy(at, shape, inwards(at, shape)) },
    { words: `Make ${shapeTitle(shape)} smaller`, candidates: sized(at, shape, smaller) },
    {
      words: `Let less of ${shapeTitle(shape)} be damaged, so that its modules are larger`,
      candidates: shape.generator.correction === 'low' ? [] : setting(at, shape.path, 'correction', 'low'),
    },
  ];
}

/** What stands in the quiet zone of a code is moved out of it or made smaller. */
function outOfQuietZone(at: Case, shape: Shape, entries: readonly ShapeEntry[]): Remedy[] {
  const [point] = at.issue.points ?? [];
  const zones = entries.flatMap((entry) =>
    (at.tag.made.get(entry.shape)?.codes ?? []).map((code) => ({ entry, zone: squareOf(code, clearModules) })),
  );
  const found = point && zones.find(({ zone }) => contains([zone], point));
  if (!found || !at.piece) return [];
  const code = found.entry.shape;
  const { marks, sources, hangers, body } = at.piece;
  const drawn = [...marks, ...sources.filter(({ use }) => use === 'cut').map((cut) => ({ ...cut, path: cut.entry }))];
  const moved = drawn.find(({ path }) => samePath(path, at.issue.path));
  const others = drawn.filter((each) => each !== moved).map(({ region }) => region);
  const openings = hangers.map(({ opening }) => opening);
  const ways = moved ? clearWays(moved.region, body, [[found.zone], ...others, ...openings]) : [];
  return [
    { words: `Move ${shapeTitle(shape)}`, candidates: movedBy(at, shape, ways) },
    { words: `Make ${shapeTitle(shape)} smaller`, candidates: madeSmaller(at, shape) },
    { words: `Make ${shapeTitle(code)} smaller`, candidates: sized(at, code, smaller) },
  ];
}

/** Moves the code until its clear zone lies within the box of the body. */
function inwards({ tag, piece }: Case, shape: Shape) {
  const [code] = tag.made.get(shape)?.codes ?? [];
  const room = piece && boundsOf(piece.body);
  const box = code && boundsOf([squareOf(code, clearModules)]);
  return box && room ? [wayInto(box, room, 0)] : [];
}

function sized(at: Case, { generator, modifiers, path }: Shape, factors: readonly number[]) {
  const size = generator.kind === 'code' ? generator.size : undefined;
  const [key, length] = size === undefined ? (['width', modifiers.width] as const) : (['size', size] as const);
  if (length === undefined) return [];
  return settingLengths(
    at,
    path,
    key,
    factors.map((factor) => factor * length),
  );
}
