/** Carons and apostrophes beside a tall letter (ď, Ľ, “l's”), which stay there, on a short bar: drawn in to it, they would melt into its stem. */

import { translation, transform } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { footBar } from './bars.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import { profileOf, touching } from './profile.ts';
import type { Profile } from './profile.ts';
import { lineAt, rowsOf } from './runs.ts';

/** A mark is beside its letter if that has ink on this share of the mark's rows. */
const levelShare = 0.25;

/** Distance from the letter, and the longest bar, in x-heights. By eye (our own judgement). */
const sideGap = 0.16;
const longestBar = 0.6;

/** Cost of a bar's distance from the middle of the mark, as a share of it: there is white above and below it. */
const asideCost = 0.5;

export interface MarkAtSide {
  readonly move: Point;
  /** The mark after the move. */
  readonly region: Region;
  /** The bar, as grown. */
  readonly held: Region;
}

/** `undefined` for a mark above or below its letter. */
export function besideLetter(base: Region, mark: Region, measures: Measures): MarkAtSide | undefined {
  const [rows, own] = [rowsOf(base, measures.pitch), rowsOf(mark, measures.pitch)];
  const level = own.lines.filter((_, index) => lineAt(rows, own.first + index).length > 0);
  if (level.length < levelShare * own.lines.length) return undefined;
  const side = sidePlace(profileOf([{ rows, dx: 0 }], { rows: own, dx: 0 }), mark, measures);
  if (!side) return undefined;
  const move = { x: -side.shift, y: 0 };
  return { move, region: transform(mark, translation(move.x, move.y)), held: side.held };
}

export interface SidePlace {
  /** Distance that the mark moves closer, in mm. */
  readonly shift: number;
  /** The bar, as grown. */
  readonly held: Region;
}

/** Where a mark stands beside what is before it, with white between them; `undefined` where no short bar holds it. */
export function sidePlace(profile: Profile, mark: Region, measures: Measures): SidePlace | undefined {
  const { pitch, web, xHeight } = measures;
  const free = touching(profile);
  if (!Number.isFinite(free)) return undefined;
  const shift = free - sideGap * xHeight;
  const { minY, maxY } = boundsOf(mark)!;
  const middle = (minY + maxY - ease * web) / 2;
  const lowest = Math.min(minY, middle);
  const [best] = Array.from({ length: Math.ceil((middle - lowest) / pitch) + 1 }, (_, k) => middle - k * pitch)
    .flatMap((line) => {
      const bar = footBar(profile, shift, measures, line);
      return bar && bar.length < longestBar * xHeight ? [{ bar, cost: bar.length + asideCost * (middle - line) }] : [];
    })
    .toSorted((a, b) => a.cost - b.cost);
  return best && { shift, held: best.bar.region };
}
