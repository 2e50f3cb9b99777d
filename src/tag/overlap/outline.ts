/** Lettering whose letters are slid until they join, at whatever size is asked for. */

import { translation } from '../../geometry/affine.ts';
import { normalise, union } from '../../geometry/clipper.ts';
import { curveBounds, flatten } from '../../geometry/curves.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { LetterCurves, Lettering } from '../lettering.ts';
import type { Outline } from '../outline.ts';
import { mapSolid } from '../solid.ts';
import type { Solid } from '../solid.ts';
import { onCircle } from './circle.ts';
import type { Bend } from './circle.ts';
import { joinLetters } from './join.ts';
import { lettersOf } from './letters.ts';
import type { Ink } from './letters.ts';
import { pitchFor } from './measures.ts';

export interface Overlap {
  /** How deep letters may lap, in mm. */
  readonly overlap: number;
  /** The least width of a joint, in mm. */
  readonly web: number;
  /** The growth to come, in mm. */
  readonly grow: number;
  /** In em. */
  readonly xHeight: number;
}

/** Straight text comes with the middle of its box on the origin, text on an arc with its hub there. */
export function slidOutline(lettering: Lettering, how: Overlap): Outline {
  return {
    bounds: curveBounds(lettering.curves),
    slides: true,
    at: (scaleX, scaleY) => {
      const inks = lettering.letters.map((letter) => inkOf(letter, scaleX, scaleY));
      const bend = lettering.arc && onCircle(lettering.arc, scaleY);
      const region = joined(inks, { ...how, xHeight: how.xHeight * scaleY }, bend);
      const { band } = lettering;
      const box = boundsOf(region);
      if (bend) return { region, hub: { x: 0, y: 0 } };
      const solid: Solid = {
        region,
        ...(band ? { band: { baseline: band.baseline * scaleY, top: band.top * scaleY } } : {}),
      };
      if (!box) return solid;
      const centre = boxCentre(box);
      return mapSolid(solid, translation(-centre.x, -centre.y));
    },
  };
}

function inkOf({ curves, baseline, ...letter }: LetterCurves, scaleX: number, scaleY: number): Ink {
  const affine = { a: scaleX, b: 0, c: 0, d: scaleY, e: 0, f: 0 };
  return { ...letter, baseline: baseline * scaleY, region: normalise(flatten(curves, { affine })) };
}

function joined(inks: readonly Ink[], how: Overlap, bend: Bend | undefined): Region {
  const { xHeight, web, overlap } = how;
  const measures = { xHeight, web, overlap, grow: Math.max(0, how.grow), pitch: pitchFor(xHeight, web) };
  const straight = bend ? inks.map((ink) => ({ ...ink, region: bend.straight(ink.region) })) : inks;
  const { letters, joints } = joinLetters(lettersOf(straight, xHeight), measures);
  const region = union([...letters, joints]);
  return bend ? bend.bent(region) : region;
}
