/** Finished sizes: a shape that is grown and sized ends at the size, with the growth in true millimetres. */

import { scaling } from '../geometry/affine.ts';
import { offset } from '../geometry/clipper.ts';
import type { Corners } from '../geometry/clipper.ts';
import { boundsOf, boxCentre, contains, ringArea } from '../geometry/measure.ts';
import type { Bounds, Region, Ring } from '../geometry/types.ts';
import { grownBorder } from './border.ts';
import type { Checkpoint } from './cache.ts';
import type { CurveOutline } from './curve-outline.ts';
import { asArea, mapShape } from './made-shape.ts';
import type { MadeShape } from './made-shape.ts';

export interface Sizing {
  /** Scale over the natural size, if no width or height is asked for. */
  readonly scale: number;
  readonly tidy?: number | undefined;
  readonly grow?: number | undefined;
  readonly corners: Corners;
  readonly width?: number | undefined;
  readonly height?: number | undefined;
}

/** Largest error of a size before the shape is made again, in mm; the rest is stretched away, a thousandth or two. */
const closeMm = 0.05;

/**
 * A disc adds its diameter to any box, so the first guess is right for round growth; thinning needs a few corrections.
 */
const rounds = 6;

/** The outline tidied, grown and brought to its size. Empty if nothing is left of it, or no size is possible. */
export async function sizeAndGrow(outline: CurveOutline, sizing: Sizing, checkpoint: Checkpoint): Promise<MadeShape> {
  const { bounds } = outline;
  if (!bounds) return { region: [] };
  if (outline.slides) return slidAndGrown(outline, sizing, checkpoint);
  const { width, height, grow = 0 } = sizing;
  const natural = { width: bounds.maxX - bounds.minX, height: bounds.maxY - bounds.minY };
  let scaleX = width === undefined ? sizing.scale : (width - 2 * grow) / natural.width;
  let scaleY = height === undefined ? sizing.scale : (height - 2 * grow) / natural.height;
  if (width !== undefined && height === undefined) scaleY = scaleX;
  if (height !== undefined && width === undefined) scaleX = scaleY;
  let sizedShape: MadeShape = { region: [] };
  for (let round = 0; round < rounds; round++) {
    if (!(scaleX > 0 && scaleY > 0 && Number.isFinite(scaleX) && Number.isFinite(scaleY))) return { region: [] };
    const made = await outline.at(scaleX, scaleY, checkpoint);
    const full = offset(tidied(made.region, sizing.tidy), grow, sizing.corners);
    // Counters that close as letters grow leave specks that no beam draws.
    const region = grow > 0 && made.lettering ? withoutSlivers(full, made) : full;
    const lettering = made.lettering?.map((each) => each.grown(grow, sizing.corners));
    const border = made.border && grownBorder(made.border, grow);
    sizedShape = {
      ...(grow === 0 ? made : asArea(made)),
      region,
      ...(border ? { border } : {}),
      ...(lettering ? { lettering } : {}),
    };
    const box = boundsOf(region);
    if (!box || (grow === 0 && !outline.changes)) break;
    let lackX = width === undefined ? 0 : width - spanX(box);
    let lackY = height === undefined ? 0 : height - spanY(box);
    if (width === undefined) lackX = (lackY * spanX(box)) / spanY(box);
    if (height === undefined) lackY = (lackX * spanY(box)) / spanX(box);
    if (Math.abs(lackX) < closeMm && Math.abs(lackY) < closeMm) {
      return mapShape(sizedShape, scaling(1 + lackX / spanX(box), 1 + lackY / spanY(box), boxCentre(box)));
    }
    scaleX += lackX / natural.width;
    scaleY += lackY / natural.height;
  }
  return sizedShape;
}

