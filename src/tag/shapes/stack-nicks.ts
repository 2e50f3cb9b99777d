/** Nicks beside the joint of two members of a stack that are as wide as each other. */

import { difference, intersection, union } from '../../geometry/clipper.ts';
import { hullOf } from '../../geometry/hull.ts';
import { area, boundsOf, boxRing } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import { abuttedRegion, isVertical, sharpEndMm } from './stack-ends.ts';
import type { StackDirection } from './stack-ends.ts';
import { endSeen } from './stack-joint.ts';

/** Laps that are tried for the least nick, and how small one is that nobody notices, in mm² (our own judgement). */
const tried = 32;
const unseenMm2 = 0.02;

/** From here on one is told of a nick, in mm² (our own judgement). */
export const seenNickMm2 = 0.05;

interface NickedLap {
  readonly lap: number;
  /** Area of the larger nick, in mm². */
  readonly nick: number;
}

/** The lap, unless there are nicks beside it that another hides better. */
export function leastNickedLap(previous: Region, next: Region, towards: StackDirection, lap: number): NickedLap {
  const nickAt = (by: number): number =>
    Math.max(
      0,
      ...partsOf(nicksBetween(previous, abuttedRegion(next, boundsOf(previous), towards, by), towards)).map(area),
    );
  let [least, found] = [nickAt(lap), lap];
  for (let step = 1; step < tried && least > unseenMm2; step++) {
    const by = lap * (1 - step / tried);
    const nick = nickAt(by);
    if (nick < least) [least, found] = [nick, by];
  }
  return { lap: found, nick: least };
}

/** Two members are as wide as each other within this share: beyond that, the eye takes the step for meant (our own judgement). */
const evenShare = 0.02;

/** How far beside the joint its outline is looked at, in mm. */
const besideJointMm = 1;

/**
 * The nicks between two members of one width where the corners of the first round away and the sides of the second lean in at once, as those of a
 * point do: however far they lap, each leaves a hollow beside the other.
 */
export function nicksBetween(previous: Region, next: Region, towards: StackDirection): Region {
  const [a, b] = [boundsOf(previous)!, boundsOf(next)!];
  const span = ({ minX, maxX, minY, maxY }: Bounds) => (isVertical(towards) ? maxX - minX : maxY - minY);
  if (Math.abs(span(a) - span(b)) > evenShare * span(a)) return [];
  if (endSeen(previous, towards).depth < 2 * sharpEndMm) return [];
  const zone = {
    down: { minY: a.minY, maxY: b.maxY },
    up: { minY: b.minY, maxY: a.maxY },
    right: { minX: b.minX, maxX: a.maxX },
    left: { minX: a.minX, maxX: b.maxX },
  }[towards];
  const box = {
    minX: Math.min(a.minX, b.minX),
    maxX: Math.max(a.maxX, b.maxX),
    minY: Math.min(a.minY, b.minY),
    maxY: Math.max(a.maxY, b.maxY),
    ...zone,
  };
  const along = isVertical(towards)
    ? { minY: box.minY - besideJointMm, maxY: box.maxY + besideJointMm }
    : { minX: box.minX - besideJointMm, maxX: box.maxX + besideJointMm };
  const joint = intersection(union([previous, next]), [boxRing({ ...box, ...along })]);
  return joint.length > 0 ? difference([hullOf(joint.flat())], [joint]) : [];
}
