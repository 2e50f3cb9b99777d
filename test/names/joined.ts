/** Names made by the engine's own steps, with and without their letters slid together. */

import { offset } from '../../src/geometry/clipper.ts';
import { findNecks } from '../../src/geometry/necks.ts';
import type { Neck } from '../../src/geometry/necks.ts';
import { ringArea } from '../../src/geometry/measure.ts';
import { partsOf } from '../../src/geometry/parts.ts';
import { poleOf } from '../../src/geometry/pole.ts';
import type { Region } from '../../src/geometry/types.ts';
import type { TextGenerator } from '../../src/spec/model/shape-model.ts';
import { StageCache } from '../../src/tag/cache.ts';
import { setText } from '../../src/tag/lettering/lettering.ts';
import type { Letter } from '../../src/tag/lettering/letters.ts';
import { centredOutline } from '../../src/tag/curve-outline.ts';
import { slidOutline } from '../../src/tag/overlap/slid-outline.ts';
import { withoutSlivers } from '../../src/tag/size.ts';
import type { MadeShape } from '../../src/tag/made-shape.ts';
import type { FontFace } from '../../src/text/font-face.ts';

export const xHeightMm = 12;
export const minWebMm = 1.5;
export const overlapMm = 0.6;

export interface MadeName {
  readonly region: Region;
  /** Where they stand, before growth. */
  readonly letters: readonly Letter[];
  /** Width to which hairlines were thickened, in mm; 0 or absent if they are as drawn. */
  readonly hairline?: number;
}

export function textOf(text: string): TextGenerator {
  const none = { kind: 'text' as const, weight: 400, weightAsked: false, italic: false, letterSpacingMm: 0 };
  return { ...none, text, font: '', align: 'center', features: {} };
}

const cache = new StageCache();
const checkpoint = () => Promise.resolve();

export async function nameOf(face: FontFace, text: string, grow: number, overlap?: number): Promise<MadeName> {
  const set = setText(face, textOf(text), {});
  if ('problem' in set || !set.band) throw new Error(`“${text}” cannot be set.`);
  const drawn = { ...set, xHeight: face.xHeight, path: [] };
  const em = xHeightMm / face.xHeight;
  const outline =
    overlap === undefined
      ? centredOutline(drawn, set.band)
      : slidOutline(drawn, { overlap, web: minWebMm, grow }, { cache, face });
  const solid: MadeShape = await outline.at(em, em, checkpoint);
  const region = offset(solid.region, grow);
  return {
    region: overlap === undefined ? region : withoutSlivers(region, solid),
    letters: solid.lettering?.[0]?.letters ?? [],
    hairline: solid.lettering?.[0]?.hairline ?? 0,
  };
}

/** Share of a counter that is open; of one between hairlines, which the thickened strokes reach into, less is left. */
const openShare = { usual: 0.75, fine: 0.4 } as const;

/** Counters of single letters of which less than that is open in the region. */
export function closedCounters({ region, letters, hairline = 0 }: MadeName, grow: number): number {
  const least = hairline > 0 ? openShare.fine : openShare.usual;
  const holes = region.filter((ring) => ringArea(ring) < 0);
  let closed = 0;
  for (const letter of letters) {
    for (const ring of offset(letter.region, grow)) {
      if (ringArea(ring) >= 0 || -ringArea(ring) < 0.2) continue;
      const pole = poleOf([[...ring].reverse()], 0.02);
      const open = holes.reduce((sum, hole) => sum + (pole && inBox(hole, pole) ? -ringArea(hole) : 0), 0);
      if (open < -least * ringArea(ring)) closed += 1;
    }
  }
  return closed;
}

function inBox(ring: Region[number], { x, y }: { readonly x: number; readonly y: number }): boolean {
  const xs = ring.map((point) => point.x);
  const ys = ring.map((point) => point.y);
  return x > Math.min(...xs) && x < Math.max(...xs) && y > Math.min(...ys) && y < Math.max(...ys);
}

/** Shares of the x-height by which a name may be grown, least first. */
export const growShares = [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.1, 0.13, 0.17, 0.22];

export interface Held extends MadeName {
  /** In x-heights. */
  readonly share: number;
  readonly parts: number;
  readonly necks: readonly Neck[];
}

/** Grown by the least share at which it is one part without a neck below the least web. */
export async function heldName(face: FontFace, text: string, overlap?: number): Promise<Held> {
  let last: Held | undefined;
  for (const share of growShares) {
    const made = await nameOf(face, text, share * xHeightMm, overlap);
    const parts = partsOf(made.region).length;
    const necks = findNecks(made.region, minWebMm);
    last = { ...made, share, parts, necks };
    if (parts === 1 && necks.length === 0) break;
  }
  return last!;
}
