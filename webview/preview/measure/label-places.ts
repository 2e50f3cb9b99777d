/**
 * Labels to be placed, and their possible places: at the end of a leader, or on a line of their own. Pure; screen
 * pixels.
 */

import type { Box, Size, XY } from '../../common/camera/viewport.ts';

export type LineSegment = readonly [XY, XY];

interface Common {
  readonly id: string;
  readonly size: Size;
}

/** A label at the end of a leader from the point it is about. */
export interface SpotLabel extends Common {
  readonly at: XY;
  /** Distance from the point to the start of the leader. */
  readonly from: number;
  /** Preferred direction in radians. */
  readonly outwards: number;
  /** Shown in a bad place rather than not at all. */
  readonly isVital: boolean;
  /** Size of the short form, for when there is no room for the full label. */
  readonly least?: Size;
}

/** A label on a line of its own, which is drawn with it. */
export interface LineLabel extends Common {
  readonly places: readonly LinePlace[];
}

export interface LinePlace {
  readonly key: string;
  readonly middle: XY;
  readonly lines: readonly LineSegment[];
  readonly cost: number;
}

const directions = 16;
/** Least distance of a label's centre from its point, and from the start of its leader. */
const nearestPx = 34;
const leaderPx = 16;

/** Costs in pixels of distance: of a radian off the preferred direction, and of moving from the last place. */
const turnCost = 30;
export const moveCost = 45;

export interface Angle {
  readonly angle: number;
  readonly key: string;
  readonly extra: number;
}

/**
 * All directions, the cheapest first. They are the same for all labels, so that a direction keeps its key while
 * everything else moves.
 */
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

/** Along x, the distance counts from the label's nearer end; otherwise a wide label would cover its own point. */
export function boxAt({ at, size: { width, height } }: SpotLabel, angle: number, radius: number): Box {
  const x = at[0] + Math.cos(angle) * (radius + Math.max(width - height, 0) / 2) - width / 2;
  const y = at[1] + Math.sin(angle) * radius - height / 2;
  return [x, y, x + width, y + height];
}

export function boxAbout([x, y]: XY, { width, height }: Size): Box {
  return [x - width / 2, y - height / 2, x + width / 2, y + height / 2];
}

/** From the edge of what the label is about to the nearest point of the label. */
export function leaderTo({ at, from }: SpotLabel, box: Box): LineSegment {
  const to: XY = [clamp(at[0], box[0] + 4, box[2] - 4), clamp(at[1], box[1], box[3])];
  const length = Math.hypot(to[0] - at[0], to[1] - at[1]) || 1;
  const share = Math.min(from / length, 1);
  return [[at[0] + (to[0] - at[0]) * share, at[1] + (to[1] - at[1]) * share], to];
}

function clamp(value: number, min: number, max: number): number {
  return Math.min(Math.max(value, min), max);
}