/** Letters that slide get their size where growth will have them stand, and before they are grown: it adds no more than itself. */
async function slidAndGrown(outline: CurveOutline, sizing: Sizing, checkpoint: Checkpoint): Promise<MadeShape> {
  const { tidy, grow = 0, corners, width, height } = sizing;
  const natural = outline.bounds!;
  const guessX = width === undefined ? undefined : width / spanX(natural);
  const guessY = height === undefined ? guessX : height / spanY(natural);
  let [x, y] = [guessX ?? guessY ?? sizing.scale, guessY ?? sizing.scale];
  const tried: TriedScale[] = [];
  // The space between the letters is not in proportion to their size, so this takes a few rounds.
  while (guessY !== undefined && tried.length < rounds) {
    const { region } = await outline.at(x, y, checkpoint);
    const box = boundsOf(tidied(region, tidy));
    if (!box) return { region: [] };
    const restX = width === undefined ? height! / spanY(box) : width / spanX(box);
    const restY = height === undefined ? restX : height / spanY(box);
    const off = Math.max(Math.abs(restX - 1) * spanX(box), Math.abs(restY - 1) * spanY(box));
    if (!Number.isFinite(off)) return { region: [] };
    tried.push({ x, y, restX, restY });
    if (off < closeMm) break;
    [x, y] = [x * restX, y * restY];
  }
  const { restX, restY, ...scale } = nearest(tried) ?? { x, y, restX: 1, restY: 1 };
  if (!(scale.x > 0 && scale.y > 0)) return { region: [] };
  const grownAt = !tidy && corners === 'round' ? outline.grownAt : undefined;
  const made = await (grownAt?.(scale.x, scale.y, checkpoint) ?? outline.at(scale.x, scale.y, checkpoint));
  const sized = restX === 1 && restY === 1 ? made : mapShape(made, scaling(restX, restY, { x: 0, y: 0 }));
  const region = withoutSlivers(grownAt ? sized.region : offset(tidied(sized.region, tidy), grow, corners), sized);
  const lettering = sized.lettering?.map((each) => each.grown(grow, corners));
  return { ...sized, region, ...(lettering ? { lettering } : {}) };
}

/** A scale, and by how much the shape is still to be stretched at it. */
interface TriedScale {
  readonly x: number;
  readonly y: number;
  readonly restX: number;
  readonly restY: number;
}

/**
 * The one that needs least stretching. Where letters find other places at some size, the size asked for may not be among those that they
 * have by themselves: then rather one that is enlarged, so that no joint becomes narrower.
 */
function nearest(tried: readonly TriedScale[]): TriedScale | undefined {
  const cost = ({ restX, restY }: TriedScale): number => {
    const [least, most] = [Math.log(Math.min(restX, restY)), Math.log(Math.max(restX, restY))];
    return Math.max(most, shrinkingCost * -least);
  };
  return tried.reduce<TriedScale | undefined>((a, b) => (a && cost(a) <= cost(b) ? a : b), undefined);
}

/** How much worse it is to shrink a shape than to enlarge it. */
const shrinkingCost = 3;

/**
 * Largest holes and parts, in mm and in x-heights, that count as rounding residue where letters were joined: no beam is
 * as fine, and no counter as small. Our own judgement; those seen were at most 0.07 mm.
 */
export const sliver = { mm: 0.1, xHeights: 0.02 } as const;

/** Holes and parts smaller than this, in mm, burn out or fall through the bed. Rule of thumb, no source. */
export const speckMm = 0.8;

/**
 * The region without residue from joining letters, and without specks that are no counter of a letter: the growth of a notch or bay
 * may close its mouth first. For use after growth, as small parts in a slit help it close.
 */
export function withoutSlivers(region: Region, { lettering = [] }: MadeShape): Region {
  // Letters are flattened when they are first asked for: only if there is such a hole.
  const isCounter = (hole: Ring): boolean =>
    lettering.some(({ letters }) =>
      letters.some((letter) => letter.region.some((ring) => ringArea(ring) < 0 && contains([ring], hole[0]!))),
    );
  return tidied(region, Math.min(sliver.mm, ...lettering.map(({ xHeight }) => sliver.xHeights * xHeight))).filter(
    (ring) => ringArea(ring) > 0 || extentOf(ring) >= speckMm || isCounter(ring),
  );
}

function spanX(box: Bounds): number {
  return box.maxX - box.minX;
}

function spanY(box: Bounds): number {
  return box.maxY - box.minY;
}

/** The region without parts and holes that measure less than `least` in both directions. */
export function tidied(region: Region, least: number | undefined): Region {
  if (!least) return region;
  return region.filter((ring) => Math.abs(ringArea(ring)) > 0 && extentOf(ring) >= least);
}

/** The larger side of the box round a ring, in mm. */
export function extentOf(ring: Ring): number {
  const box = boundsOf([ring]);
  return box ? Math.max(spanX(box), spanY(box)) : 0;
}
