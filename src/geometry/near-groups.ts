/** Rings sorted into groups that do not touch each other. */

import Flatbush from 'flatbush';
import { boundsOf } from './measure.ts';
import type { Ring } from './types.ts';

/**
 * Groups such that boxes of different groups are more than `reach` mm apart, each in the order of the rings given. A hole
 * lies in the box of its outer ring, so it stays with it. Rings without points are in none.
 */
export function nearGroups(rings: readonly Ring[], reach: number): Ring[][] {
  return nearIndices(rings, reach).map((group) => group.map((index) => rings[index]!));
}

/** As `nearGroups`, by their places in the list. */
export function nearIndices(rings: readonly Ring[], reach: number): number[][] {
  const boxed = rings.flatMap((ring, place) => {
    const box = boundsOf([ring]);
    return box ? [{ place, box }] : [];
  });
  if (boxed.length < 2) return [boxed.map(({ place }) => place)];
  const index = new Flatbush(boxed.length);
  for (const { box } of boxed) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  const groups: number[][] = [];
  const taken = new Set<number>();
  for (let first = 0; first < boxed.length; first++) {
    if (taken.has(first)) continue;
    taken.add(first);
    const members = [first];
    for (const member of members) {
      const { minX, minY, maxX, maxY } = boxed[member]!.box;
      for (const near of index.search(minX - reach, minY - reach, maxX + reach, maxY + reach)) {
        if (taken.has(near)) continue;
        taken.add(near);
        members.push(near);
      }
    }
    groups.push(members.sort((a, b) => a - b).map((member) => boxed[member]!.place));
  }
  return groups;
}
