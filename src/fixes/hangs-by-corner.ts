/** Says of a change that the tag hangs by a corner afterwards, where it hung level or upright. */

import { suspensionsOf } from '../checks/hangs-askew.ts';
import type { Suspension } from '../checks/hangs-askew.ts';
import type { Report } from '../engine/engine.ts';
import { seenTilt } from '../tag/hanger/direction.ts';

/** Where a side is meant, such a tilt would be reported as one. */
export function hangsByCorner(before: Report, after: Report): string[] {
  const known = suspensionsOf(before.tag?.pieces ?? []);
  const turns = suspensionsOf(after.tag?.pieces ?? []).some((is) => {
    const was = known.find(({ piece }) => piece === is.piece);
    return was !== undefined && offSide(is) > seenTilt && offSide(was) <= seenTilt;
  });
  return turns ? ['hangs by a corner'] : [];
}

/** How far it is turned from hanging by one of its sides, in degrees; 0 by several hangers. */
function offSide({ hangers, balance }: Suspension): number {
  const [only, second] = hangers;
  if (!only || second) return 0;
  const angle = (Math.atan2(only.centre.x - balance.x, only.centre.y - balance.y) * 180) / Math.PI;
  return Math.abs(angle - 90 * Math.round(angle / 90));
}
