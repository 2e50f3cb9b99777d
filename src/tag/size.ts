/** Finished sizes: a shape that is grown and sized ends at the size, with the growth in true millimetres. */

import { offset } from '../geometry/clipper.ts';
import type { Corners } from '../geometry/clipper.ts';
import { boundsOf, ringArea } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import type { Outline } from './outline.ts';
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

/** A size is met when it is off by less than this. */
const closeMm = 0.002;

/** A disc adds its diameter to any box, so the first guess is right for round growth; thinning needs a few corrections. */
const rounds = 6;

/** The outline tidied, grown and brought to its size. Empty where nothing is left of it, or no size could do it. */
export function sizeAndGrow(outline: Outline, sizing: Sizing): Solid {
  const { bounds } = outline;
  if (!bounds) return { region: [] };
  const { width, height, grow = 0 } = sizing;
  const natural = { width: bounds.maxX - bounds.minX, height: bounds.maxY - bounds.minY };
  let scaleX = width === undefined ? sizing.scale : (width - 2 * grow) / natural.width;
  let scaleY = height === undefined ? sizing.scale : (height - 2 * grow) / natural.height;
  if (width !== undefined && height === undefined) scaleY = scaleX;
  if (height !== undefined && width === undefined) scaleX = scaleY;
  let solid: Solid = { region: [] };
  for (let round = 0; round < rounds; round++) {
    if (!(scaleX > 0 && scaleY > 0 && Number.isFinite(scaleX) && Number.isFinite(scaleY))) return { region: [] };
    const made = outline.at(scaleX, scaleY);
    const region = offset(tidied(made.region, sizing.tidy), grow, sizing.corners);
    solid = { ...made, region };
    const box = boundsOf(region);
    if (!box || grow === 0) break;
    const lackX = width === undefined ? 0 : width - spanX(box);
    const lackY = height === undefined ? 0 : height - spanY(box);
    if (Math.abs(lackX) < closeMm && Math.abs(lackY) < closeMm) break;
    const stepX = lackX / natural.width;
    const stepY = lackY / natural.height;
    scaleX += width === undefined ? stepY : stepX;
    scaleY += height === undefined ? stepX : stepY;
  }
  return solid;
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
