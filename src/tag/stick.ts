/** Sticks that carry a shape: as deep in its material as it takes to hold, and blunt at the end. */

import { rotation, transform } from '../geometry/affine.ts';
import { intersection } from '../geometry/clipper.ts';
import { area, boundsOf, centroid } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { StickGenerator } from '../spec/shape-model.ts';

/** A point narrower than this, in mm, breaks off and pricks; our own judgement. */
const bluntMm = 1.5;

/** Tolerance of a stick's depth, in mm. */
const depthToleranceMm = 0.005;

/** Clockwise rotation that makes each direction point down, in degrees. */
const turns = { down: 0, right: 90, up: 180, left: -90 } as const;

/** The stick in the coordinates of what it carries; empty if it would not meet it. */
export function stickOf(carried: Region, { towards, ...stick }: Omit<StickGenerator, 'shape'>): Region {
  const about = { x: 0, y: 0 };
  const upright = downwards(transform(carried, rotation(turns[towards], about)), stick);
  return transform(upright, rotation(-turns[towards], about));
}

function downwards(carried: Region, { length, width, point, lap }: Omit<StickGenerator, 'shape' | 'towards'>): Region {
  const balance = centroid(carried);
  const bounds = boundsOf(carried);
  if (!balance || !bounds) return [];
  const [left, right] = [balance.x - width / 2, balance.x + width / 2];
  const upTo = (top: number): Region => [
    [
      { x: left, y: bounds.minY - 1 },
      { x: right, y: bounds.minY - 1 },
      { x: right, y: top },
      { x: left, y: top },
    ],
  ];
  const met = intersection(carried, upTo(bounds.maxY + 1));
  const material = boundsOf(met);
  if (!material) return [];
  // The deeper it goes the more material it meets, so its depth is found by bisection.
  let [low, high] = [material.minY, material.maxY];
  while (high - low > depthToleranceMm) {
    const middle = (low + high) / 2;
    if (area(intersection(met, upTo(middle))) < lap * width) low = middle;
    else high = middle;
  }
  const end = bounds.minY - length;
  const blunt = Math.min(bluntMm, width) / 2;
  const tip =
    point > 0
      ? [
          { x: left, y: end + point },
          { x: balance.x - blunt, y: end },
          { x: balance.x + blunt, y: end },
          { x: right, y: end + point },
        ]
      : [
          { x: left, y: end },
          { x: right, y: end },
        ];
  return [[...tip, { x: right, y: high }, { x: left, y: high }]];
}
