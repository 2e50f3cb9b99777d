/** Labels to be placed, and the places they could have: at the end of a leader, or on a line of their own. Pure; screen pixels. */

import type { Box, Size, XY } from '../../common/camera/viewport.ts';

export type Line = readonly [XY, XY];

interface Common {
  readonly id: string;
  readonly size: Size;
}

/** Stands off the point it is about, at the end of a leader. */
export interface SpotLabel extends Common {
  readonly at: XY;
  /** How far from the point the leader begins. */
  readonly from: number;
  /** The direction to go in where there is room, in radians. */
  readonly outwards: number;
  /** Rather in a bad place than nowhere. */
  readonly isVital: boolean;
  /** How large it is if it says less, for where there is no room for all of it. */
  readonly least?: Size;
}

/** Stands on a line of its own, which is drawn wherever it is. */
export interface LineLabel extends Common {
  readonly places: readonly LinePlace[];
}

export interface LinePlace {
  readonly key: string;
  readonly middle: XY;
  readonly lines: readonly Line[];
  readonly cost: number;
}

const directions = 16;
/** The middle of a label is at least so far from the point it is about, and from where the leader begins. */
const nearestPx = 34;
const leaderPx = 16;

/** What is worse than being a pixel further away, for a radian off the way outwards and for standing elsewhere than last. */
const turnCost = 30;
export const moveCost = 45;

export interface Angle {
  readonly angle: number;
  readonly key: string;
  readonly extra: number;
}

/** All directions, the cheapest first. They hold for all labels alike, so that a direction stays one while all else moves. */
export function anglesOf({ outwards }: SpotLabel, last: string | undefined): Angle[] {
  return Array.from({ length: directions }, (_, nth) => {
    const angle = (nth * 2 * Math.PI) / directions;
    const off = Math.abs(angle - outwards) % (2 * Math.PI);
    const turn = Math.min(off, 2 * Math.PI - off);
    return { angle, key: `${nth}`, extra: turnCost * turn + (`${nth}` === last ? 0 : moveCost) };
  }).sort((a, b) => a.extra - b.extra);
}

export function nearestTo({ from }: SpotLabel): number {
  return Math.max(nearestPx, from + leaderPx);
}

/** Along x the distance counts from the label's nearer end, or a wide label would lie on its own spot. */
export function boxAt({ at, size: { width, height } }: SpotLabel, angle: number, radius: number): Box {
  const x = at[0] + Math.cos(angle) * (radius + Math.max(width - height, 0) / 2) - width / 2;
  const y = at[1] + Math.sin(angle) * radius - height / 2;
  return [x, y, x + width, y + height];
}

export function boxAbout([x, y]: XY, { width, height }: Size): Box {
  return [x - width / 2, y - height / 2, x + width / 2, y + height / 2];
}

/** From the edge of what the label is about to the nearest point of the label. */
export function leaderTo({ at, from }: SpotLabel, box: Box): Line {
  const to: XY = [clamped(at[0], box[0] + 4, box[2] - 4), clamped(at[1], box[1], box[3])];
  const length = Math.hypot(to[0] - at[0], to[1] - at[1]) || 1;
  const share = Math.min(from / length, 1);
  return [[at[0] + (to[0] - at[0]) * share, at[1] + (to[1] - at[1]) * share], to];
}

function clamped(value: number, min: number, max: number): number {
  return Math.min(Math.max(value, min), max);
}
