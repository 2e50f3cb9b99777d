/** Lettering whose letters are slid until they join, at any size. */

import { translation } from '../../geometry/affine.ts';
import { normalise, offset, union } from '../../geometry/clipper.ts';
import { curveBounds } from '../../geometry/curves.ts';
import { flatten } from '../../geometry/flatten.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import type { FontFace } from '../../text/font-face.ts';
import type { Checkpoint, StageCache } from '../cache.ts';
import type { SetText } from '../lettering/lettering.ts';
import { Lettering } from '../lettering/letters.ts';
import type { Letter, LetterCurves } from '../lettering/letters.ts';
import type { DrawnText, CurveOutline, SlidLetters } from '../curve-outline.ts';
import { mapBand, mapShape } from '../made-shape.ts';
import type { MadeShape } from '../made-shape.ts';
import { sampleLetters } from '../lettering/sample-letters.ts';
import { movedRegion, shapeOf } from './bodies.ts';
import type { LetterBody, LetterShape } from './bodies.ts';
import { onCircle } from './circle.ts';
import type { Bend } from './circle.ts';
import { hairlineWidth, hasHairlines } from './hairlines.ts';
import { idOf } from './grown-shape.ts';
import { joinLetters, thinned } from './join.ts';
import { letterParts } from './letters.ts';
import { pitchFor } from './measures.ts';
import type { Measures } from './measures.ts';
import { standingLetters } from './stand.ts';
import type { PlacedPart } from './stand.ts';

/** Measures in mm. */
export interface Slide {
  /** Largest overlap of letters. */
  readonly overlap: number;
  /** Least width of a joint. */
  readonly web: number;
  /** Growth still to come. */
  readonly grow: number;
}

export interface OverlapInput {
  /** Caches prepared letters: the same letter recurs, in this text and in the next. */
  readonly cache: StageCache;
  readonly face: FontFace;
}

/** The outline of slid lettering. Straight text has the middle of its box on the origin, text on an arc its hub. */
export function slidOutline(drawn: SlidText, slide: Slide, making: OverlapInput): CurveOutline {
  const measured = { ...slide, grow: Math.max(0, slide.grow) };
  const slid = (scaleX: number, scaleY: number, checkpoint: Checkpoint): Promise<SlidLetters> =>
    slidLetters(drawn, measured, making, { scaleX, scaleY, checkpoint });
  return {
    bounds: curveBounds(drawn.curves),
    at: async (scaleX, scaleY, checkpoint) => {
      const letters = await slid(scaleX, scaleY, checkpoint);
      return (await letters.joined()).united();
    },
    slid,
  };
}

function grownPart({ drawn, at }: PlacedPart, grow: number, cache: StageCache): Region {
  const grown = cache.letters.get('grown part', [idOf(drawn), grow], () => offset(drawn, grow));
  return movedRegion(grown.value, at);
}

type SlidText = DrawnText & Pick<SetText, 'band' | 'arc'>;

interface SlideScale {
  readonly scaleX: number;
  readonly scaleY: number;
  readonly checkpoint: Checkpoint;
}

