/** The open sets of `test/strips`, of which its README says where they come from, as parts for a strip that is filled upwards. */

import { readFileSync } from 'node:fs';
import { area } from '../../../src/geometry/measure.ts';
import type { PartToNest, SheetRoom } from '../../../src/nesting/layout.ts';
import type { Region } from '../../../src/geometry/types.ts';

export interface StripSet {
  readonly name: string;
  readonly parts: readonly PartToNest[];
  /** mm². */
  readonly area: number;
  readonly room: SheetRoom;
  /** Best density known, per cent. */
  readonly bestKnown: number;
}

const bestKnown = {
  blaz1: 84,
  fu: 92.41,
  jakobs1: 89.1,
  marques: 92.02,
  shapes0: 69.98,
  shirts: 90.92,
  swim: 79.83,
} as const;

export type StripName = keyof typeof bestKnown;
export const stripNames = Object.keys(bestKnown) as StripName[];

interface StripFile {
  readonly strip_height: number;
  readonly items: readonly {
    readonly demand: number;
    readonly orientations: readonly number[];
    readonly outline: readonly (readonly [number, number])[];
  }[];
}

/** Every strip is as wide, in mm. */
const width = 400;
const turnsOf: Readonly<Record<number, PartToNest['turns']>> = { 1: 'none', 2: 'half', 4: 'quarter' };

export function stripSet(name: StripName): StripSet {
  const file = JSON.parse(readFileSync(new URL(`../../strips/${name}.json`, import.meta.url), 'utf8')) as StripFile;
  const scale = width / file.strip_height;
  const parts = file.items.flatMap(({ demand, orientations, outline }): PartToNest[] => {
    // The strip lies in the file and stands here.
    const ring = outline.slice(0, -1).map(([x, y]) => ({ x: -y * scale, y: x * scale }));
    const region: Region = area([ring]) > 0 ? [ring] : [[...ring].reverse()];
    const turns = turnsOf[orientations.length]!;
    return Array.from({ length: demand }, (): PartToNest => ({ region, turns }));
  });
  const all = parts.reduce((sum, { region }) => sum + area(region), 0);
  const room = { width, height: (2.5 * all) / width, margin: 0, gap: 0, keep: 'width' } as const;
  return { name, parts, area: all, room, bestKnown: bestKnown[name] };
}
