/**
 * How many parts a sheet can hold at the most, and how low: by the largest upright box that every part has in it. A lattice with meshes a little smaller
 * than that box has a node within each box, and as many nodes on a sheet as go beside each other times as many as go above each other
 * (a dual bound, as known from rectangles in bins).
 */

import type { BinSize } from '../layout.ts';
import type { PartToPlace } from '../partial-layout.ts';
import type { NestShape } from '../shapes.ts';

/** Of more different shapes the box that all have is smaller than most, and finding it takes its time. */
const mostShapes = 8;
/** Rounding of lengths, in mm. */
const roundingMm = 1e-4;
/** Corners of outlines are round by half a gap, so that boxes within them are smaller by this share of the gap than parts lie apart. */
const roundShare = 1 - Math.SQRT1_2;

export interface BoxBound {
  /** Parts on one sheet. */
  readonly most: number;
  /** Height of a strip with so many parts that a lower one is not worth looking for: what is lower by could be rounding of corners alone. */
  readonly lowEnough: (count: number) => number;
}

/** `undefined` where no box says anything: for parts that may lie across, and for too many shapes. */
export function boxBound(
  candidates: readonly PartToPlace[],
  shapes: readonly (NestShape | undefined)[],
  { width, height, gap }: BinSize,
): BoxBound | undefined {
  const turns = new Set(candidates.flatMap(({ orientations }) => orientations.map(({ turn }) => turn % 2)));
  const different = new Set(candidates.map(({ part }) => shapes[part]!));
  if (turns.size !== 1 || different.size > mostShapes) return undefined;
  let [across, up] = [Infinity, Infinity];
  for (const shape of different) {
    const box = shape.boxWithin;
    const [own, other] = turns.has(1) ? [box.height, box.width] : [box.width, box.height];
    [across, up] = [Math.min(across, own), Math.min(up, other)];
  }
  if (!(across > 0 && up > 0)) return undefined;
  // Outlines reach half a gap beyond the sheet less its margins.
  const beside = Math.floor((width + gap + roundingMm) / across);
  const above = Math.floor((height + gap + roundingMm) / up);
  return {
    most: beside * above,
    lowEnough: (count) => {
      const rows = Math.ceil(count / Math.max(1, beside));
      return rows * (up + roundShare * gap) - gap + roundingMm;
    },
  };
}