async function slidLetters(
  { xHeight: naturalXHeight, letters, band, arc, path }: SlidText,
  slide: Slide,
  making: OverlapInput,
  { scaleX, scaleY, checkpoint }: SlideScale,
): Promise<SlidLetters> {
  const xHeight = naturalXHeight * scaleY;
  const { grow, web } = slide;
  const hairline = hasFineLetters(making, web / xHeight) ? hairlineWidth({ web, xHeight, grow }) : 0;
  const measures = { ...slide, xHeight, hairline, pitch: pitchFor(xHeight, web) };
  const bend = arc && onCircle(arc, scaleY);
  const bodies = await bodiesOf(letters, { scaleX, scaleY, measures, bend, making }, checkpoint);
  const standing = await standingLetters(bodies, measures, checkpoint);
  const bent = (region: Region): Region => (bend ? bend.bent(region) : region);
  const whole = letters.flatMap(({ text, line, baseline }, index): Letter[] => {
    const own = standing.parts.flatMap((parts, k) => (bodies[k]!.index === index ? parts : []));
    const heldByMark = bodies.some((body, k) => body.index === index && standing.heldByMark.has(k));
    if (own.length === 0) return [];
    const region = own.flatMap(({ drawn, at }) => [...movedRegion(drawn, at)]);
    const asSet = bodies.filter((body) => body.index === index).flatMap(setRegion);
    const opens = isAfterGap(letters, index) || inkBefore(letters, index) !== line;
    // Lines are drawn together as well.
    const first = bodies.findIndex((body) => body.index === index);
    const up = own[0]!.at.y - bodies[first]!.at.y;
    const upright = bend ? {} : { baseline: baseline * scaleY + up };
    return [{ text, region: bent(region), opens, line, ...upright, asSet: bent(asSet), heldByMark }];
  });
  const boxWith = (joints: Region): Bounds | undefined =>
    boundsOf([...whole.flatMap((letter) => [...letter.region]), ...joints]);
  const thickened = Math.max(0, hairline - 2 * grow);
  const about = { path, xHeight, grow: 0, as: 'material' as const, slid: true, hairline: thickened };
  const made = {
    lettering: [new Lettering(about, () => whole)],
    ...(band ? { band: mapBand(band, (y) => y * scaleY, scaleX) } : {}),
    ...(bend ? { arcCentre: { x: 0, y: 0 } } : {}),
  };
  const strokes = bodies.flatMap((body, index) => movedRegion(body.strokes, standing.points[index]!));
  const bars = standing.joints.flatMap(({ region }) => thinned(region, measures));
  return {
    box: boxWith(bent([...strokes, ...bars])),
    joined: async () => {
      const joints = await joinLetters(bodies, standing, measures, making.cache, checkpoint);
      const box = boxWith(bent(joints));
      /** Straight text has the middle of its box, as it is before growth, on the origin. */
      const centred = (region: Region): MadeShape => {
        if (!box || bend) return { ...made, region };
        const centre = boxCentre(box);
        return mapShape({ ...made, region }, translation(-centre.x, -centre.y));
      };
      return {
        box,
        united: () => centred(union([...whole.map(({ region }) => region), bent(joints)])),
        // Growing a union and uniting what is grown are the same, and the same letters recur.
        ...(grow > 0 &&
          !bend && {
            grown: () => {
              const parts = standing.parts.flat().map((part) => grownPart(part, grow, making.cache));
              return centred(union([...parts, offset(normalise(joints), grow)]));
            },
          }),
      };
    },
  };
}

/** The letter where its font has it. */
function setRegion({ drawn, at }: LetterBody): Region {
  return movedRegion([drawn.base, ...drawn.marks].flat(), at);
}

/** Whether a font has hairlines, judged by letters that are the same for each text, so that the names of a batch are alike. */
function hasFineLetters({ cache, face }: OverlapInput, webInXHeights: number): boolean {
  return cache.get('hairlines', [face.id, webInXHeights], () => {
    const letters = sampleLetters(face);
    return letters?.every((letter) => hasHairlines(letter, webInXHeights)) ?? false;
  }).value;
}

interface SlideSetting {
  readonly scaleX: number;
  readonly scaleY: number;
  readonly measures: Measures;
  readonly bend: Bend | undefined;
  readonly making: OverlapInput;
}

async function bodiesOf(
  letters: readonly LetterCurves[],
  { scaleX, scaleY, measures, bend, making }: SlideSetting,
  checkpoint: Checkpoint,
): Promise<LetterBody[]> {
  const bodies: LetterBody[] = [];
  const affine = { a: scaleX, b: 0, c: 0, d: scaleY, e: 0, f: 0 };
  const shapesOf = (text: string, ink: Region): LetterShape[] =>
    letterParts(text, ink, measures.xHeight).map((part) => shapeOf(part, measures));
  for (const [index, { text, line, baseline, curves, drawn }] of letters.entries()) {
    if (curves.length === 0) continue;
    let at = { x: 0, y: baseline * scaleY };
    let shapes: readonly LetterShape[];
    if (drawn && !bend) {
      at = { x: drawn.origin.x * scaleX, y: drawn.origin.y * scaleY };
      const inputs = [making.face.id, drawn.key, text, scaleX, scaleY, measures];
      const make = (): LetterShape[] => shapesOf(text, normalise(flatten(drawn.curves, { affine })));
      shapes = making.cache.letters.get('sliding letter', inputs, make).value;
    } else {
      const ink = normalise(flatten(curves, { affine }));
      shapes = shapesOf(text, movedRegion(bend ? bend.straight(ink) : ink, { x: 0, y: -at.y }));
    }
    const afterGap = isAfterGap(letters, index);
    bodies.push(...shapes.map((shape, k) => ({ ...shape, index, text, line, afterGap: afterGap && k === 0, at })));
    await checkpoint();
  }
  return bodies;
}

function isAfterGap(letters: readonly LetterCurves[], index: number): boolean {
  const before = letters[index - 1];
  return before?.line === letters[index]!.line && /^\s+$/u.test(before.text);
}

/** Line of the last letter with ink before this one. */
function inkBefore(letters: readonly LetterCurves[], index: number): number | undefined {
  return letters.slice(0, index).findLast(({ curves }) => curves.length > 0)?.line;
}
