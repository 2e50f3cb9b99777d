/** Stacks whose members do not run into each other smoothly: a rounded corner shows beside its neighbour. */

import { innerPoint } from '../geometry/inner-point.ts';
import { area } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Finding } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Shoulder } from '../tag/made-shape.ts';
import { seenNickMm2 } from '../tag/shapes/stack-nicks.ts';
import type { Check } from './check.ts';
import { mm } from '../core/figures.ts';

/**
 * A notch smaller than this, in mm², is not noticed (our own judgement): one beside a corner of radius r that is lapped
 * by d less than that measures about d³/6r, so 5 mm corners may show by a millimetre, where they have hardly begun to
 * turn.
 */
const seenMm2 = seenNickMm2;

export const shoulderShows: Check = ({ made }) =>
  [...made].flatMap(([shape, { shoulders }]) =>
    // A copy has the shoulders of its stack, which has reported them.
    shape.generator.kind === 'stack' && shoulders
      ? shoulders.flatMap((shoulder) => shoulderFindings(shoulder, shape))
      : [],
  );

function shoulderFindings({ name, region, hidingLap, losesEnds }: Shoulder, { path }: Shape): Finding[] {
  const [largest] = partsOf(region);
  if (!largest || area(largest) < seenMm2) return [];
  if (losesEnds) {
    return [
      {
        code: 'shoulder-shows',
        severity: 'info',
        path: [...path, 'stack'],
        points: [innerPoint(largest[0]!)],
        message: `“${name}” and the shape before it run into each other, and what stands out on that side of both is lost. A shape between the two keeps it, such as a post.`,
      },
    ];
  }
  const remedy =
    hidingLap === undefined
      ? 'no lap hides them; make one of the two wider, or its corners sharper'
      : `a lap of ${mm(hidingLap)} hides them`;
  return [
    {
      code: 'shoulder-shows',
      severity: 'warning',
      path: [...path, 'stack'],
      points: [innerPoint(largest[0]!)],
      ...(hidingLap === undefined ? {} : { width: hidingLap }),
      message: `Corners poke out where “${name}” joins the shape before it; ${remedy}.`,
    },
  ];
}
