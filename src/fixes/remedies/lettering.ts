/** Remedies that make lettering, or any other shape, hold together. */

import type { Shape, TextGenerator } from '../../spec/model.ts';
import { lapMm } from '../../tag/overlap/lap.ts';
import { bundledFonts } from '../../text/bundled-fonts.ts';
import type { Case, Candidate, Remedy } from '../candidate.ts';
import {
  fontSizeKeys,
  growthOf,
  inSteps,
  lengthStep,
  shapeTitle,
  samePath,
  setting,
  settingLengths,
  shapeAt,
  specLength,
} from '../candidate.ts';
import { wallBesideCut } from './windows.ts';

/**
 * Growing both sides by half of what is missing is enough for one straight neck; a fixed size takes some of it back.
 */
const growShares = [0.5, 0.6, 0.75, 1, 1.4, 2];

/** Steps in mm for bringing separate parts together. */
const joiningMm = [0.15, 0.3, 0.5, 0.75, 1, 1.5];

/** Weights that families of lettering commonly have, above the regular one. */
const heavierWeights = [600, 700, 800, 900];

/** Largest factor of enlargement; beyond that it is another tag. */
const largestFactor = 1.6;

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
  return [
    ...growth,
    slidTogether(at, shape),
    heavier(at, shape),
    larger(
      at,
      shape,
      [1, 1.1, 1.25].map((share) => (share * minimum) / Math.max(width, 1e-6)),
    ),
  ];
}

/** Overlaps to try when letters are slid together, in mm. */
const lapsMm = [0.6, 0.8, 1];

/** Growth added to that, in x-heights, least first. */
const growthBeside = [0, 0.02, 0.04, 0.06];

/** Slides letters until they join, with the least growth that then makes them hold. */
function slidTogether(at: Case, shape: Shape): Remedy {
  const { generator, path } = shape;
  const words = `Slide the letters of ${shapeTitle(shape)} together`;
  if (generator.kind !== 'text' || isCutThrough(at, shape)) return { words, candidates: [] };
  const xHeight = at.tag.made.get(shape)?.lettering?.[0]?.xHeight ?? 0;
  const before = growthOf(at, shape);
  const lapNow = lapMm(generator, at.tag.stock.minWeb);
  const size = lapNow === undefined ? sizeLess(at, shape, 2 * before) : [];
  const candidates = growthBeside.flatMap((share) =>
    // Existing growth is kept.
    lapsMm.flatMap((lap) => {
      const grow = share === 0 ? undefined : before + share * xHeight;
      if (lapNow !== undefined && grow === undefined && lapNow >= lap) return [];
      if (share > 0 && !(xHeight > 0)) return [];
      return together([
        ...settingLengths(at, path, 'overlap', [lap]),
        ...(grow === undefined ? [] : settingLengths(at, path, 'grow', [grow], before)),
        ...size,
      ]);
    }),
  );
  return { words, candidates };
}

/**
 * The size less `by`. With `overlap` a size applies before growth, without it after growth; reduced by twice the
 * growth, the letters stay as large when `overlap` is added.
 */
function sizeLess(at: Case, { generator, modifiers, path }: Shape, by: number): Candidate[] {
  const font = generator.kind === 'text' ? generator.size : undefined;
  const { width, height } = modifiers;
  const key = font ? fontSizeKeys[font.of] : width === undefined ? 'height' : 'width';
  const size = font?.mm ?? width ?? height;
  if (by <= 0 || size === undefined || size <= by || font?.of === 'em') return [];
  return settingLengths(at, path, key, [size - by]);
}

/** Combines several changes of one map; empty if one of them cannot be made. */
function together(changes: readonly Candidate[]): Candidate[] {
  if (changes.length === 0) return [];
  return [
    {
      description: changes.map(({ description }) => description).join(', '),
      edits: changes.flatMap(({ edits }) => [...edits]),
    },
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
    },
  ];
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

