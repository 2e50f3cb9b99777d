/** Rings and regions sorted into groups that do not touch each other. */

import Flatbush from 'flatbush';
import { boundsOf, widened } from './measure.ts';
import type { Bounds, Region, Ring } from './types.ts';

/**
 * Rings grouped so that the boxes of different groups are more than `reach` mm apart; each group keeps the given order.
 * A hole lies in the box of its outer ring, so it stays with it.
 */
export function nearGroups(rings: readonly Ring[], reach: number): Ring[][] {
  return groupedByBox(rings, (ring) => [ring], reach);
}

/** The same for regions; those of different groups have nothing in common. */
export function nearRegions(regions: readonly Region[], reach: number): Region[][] {
  return groupedByBox(regions, (region) => region, reach);
}

/** The same for anything that consists of rings. */
export function groupedByBox<T>(all: readonly T[], ringsOf: (each: T) => readonly Ring[], reach: number): T[][] {
  const boxes = all.map((each) => boundsOf(ringsOf(each)));
  const nonEmpty = all.filter((_, index) => boxes[index]);
  if (nonEmpty.length < 2) return [nonEmpty];
  const nearTo = searchOf(
    boxes.filter((box) => box !== undefined),
    reach,
  );
  const groups: T[][] = [];
  const taken = new Set<number>();
  for (let first = 0; first < nonEmpty.length; first++) {
    if (taken.has(first)) continue;
    taken.add(first);
    const members = [first];
    for (const member of members) {
      for (const near of nearTo(member)) {
        if (taken.has(near)) continue;
        taken.add(near);
        members.push(near);
      }
    }
    groups.push(members.sort((a, b) => a - b).map((member) => nonEmpty[member]!));
  }
  return groups;
}

/** Up to as many boxes are compared one by one sooner than an index is made of them. */
const few = 32;

/** Finds the boxes within `reach` of one of them, itself included. */
function searchOf(boxes: readonly Bounds[], reach: number): (box: number) => readonly number[] {
  if (boxes.length > few) {
    const index = new Flatbush(boxes.length);
    for (const { minX, minY, maxX, maxY } of boxes) index.add(minX, minY, maxX, maxY);
    index.finish();
    return (box) => {
      const { minX, minY, maxX, maxY } = boxes[box]!;
      return index.search(minX - reach, minY - reach, maxX + reach, maxY + reach);
    };
  }
  return (box) => {
    const { minX, minY, maxX, maxY } = widened(boxes[box]!, reach);
    const found: number[] = [];
    for (const [other, each] of boxes.entries())
      if (each.minX <= maxX && each.maxX >= minX && each.minY <= maxY && each.maxY >= minY) found.push(other);
    return found;
  };
}
