/** Single changes of a shape that may make it hold together: thicker, heavier, larger, set closer, slid together. */

import { samePath } from '../../core/values.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Shape, TextGenerator } from '../../spec/model/shape-model.ts';
import { lapMm } from '../../tag/overlap/lap.ts';
import { bundledFonts } from '../../text/bundled-fonts.ts';
import type { Case, Candidate, Remedy } from '../candidate.ts';
import {
  fontSizeKeys,
  sizeOf,
  growthOf,
  inSteps,
  lengthStep,
  shapeTitle,
  setting,
  settingLengths,
  specLength,
  valueAt,
} from '../candidate.ts';
import { removeKey } from '../../edits/remove-key.ts';

/** Weights that families of lettering commonly have, above the regular one. */
const heavierWeights = [600, 700, 800, 900];

/** Overlaps to try when letters are slid together, in mm. */
const lapsMm = [0.6, 0.8, 1];

/** Growth added to that, in x-heights, least first. */
const growthBeside = [0, 0.02, 0.04, 0.06];

/** Slides letters until they join, with the least growth that then makes them hold. */
export function slidTogether(at: Case, shape: Shape): Remedy {
  const { generator, path } = shape;
  const isSlid = generator.kind === 'text' && generator.overlap !== undefined;
  // Those that are slid already may come to stand further apart.
  const words = isSlid
    ? `Set the overlap of ${shapeTitle(shape)}`
    : `Slide the letters of ${shapeTitle(shape)} together`;
  if (generator.kind !== 'text' || isCutThrough(at, shape)) return { words, candidates: [] };
  const xHeight = at.tag.made.get(shape)?.lettering?.[0]?.xHeight ?? 0;
  const before = growthOf(at, shape);
  const lapNow = lapMm(generator, at.tag.stock.minWeb);
  const size = lapNow === undefined ? sizeLess(at, shape, 2 * before, gapsClosed(at, shape)) : [];
  const slid = growthBeside.map((share) =>
    // Existing growth is kept.
    lapsMm.flatMap((lap) => {
      const grow = share === 0 ? undefined : before + share * xHeight;
      // Where they lap as far already, there is growth alone.
      if (lapNow !== undefined && lapNow >= lap) return [];
      if (share > 0 && !(xHeight > 0)) return [];
      return together([
        ...settingLengths(at, path, 'overlap', [lap]),
        ...(grow === undefined ? [] : settingLengths(at, path, 'grow', [grow], before)),
        ...size,
      ]);
    }),
  );
  const [ungrown = [], ...grown] = slid;
  const auto = lapNow === undefined ? slidAsNeeded(at, shape, size) : [];
  return { words, candidates: [...ungrown, ...auto, ...grown.flat()] };
}

/** `overlap: auto`, which makes hairlines alone thicker and sets marks on posts; straps that held the letters go. */
function slidAsNeeded(at: Case, { path, modifiers }: Shape, size: readonly Candidate[]): Candidate[] {
  const siblings = Object.keys(valueAt(at, path) ?? {}).length - 1;
  const strapless = modifiers.straps ? [removeKey(at.report.source, [...path, 'straps'], siblings)] : [];
  if (strapless.includes(undefined)) return [];
  const auto = setting(at, path, 'overlap', 'auto').map(({ description, edits }): Candidate => {
    const removed = strapless.flatMap((edit) => edit ?? []);
    return { description: `${description}${removed.length > 0 ? ' for straps' : ''}`, edits: [...edits, ...removed] };
  });
  return size.length > 0 ? [...together([...auto, ...size]), ...auto] : auto;
}

/** Share of the gaps between letters that closes up when they slide together: stems keep a part of it. Our own judgement. */
const closedShare = 0.8;

/** Estimate of how much shorter the letters become when they slide together, in mm. */
function gapsClosed(at: Case, shape: Shape): number {
  const letters = at.tag.made.get(shape)?.lettering?.[0]?.letters ?? [];
  return letters.reduce((sum, { region, opens }, index) => {
    const last = letters[index - 1];
    // Two words stay apart.
    const gap = last && !opens ? boundsOf(region)!.minX - boundsOf(last.region)!.maxX : 0;
    return sum + closedShare * Math.max(0, gap);
  }, 0);
}

/**
 * The size less `growth`, and a width less `closed` too. With `overlap` a size applies before growth, without it after growth; reduced by
 * twice the growth and by what closes up, the letters stay as large when `overlap` is added.
 */
function sizeLess(at: Case, shape: Shape, growth: number, closed: number): Candidate[] {
  const size = sizeOf(shape);
  const by = growth + (size?.key === 'width' ? closed : 0);
  if (!size || by <= 0 || size.mm <= by || size.key === 'size') return [];
  return settingLengths(at, shape.path, size.key, [size.mm - by]);
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
export function grownAsNeeded(at: Case, shape: Shape, { words, candidates }: Remedy): Remedy {
  const auto = shape.modifiers.growAuto || candidates.length === 0 ? [] : setting(at, shape.path, 'grow', 'auto');
  return { words, candidates: [...candidates, ...auto] };
}

/**
 * A size by capitals or small letters includes the growth, so it is increased too, to keep the letters themselves
 * unchanged.
 */
export function growingAround(at: Case, shape: Shape, steps: readonly number[]): Remedy {
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

/** Factors of enlargement that leave the loops of letters open which growth alone would close, and shares of what is then missing. */
const [largerBy, thickerBy] = [
  [1.2, 1.4],
  [0.6, 1],
] as const;

/** Larger and thicker at once: growth alone closes the loops of a fine script, and size alone is another tag. */
export function largerAndThicker(at: Case, shape: Shape, width: number, minimum: number): Remedy {
  const { generator, path } = shape;
  const size = generator.kind === 'text' ? sizeOf(shape) : undefined;
  const before = growthOf(at, shape);
  const candidates = largerBy.flatMap((factor) =>
    thickerBy.flatMap((share): Candidate[] => {
      const missing = minimum - factor * width;
      if (!size || missing <= 0) return [];
      return together([
        ...setting(at, path, size.key, specLength(Math.ceil(factor * size.mm * 2) / 2, at.tag.units)),
        ...settingLengths(at, path, 'grow', [before + share * missing], before),
      ]);
    }),
  );
  return { words: `Make ${shapeTitle(shape)} larger and thicker`, candidates };
}

export function spacing(at: Case, { generator, path }: Shape, steps: readonly number[]): Candidate[] {
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
  const { generator } = shape;
  const font = generator.kind === 'text' || generator.kind === 'strokes' ? generator.size : undefined;
  const outlineKey = width === undefined ? 'height' : 'width';
  const key = font ? fontSizeKeys[font.of] : outlineKey;
  const size = font?.mm ?? width ?? height;
  return {
    words: `Make ${shapeTitle(shape)} larger`,
    candidates:
      size === undefined
        ? []
        : all.flatMap((each) =>
            setting(at, shape.path, key, specLength(Math.ceil(size * each * 10) / 10, at.tag.units)),
          ),
  };
}

export function isCutThrough({ model, issue }: Case, shape: Shape): boolean {
  const piece = model.pieces.find(({ id }) => id === issue.piece);
  return piece?.cut.some((entry) => samePath(entry.shape.path, shape.path)) ?? false;
}
