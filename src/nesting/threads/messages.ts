/** What a thread that lays out and whoever asks it say to each other. Regions go as plain numbers, which take no time to hand over. */

import type { Region } from '../../geometry/types.ts';
import type { NestTask } from '../best-of.ts';
import type { Layout, PartToNest, SheetRoom } from '../layout.ts';

export type ToThread =
  | { readonly type: 'search'; readonly task: PackedTask; readonly seed: number; readonly tells: boolean }
  | { readonly type: 'stop' };

export type FromThread =
  | { readonly type: 'better' | 'done'; readonly layout: Layout }
  | { readonly type: 'stopped' }
  | { readonly type: 'fault'; readonly message: string };

/** Regions that are the same object are there once. */
interface PackedTask {
  readonly room: SheetRoom;
  readonly effort: number;
  readonly regions: PackedRegions;
  readonly parts: readonly { readonly region: number; readonly turns: PartToNest['turns'] }[];
  readonly fixed?: readonly (readonly number[])[];
}

interface PackedRegions {
  /** x and y of every point of every ring. */
  readonly points: Float64Array;
  /** How many points each ring has, and how many rings each region. */
  readonly rings: Uint32Array;
  readonly regions: Uint32Array;
}

export function packed({ parts, room, effort, fixed }: NestTask): PackedTask {
  const numbers = new Map<Region, number>();
  const numberOf = (region: Region): number => {
    const number = numbers.get(region) ?? numbers.size;
    numbers.set(region, number);
    return number;
  };
  const own = parts.map(({ region, turns }) => ({ region: numberOf(region), turns }));
  const lying = fixed?.map((regions) => regions.map(numberOf));
  return { room, effort, parts: own, ...(lying ? { fixed: lying } : {}), regions: packedRegions([...numbers.keys()]) };
}

/**
 * Regions are unpacked when they are asked for, and kept only as long as somebody holds them: of hundreds, one at a time
 * is needed as drawn.
 */
export function unpacked({ parts, room, effort, fixed, regions }: PackedTask): NestTask {
  const unpack = unpacker(regions);
  return {
    room,
    effort,
    parts: parts.map(({ region, turns }) => ({
      get region() {
        return unpack(region);
      },
      turns,
    })),
    ...(fixed ? { fixed: fixed.map((numbers) => numbers.map(unpack)) } : {}),
  };
}

function packedRegions(regions: readonly Region[]): PackedRegions {
  const rings = regions.flat();
  const points = new Float64Array(2 * rings.reduce((sum, ring) => sum + ring.length, 0));
  let at = 0;
  for (const ring of rings) {
    for (const { x, y } of ring) {
      points[at++] = x;
      points[at++] = y;
    }
  }
  return {
    points,
    rings: Uint32Array.from(rings, (ring) => ring.length),
    regions: Uint32Array.from(regions, (region) => region.length),
  };
}

function unpacker({ points, rings, regions }: PackedRegions): (number: number) => Region {
  const firstRing = starts(regions);
  const firstPoint = starts(rings);
  const known = new Map<number, WeakRef<Region>>();
  return (number) => {
    const held = known.get(number)?.deref();
    if (held) return held;
    const region = Array.from(rings.subarray(firstRing[number], firstRing[number + 1]), (length, index) => {
      const from = firstPoint[firstRing[number]! + index]!;
      return Array.from({ length }, (_, i) => ({ x: points[2 * (from + i)]!, y: points[2 * (from + i) + 1]! }));
    });
    known.set(number, new WeakRef(region));
    return region;
  };
}

/** Where each of some lengths laid end to end begins, and where the last ends. */
function starts(lengths: Uint32Array): Uint32Array {
  const all = new Uint32Array(lengths.length + 1);
  lengths.forEach((length, index) => (all[index + 1] = all[index]! + length));
  return all;
}
