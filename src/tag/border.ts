/** Borders: lines that run along an outline, set in from it, and round what is cut through the piece. */

import { clippedCorners } from '../geometry/clip-corners.ts';
import { difference, intersection, normalise, offset } from '../geometry/clipper.ts';
import { area, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Region } from '../geometry/types.ts';
import type { BorderGenerator } from '../spec/model.ts';

/** How a border was made, so that it can be led round openings once they are known. */
export interface Border {
  /** What its outer line encloses. */
  readonly within: Region;
  /** Its lines, from the outer edge of `within` inwards, in mm. */
  readonly lines: readonly { readonly from: number; readonly to: number }[];
  /** What it keeps free round openings, in mm. */
  readonly clear: number;
  /** Whether it ends before an opening instead of going round it: what bridges hold cannot be led elsewhere. */
  readonly ends: boolean;
}

export interface Bordered {
  readonly border: Border;
  readonly region: Region;
}

/** What is narrower than the lines of a border and this, in mm, has no room for them: there the border goes round an opening. */
const spareMm = 0.1;

/** The border of a shape; empty where there is no room in it for the lines. */
export function borderOf(region: Region, { inset, lines, radius, clip, clear }: BorderGenerator): Bordered {
  const within = withCorners(offset(outersOf(region), -inset, 'miter'), radius, clip);
  const border = clearOf({ within, lines, clear, ends: false }, holesOf(region));
  return { border, region: drawn(border) };
}

/** The border where it keeps clear of what is cut through the piece that it is drawn on. */
export function clearedBorder<T extends Partial<Bordered> & { region: Region }>(solid: T, openings: Region): T {
  const { border } = solid;
  if (!border || openings.length === 0) return solid;
  if (border.ends) return { ...solid, region: difference(solid.region, [offset(openings, border.clear)]) };
  const cleared = clearOf(border, openings);
  return cleared === border ? solid : { ...solid, border: cleared, region: drawn(cleared) };
}

/** As thick as its lines are once they have grown. */
export function grownBorder(border: Border, by: number): Border {
  return { ...border, lines: border.lines.map(({ from, to }) => ({ from: from - by, to: to + by })) };
}

/** Scaled with the shape: lines grow with it. */
export function scaledBorder(border: Border, within: Region, scale: number): Border {
  const lines = border.lines.map(({ from, to }) => ({ from: from * scale, to: to * scale }));
  return { ...border, within, lines, clear: border.clear * scale };
}

function drawn({ within, lines }: Border): Region {
  return lines.flatMap(({ from, to }) => [
    ...difference(offset(within, -from, 'miter'), [offset(within, -to, 'miter')]),
  ]);
}

function withCorners(within: Region, radius: number, clip: number): Region {
  if (radius > 0) return offset(offset(offset(offset(within, -radius), radius), radius), -radius);
  return clippedCorners(within, clip);
}

/** Only the openings that the lines would meet push them aside: one in the middle of a plate needs no line round it. */
function clearOf(border: Border, openings: Region): Border {
  const kept = offset(outersOf(openings), border.clear);
  const deepest = Math.max(...border.lines.map(({ to }) => to));
  const band = difference(border.within, [offset(border.within, -deepest, 'miter')]);
  const met = partsOf(kept).filter((part) => area(intersection(part, band)) > 0);
  if (met.length === 0) return border;
  const within = partsOf(border.within).flatMap((part) => {
    const left = difference(part, met);
    const [largest] = partsOf(outersOf(withoutStraits(left, met.flat(), deepest + spareMm)));
    return largest ? [...largest] : [];
  });
  return { ...border, within };
}

/** Without what is too narrow for the lines between an opening and the edge. */
function withoutStraits(region: Region, beside: Region, width: number): Region {
  const wide = offset(offset(region, -width / 2), width / 2);
  const near = offset(beside, spareMm);
  const straits = partsOf(difference(region, [wide])).filter((part) => area(intersection(part, near)) > 0);
  return straits.length > 0 ? difference(region, straits) : region;
}

function outersOf(region: Region): Region {
  return normalise(region.filter((ring) => ringArea(ring) > 0));
}

function holesOf(region: Region): Region {
  return normalise(region.filter((ring) => ringArea(ring) < 0).map((ring) => ring.toReversed()));
}
