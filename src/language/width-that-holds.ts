/** A width at which words longer than those of a sample are as sound as its own were. */

import type { Report } from '../engine/engine.ts';
import { boundsOf } from '../geometry/measure.ts';
import { mmPer, type Units } from '../core/units.ts';

/** Tags that are wider still are no longer those that were asked for; our own judgement. */
const triedTimes = [1.2, 1.4, 1.6, 1.8, 2];
/** Words that are no longer than those of the sample are hardly worth more: it is their strokes that are thin. Our own judgement. */
const leastTimes = 1.4;

/** How many times as wide as its sample a tag may be for words that are so many times as long. */
export function mostTimesFor(longer: number): number {
  return Math.max(leastTimes, longer);
}

/** Round figures. */
const steps: Readonly<Record<Units, number>> = { mm: 5, in: 0.25 };

/** Nothing to warn of, but for loose parts: what holds those is a question of its own. */
export function isSound({ tag, issues }: Report): boolean {
  return tag !== undefined && issues.every(({ code, severity }) => severity === 'info' || code === 'loose-part');
}

/** `report`: of the tag as it is; `most`: how many times as wide it may be. `undefined` if it is in several pieces, or no width will do. */
export async function widthThatHolds(
  { tag }: Report,
  compute: (width: string) => Promise<Report>,
  units: Units,
  most = Infinity,
): Promise<string | undefined> {
  const [only, ...more] = tag?.pieces ?? [];
  const bounds = boundsOf(only?.region ?? []);
  if (!bounds || more.length > 0) return undefined;
  const step = steps[units];
  const now = (bounds.maxX - bounds.minX) / mmPer[units];
  for (const times of triedTimes.filter((each) => each <= most)) {
    const width = `${step * Math.ceil((times * now) / step)} ${units}`;
    if (isSound(await compute(width))) return width;
  }
  return undefined;
}
