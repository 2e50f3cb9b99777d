/** Regions as plain numbers: a fifth of the memory of points, and handed to another thread in no time. */

import type { Region } from './types.ts';

export interface PackedRegions {
  /** x and y of every point of every ring. */
  readonly points: Float64Array;
  /** How many points each ring has, and how many rings each region. */
  readonly rings: Uint32Array;
  readonly regions: Uint32Array;
}

/** A region of which the points are made whenever they are asked for, each time anew. */
export function keptPacked(region: Region): { readonly region: Region } {
  const packer = new RegionPacker();
  packer.add(region);
  const packed = packer.packed();
  return {
    get region() {
      return regionFrom(packed.points, packed.rings);
    },
  };
}

/** Packs regions one after the other, and holds none of them. */
export class RegionPacker {
  readonly #points: Float64Array[] = [];
  readonly #rings: number[] = [];
  readonly #regions: number[] = [];

  /** Returns its number. */
  add(region: Region): number {
    for (const ring of region) {
      const points = new Float64Array(2 * ring.length);
      ring.forEach(({ x, y }, index) => {
        points[2 * index] = x;
        points[2 * index + 1] = y;
      });
      this.#points.push(points);
      this.#rings.push(ring.length);
    }
    return this.#regions.push(region.length) - 1;
  }

  packed(): PackedRegions {
    const points = new Float64Array(sharedBytes(8 * this.#points.reduce((sum, { length }) => sum + length, 0)));
    let at = 0;
    for (const each of this.#points) {
      points.set(each, at);
      at += each.length;
    }
    return { points, rings: Uint32Array.from(this.#rings), regions: Uint32Array.from(this.#regions) };
  }
}

/** Memory that threads read together, where there is such: a message to another thread holds a copy of everything else. */
function sharedBytes(count: number): ArrayBufferLike {
  return typeof SharedArrayBuffer === 'undefined' ? new ArrayBuffer(count) : new SharedArrayBuffer(count);
}

/** Makes regions by their number, each again unless somebody still holds it. */
export function unpacker({ points, rings, regions }: PackedRegions): (number: number) => Region {
  const firstRing = starts(regions);
  const firstPoint = starts(rings);
  const known = new Map<number, WeakRef<Region>>();
  return (number) => {
    const held = known.get(number)?.deref();
    if (held) return held;
    const [from, to] = [firstRing[number]!, firstRing[number + 1]!];
    const region = regionFrom(points.subarray(2 * firstPoint[from]!), rings.subarray(from, to));
    known.set(number, new WeakRef(region));
    return region;
  };
}

function regionFrom(points: Float64Array, rings: Uint32Array): Region {
  let at = 0;
  return Array.from(rings, (length) => Array.from({ length }, () => ({ x: points[at++]!, y: points[at++]! })));
}

/** Where each of some lengths laid end to end begins, and where the last ends. */
function starts(lengths: Uint32Array): Uint32Array {
  const all = new Uint32Array(lengths.length + 1);
  lengths.forEach((length, index) => (all[index + 1] = all[index]! + length));
  return all;
}
