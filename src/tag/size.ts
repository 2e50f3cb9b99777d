/** Finished sizes: a shape that is grown and sized ends at the size, with the growth in true millimetres. */

import { scaling } from '../geometry/affine.ts';
import { offset } from '../geometry/clipper.ts';
import type { Corners } from '../geometry/clipper.ts';
import { boundsOf, boxCentre, ringArea } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import type { Outline } from './outline.ts';
import { mapSolid } from './solid.ts';
import type { Solid } from './solid.ts';

export interface Sizing {
  /** Natural size to this one, where no width or height is asked for. */
  readonly scale: number;
  readonly tidy?: number | undefined;
  readonly grow?: number | undefined;
  readonly corners: Corners;
  readonly width?: number | undefined;
  readonly height?: number | undefined;
}

/** What a size is off by at the most before the shape is made again; what is left is stretched away, a thousandth or two. */
const closeMm = 0.05;

/** A disc adds its diameter to any box, so the first guess is right for round growth; thinning needs a few corrections. */
const rounds = 6;

/**
 * The outline tidied, grown and brought to its size. Empty where nothing is left of it, or no size could do it. Letters that
 * slide have their size before they are grown.
 */
export function sizeAndGrow(outline: Outline, sizing: Sizing): Solid {
  const { bounds, slides = false } = outline;
  if (!bounds) return { region: [] };
  const { width, height, grow = 0 } = sizing;
  const taken = slides ? 0 : grow;
  const natural = { width: bounds.maxX - bounds.minX, height: bounds.maxY - bounds.minY };
  let scaleX = width === undefined ? sizing.scale : (width - 2 * taken) / natural.width;
  let scaleY = height === undefined ? sizing.scale : (height - 2 * taken) / natural.height;
  if (width !== undefined && height === undefined) scaleY = scaleX;
  if (height !== undefined && width === undefined) scaleX = scaleY;
  let solid: Solid = { region: [] };
  for (let round = 0; round < rounds; round++) {
    if (!(scaleX > 0 && scaleY > 0 && Number.isFinite(scaleX) && Number.isFinite(scaleY))) return { region: [] };
    const made = outline.at(scaleX, scaleY);
    const plain = tidied(made.region, sizing.tidy);
    const region = slides ? plain : offset(plain, grow, sizing.corners);
    solid = { ...made, region, ...(slides ? {} : grownLettering(made, sizing)) };
    const box = boundsOf(region);
    if (!box || (grow === 0 && !slides)) break;
    let lackX = width === undefined ? 0 : width - spanX(box);
    let lackY = height === undefined ? 0 : height - spanY(box);
    if (width === undefined) lackX = (lackY * spanX(box)) / spanY(box);
    if (height === undefined) lackY = (lackX * spanY(box)) / spanX(box);
    if (Math.abs(lackX) < closeMm && Math.abs(lackY) < closeMm) {
      const stretch = scaling(1 + lackX / spanX(box), 1 + lackY / spanY(box), boxCentre(box));
      // What no size is asked of stays as it is, to the bit.
      solid = lackX === 0 && lackY === 0 && slides ? solid : mapSolid(solid, stretch);
      break;
    }
    scaleX += slides ? (scaleX * lackX) / spanX(box) : lackX / natural.width;
    scaleY += slides ? (scaleY * lackY) / spanY(box) : lackY / natural.height;
  }
  if (!slides) return solid;
  return { ...solid, region: offset(solid.region, grow, sizing.corners), ...grownLettering(solid, sizing) };
}

function grownLettering({ lettering }: Solid, { grow = 0, corners }: Sizing): Pick<Solid, 'lettering'> {
  return lettering ? { lettering: lettering.map((each) => each.grown(grow, corners)) } : {};
}

function spanX(box: Bounds): number {
  return box.maxX - box.minX;
}

function spanY(box: Bounds): number {
  return box.maxY - box.minY;
}

/** Without islands and holes that are less than `least` across either way. */
export function tidied(region: Region, least: number | undefined): Region {
  if (!least) return region;
  return region.filter((ring) => {
    const box = boundsOf([ring]);
    return box && Math.abs(ringArea(ring)) > 0 && Math.max(spanX(box), spanY(box)) >= least;
  });
}
