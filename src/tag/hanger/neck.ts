/**
 * A ring on a neck: where a name is to hang level and nothing near its balance reaches up, the ring stands above a low letter, as high as it
 * must to be no accent of it, and a straight neck leads down to the stroke. The limits are our own judgement, from looking at 450 names.
 */

import { withoutAccents } from '../../core/names.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { boundsOf, centroid } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { furthestOnRay, tiltDegrees } from './direction.ts';
import { misreadingCost } from './reading.ts';
import type { RingReading } from './reading.ts';
import { costOfTilt } from './ring.ts';
import type { RingCandidate, RingSize } from './ring.ts';
import { isTurnedByNeck } from './turned-by-neck.ts';

export interface OnNeck extends RingCandidate {
  /** The letter that it stands on. */
  readonly over: string;
  /** From the middle of the ring down into the stroke. */
  readonly neck: Region;
}

interface NeckGround {
  readonly on: Region;
  readonly whole: Region;
  readonly reading: RingReading;
  readonly web: number;
}

/** Cost of a neck, in shares of a fully joined ring: that of an accent, and more where it makes another letter of the one that it stands on. */
const neckCost = { accent: 0.75, stem: 1 } as const;

/** It is as wide as the wall of the ring; where a narrow letter has no room for that, as so much of it, if that is enough for a joint. */
const narrowShare = 0.6;

/** It stands within so much of the width of a letter, about its middle, as over its side it would be the stem of another one. */
const middleShare = 0.4;

/** On these letters that is so with its whole width, within this share, or it stands in the very middle: beside it, a “c” or an “o” would be a “d” or a “b”. */
const turnedBeside = /^[aceogq]$/u;
const bowlShare = 0.5;

/** And on its top: not further down than this share of its height, as between the stems of a U, nor where it slopes by more than this share of the neck. */
const topShare = 0.3;
const mostSlope = 1;

/**
 * On these letters it does not go on from a stem, straight or leaning, which has ink below it at these shares of the height: an “n” would be
 * an “h”, an “a” a “d”.
 */
const turnedByStem = /^[anmru]$/u;
const stemDepths = [0.15, 0.3, 0.45];
const stemLeans = [-0.3, -0.15, 0, 0.15];

/** Steps across and up, in mm, and how far up at most, in heights of the letter. */
const stepMm = 0.5;
const riseMm = 0.25;
const mostRise = 0.8;

/** Where the outline below it is looked at, in widths from its middle. */
const across = [-0.5, -0.25, 0, 0.25, 0.5];

/** How deep it is let into the stroke, and what is left free round the ring and beside the neck, in mm. */
const lapMm = 0.5;
const clearMm = 0.5;

const up = { x: 0, y: 1 };

/** The best place for one above the balance; `undefined` where no letter has room for a neck. */
export function neckPlace(ground: NeckGround, size: RingSize, aside: Point): OnNeck | undefined {
  const middle = centroid(ground.whole);
  if (!middle || ground.reading.coverable.letters.length === 0) return undefined;
  const balance = { x: middle.x + aside.x, y: middle.y + aside.y };
  const stands = standing(ground, size);
  const widths = [Math.max(size.wall, ground.web), Math.max(narrowShare * size.wall, ground.web)];
  for (const width of widths) {
    const [best] = columnsOf(ground.reading, width)
      .flatMap((column) => stands(column, width) ?? [])
      .map((place) => ({
        ...place,
        score:
          1 -
          (isTurnedByNeck(place.over) ? neckCost.stem : neckCost.accent) -
          costOfTilt(tiltDegrees(from(balance, place.centre), up), false, true),
      }))
      .sort((a, b) => b.score - a.score || a.centre.x - b.centre.x);
    if (best) return best;
  }
  return undefined;
}

interface Column {
  readonly x: number;
  readonly letter: string;
  readonly box: Bounds;
  readonly avoidsStems: boolean;
}

/** Over the middle of every letter that is material. */
function columnsOf({ coverable: { letters, factor } }: RingReading, width: number): Column[] {
  return letters.flatMap(({ box, text }) => {
    const [minX, maxX] = [factor * box.minX, factor * box.maxX];
    const letter = withoutAccents(text);
    const wide = maxX - minX;
    const room = turnedBeside.test(letter) ? bowlShare * wide - width : middleShare * wide;
    const columns = Math.max(0, Math.floor(room / 2 / stepMm));
    const scaled = { minX, maxX, minY: factor * box.minY, maxY: factor * box.maxY };
    const avoidsStems = turnedByStem.test(letter);
    return Array.from({ length: 2 * columns + 1 }, (_, index) => ({
      x: (minX + maxX) / 2 + (index - columns) * stepMm,
      letter: text,
      box: scaled,
      avoidsStems,
    }));
  });
}

type Standing = (column: Column, width: number) => Omit<OnNeck, 'score'> | undefined;

/** The lowest place of a ring whose neck stands at `x` on the letter with that box. */
function standing({ on, whole, reading }: NeckGround, { hole, wall }: RingSize): Standing {
  const edges = new EdgeIndex(whole);
  const ground = on === whole ? edges : new EdgeIndex(on);
  const below = { x: 0, y: boundsOf(whole)!.minY - 1 };
  const topAt = (x: number): number => furthestOnRay(whole, { ...below, x }, up)?.y ?? -Infinity;
  const radius = hole + wall;
  return ({ x, letter, box: { minY, maxY }, avoidsStems }, width) => {
    if (reading.marks.some((mark) => x + width > mark.minX && x - width < mark.maxX)) return undefined;
    const tops = across.map((share) => ({ x: x + share * width, y: topAt(x + share * width) }));
    const [low, high] = [Math.min(...tops.map(({ y }) => y)), Math.max(...tops.map(({ y }) => y))];
    const height = maxY - minY;
    if (high > maxY + clearMm || low < maxY - topShare * height || high - low > mostSlope * width) return undefined;
    const foot = tops.map((top) => ({ x: top.x, y: top.y - lapMm }));
    if (!foot.every((point) => ground.contains(point))) return undefined;
    const isOnStem =
      avoidsStems &&
      tops.some((top) =>
        stemLeans.some((lean) =>
          stemDepths.every((share) => ground.contains({ x: top.x + lean * share * height, y: top.y - share * height })),
        ),
      );
    if (isOnStem) return undefined;
    const beside = width / 2 + clearMm;
    for (let y = high + radius; y < high + radius + mostRise * height; y += riseMm) {
      if (edges.contains({ x: x - beside, y }) || edges.contains({ x: x + beside, y })) return undefined;
      const centre = { x, y };
      if (edges.countCircleCrossings(centre, radius + clearMm) > 0) continue;
      if (misreadingCost(reading, centre, { hole, wall }) > 0) continue;
      return { centre, over: letter, neck: [[...foot, { x: x + width / 2, y }, { x: x - width / 2, y }]] };
    }
    return undefined;
  };
}

function from(balance: Point, { x, y }: Point): Point {
  return { x: x - balance.x, y: y - balance.y };
}
