/** Remedies that make lettering, or any other shape, hold together. */

import { innerPoint } from '../../geometry/inner-point.ts';
import { contains } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, setting, settingLengths, shapeAt } from '../candidate.ts';
import { wallBesideCut } from './windows.ts';
import {
  slidTogether,
  growing,
  grownAsNeeded,
  growingAround,
  spacing,
  heavier,
  larger,
  largerAndThicker,
  isCutThrough,
} from './letter-changes.ts';

/** Largest factor of enlargement of what is cut; beyond that it is another tag. */
const largestFactor = 1.6;

/**
 * Growing both sides by half of what is missing is enough for one straight neck; a fixed size takes some of it back.
 */
const growShares = [0.5, 0.6, 0.75, 1, 1.4, 2];

/** Of what a wall between two letters is short of. */
const apartShares = [1, 1.15, 1.4];

/** Steps in mm for bringing separate parts together. */
const joiningMm = [0.15, 0.3, 0.5, 0.75, 1, 1.5];

/** A neck, wall or stretch of a shape that is too narrow. */
export function thicker(at: Case): Remedy[] {
  const shape = shapeAt(at, at.issue.path);
  if (!shape) return [];
  const { width = 0, minimum = at.tag.stock.minWeb } = at.issue;
  const missing = minimum - width;
  // A shape that is cut through a piece leaves more material if it is thinner.
  const sign = isCutThrough(at, shape) ? -1 : 1;
  const steps = growShares.map((share) => sign * share * missing);
  // A plate is not enlarged to widen the wall beside a window.
  const growth =
    sign > 0 && wallBesideCut(at)
      ? []
      : [
          sign > 0 ? grownAsNeeded(at, shape, growing(at, shape, steps)) : growing(at, shape, steps),
          growingAround(at, shape, steps),
        ];
  // Between two letters that are cut through, the wall is as wide as they are apart.
  const apart =
    sign < 0
      ? spacing(
          at,
          shape,
          apartShares.map((share) => share * missing),
        )
      : [];
  return [
    { words: 'Move the letters apart', candidates: apart },
    ...growth,
    // What carries letters joins them: links between them would only spoil the word.
    ...(at.piece?.glueTo === undefined ? [slidTogether(at, shape)] : []),
    heavier(at, shape),
    larger(
      at,
      shape,
      [1, 1.1, 1.25]
        .map((share) => (share * minimum) / Math.max(width, 1e-6))
        .filter((factor) => factor <= largestFactor),
    ),
    ...(sign > 0 ? [largerAndThicker(at, shape, width, minimum)] : []),
  ];
}

/** Borders that are cut all round, so that what they enclose drops out. */
function bridgedBorders(at: Case): Remedy[] {
  const { minWeb } = at.tag.stock;
  const slits = (at.piece?.sources ?? []).flatMap(({ use, shape }) =>
    use === 'cut' && shape.generator.kind === 'border' && !shape.modifiers.bridges ? [shape] : [],
  );
  return slits.map((shape) => ({
    words: `Hold the middle with bridges across ${shapeTitle(shape)}`,
    candidates: settingLengths(at, shape.path, 'bridges', [minWeb, 1.5 * minWeb, 2 * minWeb]),
  }));
}

/** Parts that drop out. */
export function joinedParts(at: Case): Remedy[] {
  const shape = shapeAt(at, at.issue.path);
  const { piece } = at;
  const many: Remedy = {
    words: 'Separate parts are intended',
    candidates: piece?.glueTo === undefined ? [] : setting(at, piece.path, 'parts', 'many'),
  };
  if (!shape) return [many];
  const { minWeb } = at.tag.stock;
  if (isCutThrough(at, shape)) {
    return [
      {
        words: `Hold the counters of ${shapeTitle(shape)} with bridges`,
        candidates: settingLengths(at, shape.path, 'bridges', [minWeb, 1.2 * minWeb]),
      },
    ];
  }
  return [
    ...bridgedBorders(at),
    slidTogether(at, shape),
    many,
    growing(at, shape, joiningMm),
    {
      words: 'Move the letters together',
      candidates: spacing(
        at,
        shape,
        joiningMm.map((step) => -step),
      ),
    },
    {
      words: `Join the parts of ${shapeTitle(shape)} with straps`,
      candidates: settingLengths(at, shape.path, 'straps', [minWeb, 1.2 * minWeb, 1.5 * minWeb]),
      // To dots they are posts, but between letters they slant like antennae, which no share of changed area says.
      ...(areLettersApart(at, shape) ? { isChoice: true } : {}),
    },
  ];
}

/** Whether letters, not only their dots and accents, are in more than two parts: a capital before a joined word is one of two. */
function areLettersApart({ piece, tag }: Case, shape: Shape): boolean {
  const letters = tag.made.get(shape)?.lettering?.flatMap((each) => each.letters) ?? [];
  const parts = partsOf(piece?.region ?? []);
  const holding = letters.map(({ region }) => {
    const [base] = partsOf(region);
    return base && parts.findIndex((part) => contains(part, innerPoint(base[0]!)));
  });
  return new Set(holding.filter((part) => part !== undefined)).size > 2;
}

/** Gaps that the beam closes: widened or filled. */
export function wideGaps(at: Case): Remedy[] {
  const shape = shapeAt(at, at.issue.path);
  if (!shape) return [];
  const gap = at.issue.width ?? 0;
  const missing = Math.max(at.tag.stock.kerf - gap, 0);
  const steps = [1.1, 1.5, 2, 3].map((share) => share * missing + 0.02);
  // In a shape that is cut through a piece, a gap is material between two openings, and the other way round.
  const wider = isCutThrough(at, shape) ? 1 : -1;
  return [
    { words: 'Move the letters apart', candidates: spacing(at, shape, steps) },
    growing(
      at,
      shape,
      steps.slice(0, 3).map((step) => (wider * step) / 2),
      'Widen the gap by changing',
    ),
    growing(
      at,
      shape,
      [0.5, 0.75, 1, 1.5].map((share) => -wider * (share * gap + 0.02)),
      'Close the gap by changing',
    ),
  ];
}
