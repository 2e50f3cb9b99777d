/** Lettering whose letters are slid until they join, at whatever size is asked for. */

import { translation } from '../../geometry/affine.ts';
import { normalise, union } from '../../geometry/clipper.ts';
import { curveBounds, flatten } from '../../geometry/curves.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { SetText } from '../lettering.ts';
import { Lettering } from '../letters.ts';
import type { Letter, LetterCurves } from '../letters.ts';
import type { Drawn, Outline } from '../outline.ts';
import { mapSolid } from '../solid.ts';
import type { Solid } from '../solid.ts';
import { onCircle } from './circle.ts';
import type { Bend } from './circle.ts';
import { joinLetters } from './join.ts';
import { splitLetters } from './letters.ts';
import type { Ink } from './letters.ts';
import { pitchFor } from './measures.ts';

/** In mm. */
export interface Slide {
  /** How deep letters may lap. */
  readonly overlap: number;
  /** The least width of a joint. */
  readonly web: number;
  /** The growth to come. */
  readonly grow: number;
}

/** Straight text comes with the middle of its box on the origin, text on an arc with its hub there. */
export function slidOutline(drawn: Drawn & Pick<SetText, 'band' | 'arc'>, slide: Slide): Outline {
  const outline = outlineOf(drawn, slide);
  return { ...outline, ungrown: slide.grow > 0 ? outlineOf(drawn, { ...slide, grow: 0 }) : outline };
}

function outlineOf(drawn: Drawn & Pick<SetText, 'band' | 'arc'>, slide: Slide): Outline {
  const { curves, letters, band, arc, path } = drawn;
  return {
    bounds: curveBounds(curves),
    at: (scaleX, scaleY) => {
      const xHeight = drawn.xHeight * scaleY;
      const bend = arc && onCircle(arc, scaleY);
      const joined = join(inksOf(letters, scaleX, scaleY), { ...slide, xHeight }, bend);
      const about = { path, xHeight, grow: 0, as: 'material' as const, slid: true };
      const solid: Solid = {
        region: union([...joined.letters.map(({ region }) => region), joined.joints]),
        lettering: [new Lettering(about, () => joined.letters)],
        ...(band ? { band: { baseline: band.baseline * scaleY, top: band.top * scaleY } } : {}),
        ...(bend ? { hub: { x: 0, y: 0 } } : {}),
      };
      const box = boundsOf(solid.region);
      if (!box || bend) return solid;
      const centre = boxCentre(box);
      return mapSolid(solid, translation(-centre.x, -centre.y));
    },
  };
}

function inksOf(letters: readonly LetterCurves[], scaleX: number, scaleY: number): Ink[] {
  const affine = { a: scaleX, b: 0, c: 0, d: scaleY, e: 0, f: 0 };
  return letters.flatMap(({ text, line, baseline, curves }, index): Ink[] => {
    if (curves.length === 0) return [];
    const before = letters[index - 1];
    const afterGap = before?.line === line && /^\s+$/u.test(before.text);
    return [{ text, line, baseline: baseline * scaleY, afterGap, region: normalise(flatten(curves, { affine })) }];
  });
}

function join(
  inks: readonly Ink[],
  slide: Slide & { readonly xHeight: number },
  bend: Bend | undefined,
): { readonly letters: readonly Letter[]; readonly joints: Region } {
  const { xHeight, web } = slide;
  const measures = { ...slide, grow: Math.max(0, slide.grow), pitch: pitchFor(xHeight, web) };
  const straight = bend ? inks.map((ink) => ({ ...ink, region: bend.straight(ink.region) })) : inks;
  const split = splitLetters(straight, xHeight);
  const { letters, joints } = joinLetters(split, measures);
  const bent = (region: Region): Region => (bend ? bend.bent(region) : region);
  const whole = inks.flatMap(({ text, line, afterGap }, index): Letter[] => {
    const own = letters.flatMap((region, k) => (split[k]!.index === index ? [...region] : []));
    const opens = afterGap || inks[index - 1]?.line !== line;
    return own.length > 0 ? [{ text, region: bent(own), opens }] : [];
  });
  return { letters: whole, joints: bent(joints) };
}
