/** Stacks whose members do not run into each other smoothly: a rounded corner pokes out beside its neighbour. */

import { area, boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Check } from './check.ts';
import { mm } from './check.ts';

/** A corner that shows by less is not seen, in mm². */
const seenMm2 = 0.02;

export const shoulderShows: Check = ({ made }) =>
  [...made].flatMap(([shape, { shoulders = [] }]) =>
    shoulders
      .filter(({ region }) => area(region) > seenMm2)
      .map(({ name, region, hidingLap }) => {
        const remedy =
          hidingLap === undefined
            ? 'no lap hides them; make it wider, or its corners sharper'
            : `a lap of ${mm(hidingLap)} hides them`;
        return {
          code: 'shoulder-shows',
          severity: 'warning',
          path: [...shape.path, 'stack'],
          points: [boxCentre(boundsOf(region)!)],
          ...(hidingLap === undefined ? {} : { width: hidingLap }),
          message: `Corners poke out where “${name}” joins the shape before it; ${remedy}.`,
        };
      }),
  );
