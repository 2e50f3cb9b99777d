/** Shapes that are centred by their boxes but still look off-centre. */

import { boundsOf } from '../geometry/measure.ts';
import type { Finding } from '../core/issue.ts';
import type { Shape } from '../spec/shape-model.ts';
import { centreOf } from '../tag/made-shape.ts';
import type { MadeShape } from '../tag/made-shape.ts';
import type { Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { mm } from '../core/figures.ts';

/** Visible offset: this many mm, or this share of the smaller side of the target (our own judgement). */
const seenMm = 0.5;
const seenShare = 0.02;

export const offCentre: Check = ({ made }) =>
  [...made].flatMap(([shape, madeShape]) => visiblyOff(shape, madeShape, made));

function visiblyOff({ modifiers, path }: Shape, placedShape: MadeShape, made: Tag['made']): Finding[] {
  const { place } = modifiers;
  // A shape that is nudged or placed by another rule is where its maker wants it.
  if (place?.by !== 'box' || place.at !== 'center' || modifiers.nudge) return [];
  const target = made.get(place.shape);
  const region = place.part === undefined ? target?.region : target?.parts?.get(place.part);
  const box = region && boundsOf(region);
  const goal = region && centreOf({ region }, 'eye');
  const seen = centreOf(placedShape, 'eye');
  if (!box || !goal || !seen) return [];
  const least = Math.max(seenMm, seenShare * Math.min(box.maxX - box.minX, box.maxY - box.minY));
  const across = seen.x - goal.x;
  const up = seen.y - goal.y;
  const off = [
    ...(Math.abs(across) < least ? [] : [`${mm(Math.abs(across))} too far ${across < 0 ? 'left' : 'right'}`]),
    ...(Math.abs(up) < least ? [] : [`${mm(Math.abs(up))} too ${up < 0 ? 'low' : 'high'}`]),
  ];
  if (off.length === 0) return [];
  return [
    {
      code: 'off-centre',
      severity: 'info',
      path: [...path, 'place'],
      points: [seen],
      message: `Centred by its box, this looks ${off.join(' and ')}; “by: eye” corrects it.`,
    },
  ];
}
