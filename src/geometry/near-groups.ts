/** Rings and regions sorted into groups that do not touch each other. */

import Flatbush from 'flatbush';
import { boundsOf } from './measure.ts';
import type { Region, Ring } from './types.ts';

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
  const index = new Flatbush(nonEmpty.length);
  const known = boxes.filter((box) => box !== undefined);
  for (const { minX, minY, maxX, maxY } of known) index.add(minX, minY, maxX, maxY);
  index.finish();
  const groups: T[][] = [];
  const taken = new Set<number>();
  for (let first = 0; first < nonEmpty.length; first++) {
    if (taken.has(first)) continue;
    taken.add(first);
    const members = [first];
    for (const member of members) {
      const { minX, minY, maxX, maxY } = known[member]!;
      for (const near of index.search(minX - reach, minY - reach, maxX + reach, maxY + reach)) {
        if (taken.has(near)) continue;
        taken.add(near);
        members.push(near);
      }
    }
    groups.push(members.sort((a, b) => a - b).map((member) => nonEmpty[member]!));
  }
  return groups;
}
