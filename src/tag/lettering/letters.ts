/** Lettering letter by letter, as its font draws it: the reference for whether the finished shape can still be read. */

import { normalise, offset } from '../../geometry/clipper.ts';
import type { Corners } from '../../geometry/clipper.ts';
import { applyToVector, chain, identity, inverse, transform } from '../../geometry/affine.ts';
import { flatten } from '../../geometry/flatten.ts';
import type { CurvePath } from '../../geometry/curves.ts';
import type { Affine, Point, Region } from '../../geometry/types.ts';
import type { YamlPath } from '../../core/issue.ts';
import { groupedBy } from '../../core/grouped.ts';

/** A letter, a ligature, or a letter with its marks. */
export interface Letter {
  readonly text: string;
  readonly region: Region;
  /** Shift away from the letter before due to letter spacing, in mm; negative values move it closer. */
  readonly spaced?: Point;
  /** Whether it is the first of its word. */
  readonly opens?: boolean;
  /** The line it stands on, of a text of several. */
  readonly line?: number;
  /** The y of the baseline, in mm; only of upright letters. */
  readonly baseline?: number;
  /** As its font sets it beside the others, part by part in the same order; only if letters or marks were moved. */
  readonly asSet?: Region;
  /** Whether it was slid until one of its marks met another letter, which holds it. */
  readonly heldByMark?: boolean;
}

/** A letter before it has its size. */
export interface LetterCurves {
  readonly text: string;
  readonly line: number;
  /** For text on an arc, as if it were straight. */
  readonly baseline: number;
  readonly curves: CurvePath;
  /** For straight text: the glyphs it is drawn with. */
  readonly drawn?: LetterGlyphs;
  readonly spaced?: Point;
}

/** The glyphs of a letter, its origin on the baseline: the same wherever the letter stands. */
export interface LetterGlyphs {
  /** Identifies them among all of their font. */
  readonly key: string;
  readonly curves: CurvePath;
  /** Position of the origin in the text, in em. */
  readonly origin: Point;
}

interface LetteringContext {
  /** Path of the text shape. */
  readonly path: YamlPath;
  /** Before growth, in mm. */
  readonly xHeight: number;
  /** Total growth of the outline, in mm; negative if it was thinned. */
  readonly grow: number;
  /** `opening` means cut out of the shape that it belongs to. */
  readonly as: 'material' | 'opening';
  /** Whether its letters were slid until they touch. */
  readonly slid?: boolean;
  /** How it was moved, turned, scaled and mirrored since it was set in lines to be read. */
  readonly moved?: Affine;
  /** Width in mm to which its hairlines were thickened before growth; 0 if they are as drawn. */
  readonly hairline?: number;
}

/** A text as made so far: immutable, and flattened only when its letters are first used. */
export class Lettering {
  readonly path: YamlPath;
  readonly xHeight: number;
  readonly grow: number;
  readonly as: 'material' | 'opening';
  readonly slid: boolean;
  readonly hairline: number;
  readonly moved: Affine;
  readonly #makeLetters: () => readonly Letter[];
  readonly #makeShape: (() => Region) | undefined;
  #letters: readonly Letter[] | undefined;
  #shape: Region | undefined;

  /** `makeShape` is omitted while the solid consists of this lettering alone. */
  constructor(
    { path, xHeight, grow, as, slid = false, hairline = 0, moved = identity }: LetteringContext,
    makeLetters: () => readonly Letter[],
    makeShape?: () => Region,
  ) {
    this.path = path;
    this.xHeight = xHeight;
    this.grow = grow;
    this.as = as;
    this.slid = slid;
    this.hairline = hairline;
    this.moved = moved;
    this.#makeLetters = makeLetters;
    this.#makeShape = makeShape;
  }

