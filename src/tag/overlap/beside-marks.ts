/** Carons beside a tall letter (ď, ť, Ľ), which stay there, on a short bar: drawn in to it, they would melt into its stem. */

import { translation, transform } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { footBar } from './bars.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import { profileOf, touching } from './profile.ts';
import { lineAt, rowsOf } from './runs.ts';

/** A mark is beside its letter if that has ink on this share of the mark's rows. */
const levelShare = 0.25;

/** Distance from the letter, in x-heights, and the longest bar. By eye (our own judgement). */
const gap = { beside: 0.16, longest: 0.6 } as const;

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
  const { pitch, web, xHeight } = measures;
  const [rows, own] = [rowsOf(base, pitch), rowsOf(mark, pitch)];
  const level = own.lines.filter((_, index) => lineAt(rows, own.first + index).length > 0);
  if (level.length < levelShare * own.lines.length) return undefined;
  const profile = profileOf([{ rows, dx: 0 }], { rows: own, dx: 0 });
  const free = touching(profile);
  if (!Number.isFinite(free)) return undefined;
  const shift = free - gap.beside * xHeight;
  const { minY, maxY } = boundsOf(mark)!;
  const middle = (minY + maxY - ease * web) / 2;
  const lowest = Math.min(minY, middle);
  const bars = Array.from({ length: Math.ceil((middle - lowest) / pitch) + 1 }, (_, k) => middle - k * pitch)
    .flatMap((line) => {
      const bar = footBar(profile, shift, measures, line);
      return bar && bar.length < gap.longest * xHeight ? [{ bar, cost: bar.length + asideCost * (middle - line) }] : [];
    })
    .toSorted((a, b) => a.cost - b.cost);
  const [best] = bars;
  if (!best) return undefined;
  const move = { x: -shift, y: 0 };
  return { move, region: transform(mark, translation(move.x, move.y)), held: best.bar.region };
}
