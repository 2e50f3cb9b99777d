/** What a thread that lays out and whoever asks it say to each other. Regions go as plain numbers, which take no time to hand over. */

import { RegionPacker, unpacker } from '../../geometry/packed-regions.ts';
import type { PackedRegions } from '../../geometry/packed-regions.ts';
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

export function packed({ parts, room, effort, fixed }: NestTask): PackedTask {
  const packer = new RegionPacker();
  // Regions may be made for the asking, hundreds of them, so none is held here.
  const numbers = new WeakMap<Region, number>();
  const numberOf = (region: Region): number => {
    const number = numbers.get(region) ?? packer.add(region);
    numbers.set(region, number);
    return number;
  };
  const own = parts.map(({ region, turns }) => ({ region: numberOf(region), turns }));
  const lying = fixed?.map((regions) => regions.map(numberOf));
  return { room, effort, parts: own, ...(lying ? { fixed: lying } : {}), regions: packer.packed(sharedBytes) };
}

/** Memory that threads read together, where there is such: a message to another thread holds a copy of everything else. */
function sharedBytes(count: number): ArrayBufferLike {
  return typeof SharedArrayBuffer === 'undefined' ? new ArrayBuffer(count) : new SharedArrayBuffer(count);
}

/** Regions are made whenever they are asked for: of hundreds, one at a time is needed as drawn. */
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