export function growing(at: Case, shape: Shape, steps: readonly number[], words = ''): Remedy {
  const before = growthOf(at, shape);
  const verb = words || ((steps[0] ?? 0) < 0 ? 'Thin' : 'Thicken');
  return {
    words: `${verb} ${shapeTitle(shape)}`,
    candidates: settingLengths(
      at,
      shape.path,
      'grow',
      steps.map((step) => before + step),
      before,
    ),
  };
}

/** If none of the steps is enough, `auto`: as much as `min_web` needs. */
function grownAsNeeded(at: Case, shape: Shape, { words, candidates }: Remedy): Remedy {
  const auto = shape.modifiers.growAuto || candidates.length === 0 ? [] : setting(at, shape.path, 'grow', 'auto');
  return { words, candidates: [...candidates, ...auto] };
}

/**
 * A size by capitals or small letters includes the growth, so it is increased too, to keep the letters themselves
 * unchanged.
 */
function growingAround(at: Case, shape: Shape, steps: readonly number[]): Remedy {
  const { generator, path } = shape;
  const size = generator.kind === 'text' ? generator.size : undefined;
  const candidates = steps.flatMap((step): Candidate[] => {
    if (!size || size.of === 'em' || step <= 0) return [];
    const { units } = at.tag;
    const before = growthOf(at, shape);
    const grow = inSteps(before + step, lengthStep[units], before);
    const [grown] = setting(at, path, 'grow', specLength(grow, units, before));
    const [sized] = setting(at, path, fontSizeKeys[size.of], specLength(size.mm + 2 * (grow - before), units));
    return grown && sized
      ? [{ description: `${grown.description}, ${sized.description}`, edits: [...grown.edits, ...sized.edits] }]
      : [];
  });
  return { words: `Thicken ${shapeTitle(shape)} and keep the size of its letters`, candidates };
}

function spacing(at: Case, { generator, path }: Shape, steps: readonly number[]): Candidate[] {
  if (generator.kind !== 'text') return [];
  return settingLengths(
    at,
    path,
    'letter_spacing',
    steps.map((step) => generator.letterSpacingMm + step),
    generator.letterSpacingMm,
  );
}

export function heavier(at: Case, { generator, path, name }: Shape): Remedy {
  const weights = generator.kind === 'text' ? heavierThan(generator) : [];
  return {
    words: `Set ${name === undefined ? 'the shape' : `“${name}”`} in a heavier weight`,
    candidates: weights.flatMap((weight) => setting(at, path, 'weight', String(weight))),
  };
}

/** The weights of a bundled family, or those that other families commonly have. */
function heavierThan({ font, weight }: TextGenerator): number[] {
  const bundled = bundledFonts.find(({ family }) => family.toLowerCase() === font.trim().toLowerCase());
  const weights = bundled?.faces.map((face) => face.weight) ?? heavierWeights;
  return weights.filter((each) => each > weight && each >= 600);
}

/** Increases the size, if the shape has one. */
export function larger(at: Case, shape: Shape, all: readonly number[]): Remedy {
  const { width, height } = shape.modifiers;
  const font = shape.generator.kind === 'text' ? shape.generator.size : undefined;
  const outlineKey = width === undefined ? 'height' : 'width';
  const key = font ? fontSizeKeys[font.of] : outlineKey;
  const size = font?.mm ?? width ?? height;
  const factors = all.filter((each) => each <= largestFactor);
  return {
    words: `Make ${shapeTitle(shape)} larger`,
    candidates:
      size === undefined
        ? []
        : factors.flatMap((each) =>
            setting(at, shape.path, key, specLength(Math.ceil(size * each * 10) / 10, at.tag.units)),
          ),
  };
}

export function isCutThrough({ model, issue }: Case, shape: Shape): boolean {
  const piece = model.pieces.find(({ id }) => id === issue.piece);
  return piece?.cut.some((entry) => samePath(entry.shape.path, shape.path)) ?? false;
}