  /**
   * The letters as the font draws them, at their final size and place, before growth, bridges and straps. Letters
   * without ink are left out.
   */
  get letters(): readonly Letter[] {
    return (this.#letters ??= this.#makeLetters());
  }

  /** The letters, line by line. */
  get lines(): readonly (readonly Letter[])[] {
    return [...groupedBy(this.letters, ({ line = 0 }) => line).values()];
  }

  /**
   * The present form of its own shape, with growth, bridges and straps; `undefined` if the solid consists of it alone.
   */
  get shape(): Region | undefined {
    return (this.#shape ??= this.#makeShape?.());
  }

  get isMirrored(): boolean {
    const { a, b, c, d } = this.moved;
    return a * d - b * c < 0;
  }

  /** The letters as their font sets them, neither turned nor mirrored, in no particular size. */
  toRead(): Region[] {
    const back = inverse(this.moved);
    return this.letters.map(({ region, asSet }) => transform(asSet ?? region, back));
  }

  /** The lettering moved, rotated or scaled. */
  mapped(affine: Affine): Lettering {
    const scale = Math.sqrt(Math.abs(affine.a * affine.d - affine.b * affine.c));
    return this.#changed(
      {
        xHeight: this.xHeight * Math.hypot(affine.c, affine.d),
        grow: this.grow * scale,
        hairline: this.hairline * scale,
        moved: chain(this.moved, affine),
      },
      () =>
        this.letters.map(({ region, spaced, asSet, baseline, ...letter }) => ({
          ...letter,
          region: transform(region, affine),
          ...(baseline !== undefined && isUpright(affine) ? { baseline: affine.d * baseline + affine.f } : {}),
          ...(asSet ? { asSet: transform(asSet, affine) } : {}),
          ...(spaced ? { spaced: applyToVector(spaced, affine) } : {}),
        })),
      (shape) => transform(shape, affine),
    );
  }

  /** The lettering when its solid has grown, or been thinned if `by` is negative. */
  grown(by: number, corners: Corners): Lettering {
    if (by === 0) return this;
    return this.#changed({ grow: this.grow + by }, undefined, (shape) => offset(shape, by, corners));
  }

  /** The lettering as a member of something larger; its solid was `region`. */
  within(region: Region): Lettering {
    return this.#makeShape
      ? this
      : new Lettering(
          this,
          () => this.letters,
          () => region,
        );
  }

  /** The lettering when its solid is cut out of something else. */
  cutOut(): Lettering {
    return this.#changed({ as: this.as === 'material' ? 'opening' : 'material' });
  }

  #changed(
    about: Partial<LetteringContext>,
    letters = () => this.letters,
    change = (shape: Region) => shape,
  ): Lettering {
    const { path, xHeight, grow, as, slid, hairline, moved } = this;
    return new Lettering(
      { path, xHeight, grow, as, slid, hairline, moved, ...about },
      letters,
      this.#makeShape ? () => change(this.shape!) : undefined,
    );
  }
}

/** Letters at their final size, each by itself; overlapping strokes of one letter are united. */
export function flattenLetters(letters: readonly LetterCurves[], affine: Affine): Letter[] {
  return letters.flatMap((letter, index): Letter[] => {
    const { text, line, spaced } = letter;
    const region = flattened(letter, affine);
    if (region.length === 0) return [];
    const before = letters[index - 1];
    const opens = before?.line !== line || /^\s+$/u.test(before.text);
    const baseline = letter.drawn && isUpright(affine) ? { baseline: affine.d * letter.baseline + affine.f } : {};
    return [{ text, region, opens, line, ...baseline, ...(spaced ? { spaced: applyToVector(spaced, affine) } : {}) }];
  });
}

/**
 * An outline is smooth enough up to this factor above the size it was flattened for, and smoother than needed below.
 */
const smoothTimes = 1.25;

const cache = new WeakMap<LetterCurves, { readonly affine: Affine; readonly region: Region }>();

/** Of each glyph of a font, by steps of `smoothTimes` in size. */
const glyphs = new WeakMap<CurvePath, Map<number, Region>>();

/** The outline of a letter; flattened only once for sizes that differ little, as each step of growth makes them. */
function flattened(letter: LetterCurves, affine: Affine): Region {
  const { drawn } = letter;
  if (!drawn || !isUpright(affine) || !(affine.a > 0) || !isNearOne(affine.d / affine.a))
    return flattenedAlone(letter, affine);
  const step = Math.ceil(Math.log(Math.max(affine.a, affine.d)) / Math.log(smoothTimes));
  const size = smoothTimes ** step;
  const steps = glyphs.get(drawn.curves) ?? new Map<number, Region>();
  glyphs.set(drawn.curves, steps);
  const own = { a: size, b: 0, c: 0, d: size, e: 0, f: 0 };
  const region = steps.get(step) ?? normalise(flatten(drawn.curves, { affine: own }));
  steps.set(step, region);
  const { x, y } = drawn.origin;
  const at = { e: affine.e + affine.a * x, f: affine.f + affine.d * y };
  return transform(region, { a: affine.a / size, b: 0, c: 0, d: affine.d / size, ...at });
}

/** A letter that only grows a little larger or smaller, as each step of its growth makes it, is flattened once. */
function flattenedAlone(letter: LetterCurves, affine: Affine): Region {
  const before = cache.get(letter);
  const [x, y] = before ? [affine.a / before.affine.a, affine.d / before.affine.d] : [0, 0];
  if (before && isUpright(affine) && isNearOne(x) && isNearOne(y)) {
    const { e, f } = before.affine;
    return transform(before.region, { a: x, b: 0, c: 0, d: y, e: affine.e - x * e, f: affine.f - y * f });
  }
  const region = normalise(flatten(letter.curves, { affine }));
  if (isUpright(affine)) cache.set(letter, { affine, region });
  return region;
}

function isUpright({ b, c }: Affine): boolean {
  return b === 0 && c === 0;
}

function isNearOne(times: number): boolean {
  return times > 1 / smoothTimes && times < smoothTimes;
}
