/** Reads lettering: the text and the keys that go with it. */

import type { YamlPath } from '../../core/issue.ts';
import { isFontFile } from '../../text/font-files.ts';
import { reportEmpty, reportGaps } from './empty-cells.ts';
import { evenlyOf } from './evenly.ts';
import type { TextArc, TextGenerator, Wording } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import { isSingleLine } from './single-line.ts';
import type { ShapeSpec } from '../types.generated.ts';

/** Default font family; it is bundled. */
const defaultFont = 'Nunito';

/** Sizes by the font's own measures. A text can have only one of them. */
const fontSizes = { size: 'em', cap_height: 'capitals', x_height: 'small letters' } as const;
type FontSizeKey = keyof typeof fontSizes;
const fontSizeKeys = Object.keys(fontSizes) as FontSizeKey[];

/** Sizes by the outline of the whole text. */
const outlineSizes = ['width', 'height', 'fit'] as const;

export function readText(spec: ShapeSpec, path: YamlPath, problems: Problems): TextGenerator | undefined {
  const overlap = readOverlap(spec, [...path, 'overlap'], problems);
  const wording = readWording(spec, path, problems);
  return wording && { ...wording, ...readFont(spec, path, problems), ...(overlap === undefined ? {} : { overlap }) };
}

/** The text of a shape and how it is set, whatever its letters look like. */
export function readWording(spec: ShapeSpec, path: YamlPath, problems: Problems): Wording | undefined {
  const textPath = [...path, 'text'];
  const text = problems.filled(spec.text!, textPath);
  if (text?.trim() === '') reportEmpty(spec.text!, textPath, problems);
  else reportGaps(spec.text!, problems);
  const size = sizesByFont(spec, path, problems);
  const arc = spec.arc && readArc(spec, path, problems);
  if (spec.room_for) reportRoom(spec, [...path, 'room_for'], problems);
  if (text === undefined || (spec.arc && !arc)) return undefined;
  return {
    ...readSpacing(spec, path, problems),
    text,
    ...(size === undefined ? {} : { size }),
    ...(arc ? { arc } : {}),
    ...(spec.line_height === undefined ? {} : { lineHeight: spec.line_height }),
    align: spec.align === 'left' || spec.align === 'right' ? spec.align : 'center',
    ...(spec.align === 'baseline' ? { evenly: evenlyOf(spec.text!, text, problems, spec.room_for) } : {}),
  };
}

/** Reports room for letters where nothing stands on a line of its own. */
export function reportRoom({ align }: Pick<ShapeSpec, 'align'>, path: YamlPath, problems: Problems): void {
  if (align === 'baseline') return;
  const range = problems.source.keyRange(path);
  problems.error('bad-value', path, '“room_for” goes with “align: baseline”.', { range });
}

type Written<Key extends keyof ShapeSpec> = { [K in Key]?: ShapeSpec[K] | undefined };

/** What is between the letters, and which forms they have. */
export function readSpacing(
  { letter_spacing: spacing, features = {} }: Written<'letter_spacing' | 'features'>,
  path: YamlPath,
  problems: Problems,
): Pick<Wording, 'letterSpacingMm' | 'features'> {
  return { letterSpacingMm: problems.length(spacing, [...path, 'letter_spacing'], 'signed') ?? 0, features };
}

/** The look of letters with outlines, whatever the text. */
export function readFont(
  spec: Written<'font' | 'weight' | 'italic'>,
  path: YamlPath,
  problems: Problems,
): Pick<TextGenerator, 'kind' | 'font' | 'fallbacks' | 'weight' | 'weightAsked' | 'italic'> {
  // The schema check leaves holes in lists.
  const written: readonly (string | undefined)[] = typeof spec.font === 'string' ? [spec.font] : [...(spec.font ?? [])];
  if (written.some((each) => isSingleLine(each))) {
    const message =
      '“single line” cannot be in a list of fonts: its letters are lines, those of other fonts are areas.';
    problems.error('bad-value', [...path, 'font'], message);
  }
  const [font = defaultFont, ...fallbacks] = written.flatMap((each) =>
    each === undefined ? [] : [isFontFile(each) ? problems.beside(each) : each],
  );
  return {
    kind: 'text',
    font,
    ...(fallbacks.length > 0 ? { fallbacks } : {}),
    weight: spec.weight ?? 400,
    weightAsked: spec.weight !== undefined,
    italic: spec.italic ?? false,
  };
}

/**
 * The size of a text by the font's own measures.
 * @param keys The keys that are allowed.
 */
export function sizesByFont(
  spec: ShapeSpec,
  path: YamlPath,
  problems: Problems,
  keys: readonly FontSizeKey[] = fontSizeKeys,
): TextGenerator['size'] {
  const written = keys.filter((key) => problems.wrote([...path, key]));
  const others = outlineSizes.filter((key) => problems.wrote([...path, key]));
  const [first, second] = written;
  if (!first && others.length === 0) {
    problems.error('missing-key', path, 'This text has no size: add width, height or x_height.');
  }
  const otherKey = second ?? others[0];
  if (first && otherKey) {
    problems.error('bad-value', [...path, first], `“${first}” and “${otherKey}” both set the size; keep one.`, {
      range: problems.source.keyRange([...path, first]),
    });
    return undefined;
  }
  const mm = first && problems.length(spec[first], [...path, first], 'size');
  return mm === undefined ? undefined : { of: fontSizes[first!], mm };
}

function readOverlap(spec: ShapeSpec, path: YamlPath, problems: Problems): TextGenerator['overlap'] {
  const otherKey = (['width', 'height'] as const).find((key) => spec[key] !== undefined);
  if (spec.overlap !== undefined && typeof spec.arc === 'object' && spec.arc.radius !== undefined && otherKey) {
    problems.error(
      'bad-value',
      path,
      `“overlap” changes the ${otherKey}, and so the circle; give “x_height” or “size” instead of “${otherKey}”, or “sweep” instead of the radius.`,
      { range: problems.source.keyRange(path) },
    );
    return undefined;
  }
  return spec.overlap === 'auto' ? spec.overlap : problems.length(spec.overlap, path, 'size');
}

/** Default sweep of an arc given by its side alone, in degrees (our own judgement). */
const usualSweep = 120;

function readArc(spec: ShapeSpec, path: YamlPath, problems: Problems): TextArc | undefined {
  const arc = spec.arc!;
  if (typeof arc === 'string') return { at: arc, sweep: usualSweep };
  const { radius, sweep, at = 'top' } = arc;
  const arcPath = [...path, 'arc'];
  const written = ['radius', 'sweep'].filter((key) => problems.wrote([...arcPath, key]));
  if (written.length !== 1) {
    problems.error('bad-value', arcPath, 'An arc needs either a radius or a sweep in degrees.');
    return undefined;
  }
  if (sweep !== undefined) return { at, sweep };
  const mm = problems.length(radius, [...arcPath, 'radius'], 'size');
  if (mm === undefined) return undefined;
  // On a circle of a given size, letters of another size bend differently, so the text cannot be scaled afterwards.
  if (spec.fit || (spec.width !== undefined && spec.height !== undefined)) {
    const otherKey = spec.fit ? '“fit” changes' : '“width” and “height” together stretch';
    problems.error(
      'bad-value',
      [...arcPath, 'radius'],
      `${otherKey} the circle too; give “sweep” instead of its radius.`,
      {
        range: problems.source.keyRange([...arcPath, 'radius']),
      },
    );
    return undefined;
  }
  return { at, radius: mm };
}
