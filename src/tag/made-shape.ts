/** A shape once it has been made: its material, and what placement needs to know about it. */

import { applyTo, transform } from '../geometry/affine.ts';
import { boundsOf, boxCentre, centroid } from '../geometry/measure.ts';
import type { Affine, Line, Point, Region } from '../geometry/types.ts';
import type { CentreRule } from '../spec/model.ts';
import { scaledBorder } from './border.ts';
import type { Border } from './border.ts';
import { mapCode } from './code.ts';
import type { Code } from './code.ts';
import type { Lettering } from './letters.ts';
import { mapAsked } from './asked-width.ts';
import type { AskedWidth } from './asked-width.ts';

/** The band that the eye takes for the height of a line of lettering, as y coordinates in mm. */
export interface LetterBand {
  readonly baseline: number;
  readonly top: number;
  /** Where capitals end; of lettering that stands as high as any of its size would, whatever letters it has. */
  readonly head?: number;
  /** How deep and how high its letters may go, and how long a line of usual words is. */
  readonly usual?: { readonly deep: number; readonly tall: number; readonly long: number };
}

/** The band moved and scaled. */
export function mapBand(
  { baseline, top, head, usual }: LetterBand,
  toY: (y: number) => number,
  scaleX: number,
): LetterBand {
  return {
    baseline: toY(baseline),
    top: toY(top),
    ...(head === undefined ? {} : { head: toY(head) }),
    ...(usual ? { usual: { deep: toY(usual.deep), tall: toY(usual.tall), long: scaleX * usual.long } } : {}),
  };
}

/** Where the corners of a member of a stack poke out of the member it is lapped over. */
export interface Shoulder {
  /** The member that is lapped over the one before it. */
  readonly name: string;
  /** The notches beside the corners. */
  readonly region: Region;
  /** The lap that would hide it, as it is written in the spec; `undefined` where none would. */
  readonly hidingLap?: number;
}

export interface MadeShape {
  readonly region: Region;
  /** Members of a stack, where they stand in it. */
  readonly parts?: ReadonlyMap<string, Region>;
  /** Of a stack: where its members do not run into each other smoothly. */
  readonly shoulders?: readonly Shoulder[];
  /** Of a border: how it was made. */
  readonly border?: Border;
  /** What is drawn along these and encloses nothing; `region` is then what the beam burns along them. */
  readonly lines?: readonly Line[];
  /** Every code in it. */
  readonly codes?: readonly Code[];
  /** Only for upright lettering. */
  readonly band?: LetterBand;
  /** Of lettering on an arc: the middle of its circle. */
  readonly arcCentre?: Point;
  /** Every text in it, letter by letter. */
  readonly lettering?: readonly Lettering[];
  /** Widths of it that are meant to be what they are. */
  readonly asked?: readonly AskedWidth[];
}

/** What was drawn along lines, as the area that is burnt along them: once that is changed, they say no more what it is. */
export function asArea(solid: MadeShape): MadeShape {
  const area: Mutable<MadeShape> = { ...solid };
  delete area.lines;
  return area;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** The solid moved, scaled or turned; what no longer means anything afterwards (the band of turned lettering) is dropped. */
export function mapSolid(solid: MadeShape, affine: Affine): MadeShape {
  const { asked, band, border, codes, arcCentre, lettering, lines, parts, shoulders } = solid;
  const upright = affine.b === 0 && affine.c === 0 && affine.d > 0;
  return {
    region: transform(solid.region, affine),
    ...(parts ? { parts: new Map([...parts].map(([name, region]) => [name, transform(region, affine)])) } : {}),
    ...(shoulders ? { shoulders: shoulders.map((each) => ({ ...each, region: transform(each.region, affine) })) } : {}),
    ...(border
      ? { border: scaledBorder(border, transform(border.within, affine), Math.sqrt(Math.abs(determinant(affine)))) }
      : {}),
    ...(lines ? { lines: transform(lines, affine) } : {}),
    ...(codes ? { codes: codes.map((code) => mapCode(code, affine)) } : {}),
    ...(lettering ? { lettering: lettering.map((each) => each.mapped(affine)) } : {}),
    ...(arcCentre ? { arcCentre: applyTo(arcCentre, affine) } : {}),
    ...(asked ? { asked: mapAsked(asked, affine) } : {}),
    ...(band && upright ? { band: mapBand(band, (y) => affine.d * y + affine.f, Math.abs(affine.a)) } : {}),
  };
}

/**
 * Share of the centre of gravity in the height at which lettering looks centred; the rest is half the letter band. The
 * steadiest mix over forty names in four fonts, by our own measurement; no published truth is known.
 */
const gravityShare = 0.35;

/** Of a line that small letters and capitals share: how high its middle is, in heights of its capitals (our own judgement). */
const evenShare = 0.42;

export function evenMiddle({ baseline }: LetterBand, head: number): number {
  return baseline + evenShare * (head - baseline);
}

/** The point of a solid that counts as its centre under a rule; `undefined` when there is no material. */
export function centreOf({ region, band, arcCentre }: MadeShape, rule: CentreRule): Point | undefined {
  const bounds = boundsOf(region);
  if (!bounds) return undefined;
  const box = boxCentre(bounds);
  const mass = centroid(region) ?? box;
  if (band?.head !== undefined && rule !== 'box' && rule !== 'mass') {
    // Between the middle of small letters and that of capitals, whichever there are.
    return { x: rule === 'eye' ? (box.x + mass.x) / 2 : box.x, y: evenMiddle(band, band.head) };
  }
  const bandMiddle = band && (band.baseline + band.top) / 2;
  switch (rule) {
    case 'box':
      return box;
    case 'mass':
      return mass;
    case 'x-height':
      return { x: box.x, y: bandMiddle ?? box.y };
    case 'eye': {
      // Letters round a circle look centred where the circle is.
      if (arcCentre) return arcCentre;
      const y =
        bandMiddle === undefined ? (box.y + mass.y) / 2 : gravityShare * mass.y + (1 - gravityShare) * bandMiddle;
      return { x: (box.x + mass.x) / 2, y };
    }
  }
}

function determinant({ a, b, c, d }: Affine): number {
  return a * d - b * c;
}
