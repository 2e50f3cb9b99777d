/** Outlines of lettering and of several lines of it. */

import type { YamlPath } from '../../core/issue.ts';
import { listed } from '../../core/names.ts';
import type { FontFace } from '../../text/font-face.ts';
import { singleLineFace } from '../../text/single-line-face.ts';
import type { Shape, StrokesGenerator, TextGenerator } from '../../spec/model/shape-model.ts';
import type { Stage } from '../cache.ts';
import { dependsOnSize, emOf, setAt, setText } from './lettering.ts';
import type { SetText, SetTextProblem } from './lettering.ts';
import { centredOutline, outlineAboutOrigin } from '../curve-outline.ts';
import type { CurveOutline } from '../curve-outline.ts';
import { lapMm } from '../overlap/lap.ts';
import { slidOutline } from '../overlap/slid-outline.ts';
import { heightsOf, linesOutline } from './text-lines.ts';
import type { LineInput } from './text-lines.ts';
import type { Resources } from '../resources.ts';
import { RoundLines, roundOutline } from './round-lines.ts';

export function lettering(
  { path, modifiers }: Shape,
  text: TextGenerator | StrokesGenerator,
  resources: Resources,
): Stage<CurveOutline> | undefined {
  const { cache } = resources;
  const face = faceOf(text, resources);
  if (!face) return undefined;
  const isOpen = text.kind === 'strokes';
  // Letters that slide get their size before they are grown.
  const sized = isOpen || text.overlap === undefined ? modifiers : { ...modifiers, grow: 0 };
  const { width, height, grow } = sized;
  const em = emOf(face, text, sized);
  if (em !== undefined && !(em > 0)) {
    const message = 'The growth alone takes up this height; make it taller, or grow less.';
    const key = text.size!.of === 'capitals' ? 'cap_height' : 'x_height';
    resources.report({ code: 'bad-length', severity: 'error', path: [...path, key], message });
    return undefined;
  }
  const { size, ...look } = text;
  const atSize = dependsOnSize(text) ? [size, width, height, grow] : undefined;
  const set = cache.get('layout', [face.id, look, atSize], () => setText(face, text, sized));
  const { value } = set;
  if ('problem' in value) {
    resources.report({ code: 'bad-length', severity: 'error', path: [...path, ...value.at], message: value.problem });
    return undefined;
  }
  reportMissing(value, face, text, path, resources);
  const overlap = isOpen ? undefined : lapMm(text, resources.minWeb);
  const slide = overlap && { overlap, web: resources.minWeb, grow: modifiers.grow ?? 0 };
  const isSpacedWhenFitted = modifiers.fit !== undefined && text.letterSpacingMm !== 0;
  return cache.get('lettering', [set.id, em, slide, path, isSpacedWhenFitted], () => {
    const outlineOf = (known: SetText): CurveOutline => {
      const drawn = { ...known, xHeight: face.xHeight, path, isOpen };
      if (slide) return slidOutline(drawn, slide, { cache, face });
      return known.band ? centredOutline(drawn, known.band) : outlineAboutOrigin(drawn);
    };
    return {
      ...(isSpacedWhenFitted
        ? respaced(outlineOf(value), (mmPerEm) => setAt(face, text, mmPerEm), outlineOf)
        : outlineOf(value)),
      ...(em === undefined ? {} : { ownScale: em }),
      heights: { capitals: face.capHeight, 'small letters': face.xHeight },
    };
  });
}

function faceOf(text: TextGenerator | StrokesGenerator, resources: Resources): FontFace | undefined {
  return text.kind === 'strokes' ? singleLineFace : resources.font(text);
}

function reportMissing(
  { missing }: SetText,
  { family }: FontFace,
  text: TextGenerator | StrokesGenerator,
  path: YamlPath,
  resources: Resources,
): void {
  const letters = listed([...new Set(missing.map(({ text: letter }) => `“${letter}”`))], Infinity, 'or');
  if (letters === '') return;
  let message = `The font ${family} has no ${letters}.`;
  if (text.kind === 'strokes') message = `Single-line lettering has no ${letters}.`;
  else if (text.fallbacks) message = `None of the fonts ${[family, ...text.fallbacks].join(', ')} has ${letters}.`;
  resources.report({ code: 'missing-glyph', severity: 'error', path: [...path, 'text'], message });
}

type LinesGenerator = Extract<Shape['generator'], { kind: 'lines' }>;

export function lines(
  { path, modifiers: { grow = 0 } }: Shape,
  { shapes, lines: about, gap, size }: LinesGenerator,
  resources: Resources,
): Stage<CurveOutline> | undefined {
  const inputs: LineInput[] = [];
  for (const [index, { generator, path: own }] of shapes.entries()) {
    if (generator.kind !== 'text' && generator.kind !== 'strokes') return undefined;
    const face = faceOf(generator, resources);
    if (!face) return undefined;
    const set = resources.cache.get('layout', [face.id, generator, undefined], () => setAt(face, generator, Infinity));
    if (!('problem' in set.value)) reportMissing(set.value, face, generator, own, resources);
    inputs.push({ ...about[index]!, face, text: generator, path: own });
  }
  const key = inputs.map(({ face, text, path: own, share, align, arc }) => [face.id, text, own, share, align, arc]);
  const made = resources.cache.get('lines', [key, gap, size, grow, path], (): CurveOutline | undefined => {
    const spacing = gap === undefined ? {} : { gap };
    const outline = inputs.some(({ arc }) => arc)
      ? roundOutline(new RoundLines(inputs, spacing), heightsOf(inputs))
      : linesOutline(inputs, spacing);
    if (!outline || !size || size.of === 'em') return outline;
    return { ...outline, ownScale: (size.mm - 2 * grow) / outline.heights![size.of] };
  });
  return made.value && { id: made.id, value: made.value };
}

/** Letters with spacing in mm, which are set again for the size at which they are made. */
function respaced(
  natural: CurveOutline,
  setFor: (mmPerEm: number) => SetText | SetTextProblem,
  outlineOf: (set: SetText) => CurveOutline,
): CurveOutline {
  const setAgain = (scaleY: number): CurveOutline => {
    const set = setFor(scaleY);
    return 'problem' in set ? natural : outlineOf(set);
  };
  return {
    ...natural,
    changes: true,
    at: (scaleX, scaleY, checkpoint) => setAgain(scaleY).at(scaleX, scaleY, checkpoint),
    ...(natural.slid && {
      slid: (scaleX, scaleY, checkpoint) => setAgain(scaleY).slid!(scaleX, scaleY, checkpoint),
    }),
  };
}
