/** Pieces that do not fit the sheet, however they are turned. */

import { hullOf } from '../geometry/hull.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Point, Region } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { Check } from './check.ts';
import { mmByMm } from '../core/figures.ts';

interface UsableArea {
  readonly width: number;
  readonly height: number;
}

/** Touching the margin is not a fault, nor is the last hundredth of a millimetre. */
const slackMm = 0.01;

/** A slanting position may be overlooked if it leaves less play than this, in mm. */
const playMm = 0.05;

export const exceedsSheet: Check = ({ sheet, stock, pieces }) => {
  if (!sheet) return [];
  const room = { width: sheet.width - 2 * sheet.margin, height: sheet.height - 2 * sheet.margin };
  // The beam runs half a kerf outside the piece on every side.
  const free = { width: room.width - stock.kerf + slackMm, height: room.height - stock.kerf + slackMm };
  return pieces.flatMap(({ id, title, region, path }): Finding[] => {
    const box = boundsOf(region);
    if (!box || fitsSheet(region, box, free)) return [];
    const neededSize = sizeText({ width: box.maxX - box.minX + stock.kerf, height: box.maxY - box.minY + stock.kerf });
    return [
      {
        code: 'exceeds-sheet',
        severity: 'error',
        piece: id,
        path,
        message: `“${title}” does not fit the sheet in any rotation: ${stock.kerf > 0 ? 'with the kerf it' : 'it'} needs ${neededSize}, and there is room for ${sizeText(room)}.`,
      },
    ];
  });
};

function sizeText({ width, height }: UsableArea): string {
  return mmByMm(width, height);
}

function fitsSheet(region: Region, box: Bounds, free: UsableArea): boolean {
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  if (width <= free.width && height <= free.height) return true;
  if (height <= free.width && width <= free.height) return true;
  return fitsTurned(region, free);
}

/** Whether the piece fits at any angle. Tried only if it does not fit as it lies. */
function fitsTurned(region: Region, free: UsableArea): boolean {
  const known = turned.get(region);
  if (known?.width === free.width && known.height === free.height) return known.fits;
  const box = boundsOf(region)!;
  const reach = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  // No other corners ever touch an edge of the sheet.
  const hull = hullOf(region.flat());
  const result = fitsFlush(hull, free) || fitsWithin(hull, free, reach, 0, Math.PI);
  turned.set(region, { ...free, fits: result });
  return result;
}

const turned = new WeakMap<Region, UsableArea & { readonly fits: boolean }>();

/** Whether it fits with one of its sides along a side of the sheet, as it must if it fits without any play. */
function fitsFlush(hull: readonly Point[], free: UsableArea): boolean {
  return hull.some((from, index) => {
    const to = hull[(index + 1) % hull.length]!;
    const angle = Math.atan2(to.y - from.y, to.x - from.x);
    return excessAt(hull, free, angle) <= 0 || excessAt(hull, free, angle + Math.PI / 2) <= 0;
  });
}

/**
 * Whether it fits at an angle between two. No span of the piece changes by more than its `reach` per radian, so a
 * misfit larger than half the range can make up for rules out the whole range.
 */
function fitsWithin(points: readonly Point[], free: UsableArea, reach: number, from: number, to: number): boolean {
  const middle = (from + to) / 2;
  const missing = excessAt(points, free, middle);
  if (missing <= 0) return true;
  const change = (reach * (to - from)) / 2;
  if (missing > change || change < playMm) return false;
  return fitsWithin(points, free, reach, from, middle) || fitsWithin(points, free, reach, middle, to);
}

/** Excess of the points' box over the room when turned by this angle, in mm; negative if it fits. */
function excessAt(points: readonly Point[], free: UsableArea, angle: number): number {
  return Math.max(extentAt(points, angle) - free.width, extentAt(points, angle + Math.PI / 2) - free.height);
}

/** Extent of the points in a direction. */
function extentAt(points: readonly Point[], angle: number): number {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  let low = Infinity;
  let high = -Infinity;
  for (const { x, y } of points) {
    const along = x * cos + y * sin;
    if (along < low) low = along;
    if (along > high) high = along;
  }
  return high - low;
}
