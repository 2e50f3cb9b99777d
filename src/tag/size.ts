/** Finished sizes: a shape that is grown and sized ends at the size, with the growth in true millimetres. */

import { scaling } from '../geometry/affine.ts';
import { offset } from '../geometry/clipper.ts';
import type { Corners } from '../geometry/clipper.ts';
import { boundsOf, boxCentre, contains, ringArea } from '../geometry/measure.ts';
import type { Bounds, Region, Ring } from '../geometry/types.ts';
import { grownBorder } from './shapes/border.ts';
import type { Checkpoint } from './cache.ts';
import type { CurveOutline, JoinedLetters, SlidLetters } from './curve-outline.ts';
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
  if (outline.slid) return slidAndGrown(bounds, outline.slid, sizing, checkpoint);
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
    // What growth makes so small is a speck as well: the size that is given is one of the finished shape.
    const full = tidied(offset(tidied(made.region, sizing.tidy), grow, sizing.corners), sizing.tidy);
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
async function slidAndGrown(
  natural: Bounds,
  slid: NonNullable<CurveOutline['slid']>,
  sizing: Sizing,
  checkpoint: Checkpoint,
): Promise<MadeShape> {
  const { tidy, grow = 0, corners } = sizing;
  const joined = async (letters: SlidLetters): Promise<JoinedLetters> => {
    const whole = await letters.joined();
    return tidy ? { ...whole, box: boundsOf(tidied(whole.united().region, tidy)) } : whole;
  };
  const standing = await settled(natural, sizing, (x, y) => slid(x, y, checkpoint));
  let found = standing && tried(await joined(standing.made), sizing);
  // What joins letters may reach out of their box.
  if (found && found.off >= closeMm && !isSameSize(found.made.box!, standing!.made.box!))
    found = await settled(natural, sizing, async (x, y) => joined(await slid(x, y, checkpoint)));
  if (!found) return { region: [] };
  const { made, restX, restY } = found;
  const united = tidy ? made.united() : undefined;
  const drops = united !== undefined && tidied(united.region, tidy).length < united.region.length;
  const grown = !drops && corners === 'round' ? made.grown?.() : undefined;
  const solid = grown ?? united ?? made.united();
  const sized = restX === 1 && restY === 1 ? solid : mapShape(solid, scaling(restX, restY, { x: 0, y: 0 }));
  const full = withoutSlivers(grown ? sized.region : offset(tidied(sized.region, tidy), grow, corners), sized);
  const region = tidied(full, tidy);
  const lettering = sized.lettering?.map((each) => each.grown(grow, corners));
  return { ...sized, region, ...(lettering ? { lettering } : {}) };
}

interface Boxed {
  readonly box: Bounds | undefined;
}

/** What was made at some scale, by how much it is still to be stretched, and how many mm that is. */
interface Tried<T> {
  readonly made: T;
  readonly restX: number;
  readonly restY: number;
  readonly off: number;
}

/** At the scale that gives the size asked for; `undefined` if there is none, or nothing to be sized. */
async function settled<T extends Boxed>(
  natural: Bounds,
  sizing: Sizing,
  at: (scaleX: number, scaleY: number) => Promise<T>,
): Promise<Tried<T> | undefined> {
  const { width, height } = sizing;
  const guessX = width === undefined ? undefined : width / spanX(natural);
  const guessY = height === undefined ? guessX : height / spanY(natural);
  let [x, y] = [guessX ?? guessY ?? sizing.scale, guessY ?? sizing.scale];
  const all: Tried<T>[] = [];
  // The space between the letters is not in proportion to their size, so this takes a few rounds.
  while (all.length < rounds) {
    const next = x > 0 && y > 0 ? tried(await at(x, y), sizing) : undefined;
    if (!next) return undefined;
    all.push(next);
    if (next.off < closeMm) break;
    [x, y] = [x * next.restX, y * next.restY];
  }
  return nearest(all);
}

function tried<T extends Boxed>(made: T, { width, height }: Sizing): Tried<T> | undefined {
  const { box } = made;
  if (width === undefined && height === undefined) return { made, restX: 1, restY: 1, off: 0 };
  if (!box) return undefined;
  const restX = width === undefined ? height! / spanY(box) : width / spanX(box);
  const restY = height === undefined ? restX : height / spanY(box);
  const off = Math.max(Math.abs(restX - 1) * spanX(box), Math.abs(restY - 1) * spanY(box));
  return Number.isFinite(off) ? { made, restX, restY, off } : undefined;
}

/** Sizes that differ by less than this, in mm, are the same. */
const sameMm = 1e-4;

function isSameSize(one: Bounds, other: Bounds): boolean {
  return Math.abs(spanX(one) - spanX(other)) < sameMm && Math.abs(spanY(one) - spanY(other)) < sameMm;
}

/**
 * The one that needs least stretching. Where letters find other places at some size, the size asked for may not be among those that they
 * have by themselves: then rather one that is enlarged, so that no joint becomes narrower.
 */
function nearest<T>(all: readonly Tried<T>[]): Tried<T> | undefined {
  const cost = ({ restX, restY }: Tried<T>): number => {
    const [least, most] = [Math.log(Math.min(restX, restY)), Math.log(Math.max(restX, restY))];
    return Math.max(most, shrinkingCost * -least);
  };
  return all.reduce<Tried<T> | undefined>((a, b) => (a && cost(a) <= cost(b) ? a : b), undefined);
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
