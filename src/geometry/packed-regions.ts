/** Regions as plain numbers: at most a fifth of the memory of points, and handed to another thread in no time. */

import { unitsPerMm } from './clipper.ts';
import type { Region, Ring } from './types.ts';

export interface PackedRegions {
  /** x and y of every point of every ring: in steps of the grid of regions, which take half the room, where all are on it; else in mm. */
  readonly points: Int32Array | Float64Array;
  /** How many points each ring has, and how many rings each region. */
  readonly rings: Uint32Array;
  readonly regions: Uint32Array;
}

/** A region of which the points are made whenever they are asked for, each time anew. */
export function keptPacked(region: Region): { readonly region: Region } {
  const packer = new RegionPacker();
  packer.add(region);
  const { points, rings } = packer.packed();
  return {
    get region() {
      return regionFrom(points, rings);
    },
  };
}

/** Packs regions one after the other, and holds none of them. */
export class RegionPacker {
  readonly #rings: PackedRegions['points'][] = [];
  readonly #regions: number[] = [];

  /** Returns its number. */
  add(region: Region): number {
    this.#rings.push(...region.map(packedRing));
    return this.#regions.push(region.length) - 1;
  }

  /** `bytes`: makes the memory for the points. */
  packed(bytes: (count: number) => ArrayBufferLike = (count) => new ArrayBuffer(count)): PackedRegions {
    const count = this.#rings.reduce((sum, { length }) => sum + length, 0);
    const areOnGrid = this.#rings.every(isOnGrid);
    const points = areOnGrid ? new Int32Array(bytes(4 * count)) : new Float64Array(bytes(8 * count));
    let at = 0;
    for (const ring of this.#rings) {
      points.set(areOnGrid ? ring : inMm(ring), at);
      at += ring.length;
    }
    const rings = Uint32Array.from(this.#rings, ({ length }) => length / 2);
    return { points, rings, regions: Uint32Array.from(this.#regions) };
  }
}

function packedRing(ring: Ring): PackedRegions['points'] {
  const steps = new Int32Array(2 * ring.length);
  ring.forEach(({ x, y }, index) => {
    steps[2 * index] = Math.round(x * unitsPerMm);
    steps[2 * index + 1] = Math.round(y * unitsPerMm);
  });
  const isSame = (step: number, mm: number): boolean => Object.is(step / unitsPerMm, mm);
  if (ring.every(({ x, y }, index) => isSame(steps[2 * index]!, x) && isSame(steps[2 * index + 1]!, y))) return steps;
  return Float64Array.from(ring.flatMap(({ x, y }) => [x, y]));
}

const isOnGrid = (points: PackedRegions['points']): boolean => points instanceof Int32Array;

function inMm(points: PackedRegions['points']): Float64Array {
  return points instanceof Int32Array ? Float64Array.from(points, (step) => step / unitsPerMm) : points;
}

/** Makes regions by their number, each time anew. */
export function unpacker({ points, rings, regions }: PackedRegions): (number: number) => Region {
  const firstRing = starts(regions);
  const firstPoint = starts(rings);
  return (number) => {
    const [from, to] = [firstRing[number]!, firstRing[number + 1]!];
    return regionFrom(points.subarray(2 * firstPoint[from]!, 2 * firstPoint[to]!), rings.subarray(from, to));
  };
}

function regionFrom(points: PackedRegions['points'], rings: Uint32Array): Region {
  const steps = isOnGrid(points) ? unitsPerMm : 1;
  let at = 0;
  return Array.from(rings, (length) =>
    Array.from({ length }, () => ({ x: points[at++]! / steps, y: points[at++]! / steps })),
  );
}

/** Where each of some lengths laid end to end begins, and where the last ends. */
function starts(lengths: Uint32Array): Uint32Array {
  const all = new Uint32Array(lengths.length + 1);
  lengths.forEach((length, index) => (all[index + 1] = all[index]! + length));
  return all;
}
