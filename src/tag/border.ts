/** Borders: lines along an outline, inset from it, that go round anything cut through the piece. */

import { clippedCorners } from '../geometry/clip-corners.ts';
import { difference, intersection, normalise, offset } from '../geometry/clipper.ts';
import { area, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import { strokeMm, strokesAlong } from '../geometry/strokes.ts';
import type { Line, Region } from '../geometry/types.ts';
import type { BorderGenerator } from '../spec/model.ts';

/** The construction of a border, so that it can be led round openings once they are known. */
export interface Border {
  /** The area inside its outer edge. */
  readonly within: Region;
  /**
   * Its lines as distances in mm from the outer edge of `within` inwards; the two are equal for a line without width.
   */
  readonly lines: readonly { readonly from: number; readonly to: number }[];
  /** Distance kept from openings, in mm. */
  readonly clear: number;
  /** Whether it ends before an opening instead of going round it: lines held by bridges cannot be led elsewhere. */
  readonly ends: boolean;
}

export interface Bordered extends Drawn {
  readonly border: Border;
}

interface Drawn {
  readonly region: Region;
  /** The lines that the beam follows, if they have no width. */
  readonly lines?: readonly Line[];
}

/** The border goes round an opening where a strip beside it is no wider than its lines plus this, in mm. */
const spareMm = 0.1;

/** The border of a shape; empty if there is no room for the lines in it. */
export function borderOf(region: Region, { inset, lines, radius, clip, clear }: BorderGenerator): Bordered {
  const within = withCorners(offset(outersOf(region), -inset, 'miter'), radius, clip);
  const border = clearOf({ within, lines, clear, ends: false }, holesOf(region));
  return { border, ...drawn(border) };
}

/** The border kept clear of anything cut through the piece that it is drawn on. */
export function clearedBorder<T extends Partial<Bordered> & { region: Region }>(solid: T, openings: Region): T {
  const { border } = solid;
  if (!border || openings.length === 0) return solid;
  if (border.ends) return { ...solid, region: difference(solid.region, [offset(openings, border.clear)]) };
  const cleared = clearOf(border, openings);
  return cleared === border ? solid : { ...solid, border: cleared, ...drawn(cleared) };
}

/** The border with its lines as wide as they are after growing. */
export function grownBorder(border: Border, by: number): Border {
  return { ...border, lines: border.lines.map(({ from, to }) => ({ from: from - by, to: to + by })) };
}

/** The border scaled with the shape, lines included. */
export function scaledBorder(border: Border, within: Region, scale: number): Border {
  const lines = border.lines.map(({ from, to }) => ({ from: from * scale, to: to * scale }));
  return { ...border, within, lines, clear: border.clear * scale };
}

function drawn({ within, lines }: Border): Drawn {
  const inside = (by: number): Region => offset(within, -by, 'miter');
  if (lines.every(({ from, to }) => from === to)) {
    const followed = lines.flatMap(({ from }) => inside(from).map((ring): Line => [...ring, ring[0]!]));
    return { region: strokesAlong(followed, strokeMm), lines: followed };
  }
  return { region: lines.flatMap(({ from, to }) => [...difference(inside(from), [inside(to)])]) };
}

function withCorners(within: Region, radius: number, clip: number): Region {
  if (radius > 0) return offset(offset(offset(offset(within, -radius), radius), radius), -radius);
  return clippedCorners(within, clip);
}

/**
 * Leads the border round the openings that its lines would meet. Others do not matter: one in the middle of a plate
 * needs no line round it.
 */
function clearOf(border: Border, openings: Region): Border {
  const kept = offset(outersOf(openings), border.clear);
  const deepest = Math.max(...border.lines.map(({ to }) => to));
  const band = difference(border.within, [offset(border.within, -deepest - spareMm, 'miter')]);
  const met = partsOf(kept).filter((part) => area(intersection(part, band)) > 0);
  if (met.length === 0) return border;
  const within = partsOf(border.within).flatMap((part) => {
    const left = difference(part, met);
    const [largest] = partsOf(outersOf(withoutStraits(left, met.flat(), deepest + spareMm)));
    return largest ? [...largest] : [];
  });
  return { ...border, within };
}

/** The region without the places between an opening and the edge that are too narrow for the lines. */
function withoutStraits(region: Region, beside: Region, width: number): Region {
  const wide = offset(offset(region, -width / 2), width / 2);
  // Corners elsewhere stay as they are.
  return difference(region, [intersection(difference(region, [wide]), offset(beside, width))]);
}

function outersOf(region: Region): Region {
  return normalise(region.filter((ring) => ringArea(ring) > 0));
}

function holesOf(region: Region): Region {
  return normalise(region.filter((ring) => ringArea(ring) < 0).map((ring) => ring.toReversed()));
}
