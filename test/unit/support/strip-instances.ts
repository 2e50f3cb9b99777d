/**
 * Two sets of parts by which the literature compares methods that fill a strip of fixed width, as collected by ESICUP, the EURO
 * working group on cutting and packing. Coordinates as in github.com/Oscar-Oliveira/OR-Datasets,
 * Cutting-and-Packing/2D-Irregular/Datasets (FU/json/fu.json, BLAZ/json/blaz1.json), a unit taken for a mm and ten times as large.
 */

import type { PartToNest } from '../../../src/nesting/layout.ts';
import type { Ring } from '../../../src/geometry/types.ts';

export interface StripInstance {
  readonly parts: readonly PartToNest[];
  /** Of the strip, in mm. */
  readonly width: number;
  /** mm of strip in the literature. */
  readonly published: number;
}

const scale = 10;

function ring(text: string): Ring {
  return text.split(' ').map((pair) => {
    const [x, y] = pair.split(',').map(Number) as [number, number];
    return { x: scale * x, y: scale * y };
  });
}

function instance(
  rings: readonly string[],
  count: number,
  turns: PartToNest['turns'],
  width: number,
  published: number,
): StripInstance {
  const parts = rings.flatMap((text): PartToNest[] => {
    const region = [ring(text)];
    return Array.from({ length: count }, () => ({ region, turns }));
  });
  return { parts, width: scale * width, published: scale * published };
}

/**
 * Fujita, Akagji and Kirokawa 1993: twelve convex parts, turned by quarters.
 * Length by Gomes and Oliveira 2006 (Eur. J. Oper. Res. 171:811), quoted from memory.
 */
export const fu = instance(
  [
    '0,0 10,0 10,10 0,10',
    '0,0 10,0 10,10 0,10',
    '0,0 14,0 14,9 0,9',
    '0,0 14,0 7,7',
    '0,9 0,0 14,9',
    '0,0 14,0 14,14 0,14',
    '0,0 10,4 10,9 0,9',
    '0,0 5,0 5,9 0,9',
    '0,0 14,0 14,14',
    '0,0 10,0 10,10 0,14',
    '0,8 4,0 8,8',
    '0,0 14,0 7,12',
  ],
  1,
  'quarter',
  38,
  31.33,
);

/**
 * Blazewicz, Hawryluk and Walkowiak 1993: seven shapes, some of them hollow, four of each, turned by half a turn.
 * Length by Gomes and Oliveira 2006, quoted from memory.
 */
export const blaz = instance(
  [
    '0,0 2,-1 4,0 4,3 2,4 0,3',
    '0,0 3,0 2,2 3,4 3,5 1,5 -1,3 -1,1',
    '0,0 2,0 3,1 3,3 2,4 0,4 -1,3 -1,1',
    '0,0 2,1 4,0 3,2 4,5 2,4 0,5 1,3',
    '0,0 5,0 5,5 4,5 3,3 2,2 0,1',
    '0,0 2,3 -2,3',
    '0,0 2,0 2,2 0,2',
  ],
  4,
  'half',
  15.015,
  25.84,
);
