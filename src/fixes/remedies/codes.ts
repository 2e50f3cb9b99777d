/** Remedies that make a code easier to scan. */

import { clearModules } from '../../checks/hard-to-scan.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { squareOf } from '../../tag/code.ts';
import type { Shape } from '../../spec/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, samePath, setting, settingLengths } from '../candidate.ts';
import { intoRoom, movedBy } from './moving.ts';

/** Factors that shrink a mark for more clear space around the code, smallest change first. */
const smaller = [0.95, 0.9, 0.8, 0.7];

export function scannable(at: Case): Remedy[] {
  const { issue, model } = at;
  const entries = model.pieces.flatMap(({ engrave, cut }) => [...engrave, ...cut]);
  const shape = entries.find(({ path }) => samePath(path, issue.path))?.shape;
  if (shape?.generator.kind !== 'code') return [];
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

/** Moves the code until its clear zone lies within the box of the body. */
function inwards({ tag, piece }: Case, shape: Shape) {
  const [code] = tag.made.get(shape)?.codes ?? [];
  const room = piece && boundsOf(piece.body);
  const box = code && boundsOf([squareOf(code, clearModules)]);
  const way = box && room && intoRoom(box, room, 0);
  return way ? [way] : [];
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
