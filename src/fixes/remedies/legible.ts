/** Remedies that make lettering legible again. */

import { buried, buriedShare } from '../../checks/measures/buried-share.ts';
import { letteringOn } from '../../checks/measures/lettering-on.ts';
import { samePath } from '../../core/values.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, settingLengths, shapeAt } from '../candidate.ts';
import { onBacking } from './backing.ts';
import { uncovered } from './covered.ts';
import { otherFonts } from './fonts.ts';
import { heavier, larger } from './letter-changes.ts';

/** Shares of the growth to keep, most first. */
const keptShares = [0.8, 0.65, 0.5, 0.35, 0.2, 0.1];

const largerFactors = [1.15, 1.3, 1.45, 1.6];

/** On a plate there may be room for more. */
const muchLargerFactors = [1.9, 2.3, 2.8, 3.4];

/** The issue is at a text shape or at its growth. */
export function legible(at: Case): Remedy[] {
  const { path } = at.issue;
  const shape = shapeAt(at, path) ?? shapeAt(at, path.slice(0, -1));
  if (shape?.generator.kind === 'strokes') return [larger(at, shape, largerFactors)];
  if (shape?.generator.kind !== 'text') return [];
  const atShape = { ...at, issue: { ...at.issue, path: shape.path } };
  const { grow = 0 } = shape.modifiers;
  const sized = larger(
    atShape,
    shape,
    isMark(atShape, shape) ? [...largerFactors, ...muchLargerFactors] : largerFactors,
  );
  // Letters that are no more to be seen would not be in another font either.
  if (isBuried(atShape)) return [...uncovered(atShape, shape), sized, ...ungrownBacking(atShape, shape)];
  return [
    ...uncovered(atShape, shape),
    growingLess(atShape, shape),
    ...(grow < 0 ? [heavier(atShape, shape)] : []),
    sized,
    ...otherFonts(atShape, shape),
    ...ungrownBacking(atShape, shape),
  ];
}

/** Whether all of what surrounds the letters is made as they are. */
function isBuried({ piece, tag, issue }: Case): boolean {
  const on = piece && letteringOn(piece, tag).find(({ lettering }) => samePath(lettering.path, issue.path));
  return on?.ground !== undefined && buriedShare(on.lettering, on.ground) > buried.wholly;
}

function isMark({ model }: Case, { path }: Shape): boolean {
  return model.pieces.some(({ engrave, score }) =>
    [...engrave, ...score].some(({ shape }) => samePath(shape.path, path)),
  );
}

function growingLess(at: Case, shape: Shape): Remedy {
  const { grow = 0 } = shape.modifiers;
  const kept = grow === 0 ? [] : keptShares.map((share) => share * grow);
  return {
    words: `${grow < 0 ? 'Thin' : 'Thicken'} ${shapeTitle(shape)} less`,
    candidates: settingLengths(at, shape.path, 'grow', kept, grow),
  };
}

/** On a backing, letters need no growth to hold together. */
function ungrownBacking(at: Case, shape: Shape): Remedy[] {
  const plain =
    shape.modifiers.grow === undefined && !shape.modifiers.growAuto ? [] : settingLengths(at, shape.path, 'grow', [0]);
  return onBacking(at).map(({ words, candidates }) => ({
    words,
    candidates: candidates.map(({ description, edits }) => ({
      description: [description, ...plain.map((each) => each.description)].join(', '),
      edits: [...edits, ...plain.flatMap((each) => each.edits)],
    })),
  }));
}
