/**
 * Where an apostrophe or a closing mark is read best among letters lower than itself: on one of them, against its side, or beside it on a short
 * link from its foot. The costs are our own judgement, by eye and by OCR, on 227 words in fourteen faces.
 */

import { union } from '../../geometry/clipper.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { footBar, postBar } from './bars.ts';
import { movedRegion } from './bodies.ts';
import type { LetterShape } from './bodies.ts';
import { gapTo, middleX } from './marks.ts';
import type { MarkNeighbours } from './marks.ts';
import type { Measures } from './measures.ts';
import { bestPost, clearance } from './post.ts';
import { profileOf, touching } from './profile.ts';
import type { Profile } from './profile.ts';
import { columnsOf, movedRuns } from './runs.ts';
import { shares } from './shares.ts';
import { footOf, signReading } from './sign-reading.ts';

export interface PlacedSign {
  readonly position: Point;
  /** The post or the link that holds it, as grown. */
  readonly held?: Region;
}

/** A letter at its place. */
export interface SignNeighbour extends LetterShape {
  readonly at: Point;
}

export interface WaitingSign {
  readonly sign: LetterShape;
  readonly at: Point;
  readonly before: SignNeighbour | undefined;
  readonly after: SignNeighbour | undefined;
  /** Whether its word ends with it. */
  readonly isClosing: boolean;
}

/** Limits, in x-heights, for moving a sign sideways, further at the end of a word, with the step to try, for raising it, and for lowering its foot. */
const reach = { aside: 0.6, closing: 1.6, step: 0.033, raised: 0.6, foot: 0.7 } as const;

/** How deep a sign is sunk into what it stands on or leans against, in x-heights: on a post it is read as an accent, or as a letter. */
const sunk = 0.06;

/** A link, in x-heights: the white beside it, how far above the foot of the sign it may begin, and how long it is at most. */
const link = { gap: 0.15, above: [0, 0.1], longest: 0.55 } as const;

/** At how many heights a sign is tried beside a letter. */
const levels = 9;

/** Costs per mm of moving a sign sideways, of raising or lowering it, also below the x-height, of the gap below it, and of being too near to marks. */
const cost = { aside: 0.2, raised: 1, lowered: 0.15, deep: 0.4, post: 2, crowded: 4 } as const;

/** Costs of a link, and of one more from the letter before, in x-heights. */
const linkCost = { any: 0.1, before: 0.2 } as const;

interface Found extends PlacedSign {
  readonly cost: number;
}

/** The best place; `undefined` if the sign reaches nothing. */
export function bestSignPlace(waiting: WaitingSign, measures: Measures): PlacedSign | undefined {
  const { sign, at, before, after, isClosing } = waiting;
  const { xHeight, web, pitch } = measures;
  const beside = { before, after: isClosing ? undefined : after };
  const near = [beside.before, beside.after].filter((each) => each !== undefined);
  const columns = columnsOf(union(near.map(({ base, at: place }) => movedRegion(base, place))), pitch);
  const kept = near.flatMap(({ marks: own, markRows, markColumns, at: place }): MarkNeighbours[] =>
    own.length > 0 ? [{ rows: markRows, columns: markColumns, at: place }] : [],
  );
  // The next word has its own signs.
  if (isClosing && after) kept.push(after);
  const middle = middleX(sign.base);
  const foot = footOf(sign.base);
  const lowest = Math.min(0, reach.foot * xHeight - foot.y);
  const aside = (isClosing ? reach.closing : reach.aside) * xHeight;

  const costAt = ({ x, y }: Point): number => {
    const lacks = Math.max(0, shares.markGap * xHeight - gapTo(kept, sign, { x, y }));
    const below = Math.max(0, xHeight - (foot.y + y));
    const moved = cost.aside * Math.abs(x - at.x) + (y > 0 ? cost.raised * y : -cost.lowered * y) + cost.deep * below;
    return moved + cost.crowded * lacks + signReading(sign, { x, y }, beside, xHeight).cost;
  };

  const standing = (x: number): Found[] => {
    const across = Math.round(x / pitch);
    const clear = clearance(movedRuns(sign.columns, across, 0), columns);
    const y = Math.max(-sunk * xHeight - clear, lowest);
    if (!Number.isFinite(clear) || y > reach.raised * xHeight) return [];
    const post = bestPost(movedRuns(sign.columns, across, y), columns, web, middle + x);
    if (!post || post.gap < -2 * sunk * xHeight) return [];
    const whole = costAt({ x, y }) + cost.post * Math.max(0, post.gap) + Math.max(0, post.cost);
    return [{ position: { x, y }, held: postBar(post, measures), cost: whole }];
  };

  /** Beside a letter with so much white between them; negative if it is sunk into that. */
  const besideLetters = (
    y: number,
    gap: number,
  ): { readonly x: number; readonly profile: Profile; readonly isBefore: boolean }[] => {
    const rows = movedRuns(sign.rows, Math.round(y / pitch), 0);
    const places = (['before', 'after'] as const).flatMap((side) => {
      const letter = beside[side];
      if (!letter) return [];
      const other = { rows: letter.rows, dx: letter.at.x };
      const profileAt = (x: number): Profile =>
        side === 'before' ? profileOf([other], { rows, dx: x }) : profileOf([{ rows, dx: x }], other);
      const free = touching(profileAt(at.x)) - gap;
      const x = side === 'before' ? at.x - free : at.x + free;
      return Number.isFinite(free) ? [{ x, profile: profileAt(x), isBefore: side === 'before' }] : [];
    });
    return places.filter(({ x }) => Math.abs(x - at.x) <= aside);
  };

  const leaning = (y: number): Found[] =>
    besideLetters(y, -sunk * xHeight).map(({ x }) => ({ position: { x, y }, cost: costAt({ x, y }) }));

  const linked = (y: number): Found[] =>
    besideLetters(y, link.gap * xHeight).flatMap(({ x, profile, isBefore }) => {
      const own = costAt({ x, y }) + (linkCost.any + (isBefore ? linkCost.before : 0)) * xHeight;
      return link.above.flatMap((above): Found[] => {
        const bar = footBar(profile, 0, measures, foot.y + y + above * xHeight);
        if (!bar || bar.length > link.longest * xHeight) return [];
        return [{ position: { x, y }, held: bar.region, cost: own + bar.length }];
      });
    });

  const steps = Math.ceil(aside / (reach.step * xHeight));
  const shifts = Array.from({ length: 2 * steps + 1 }, (_, k) => ((k - steps) * aside) / steps);
  // Over the last letter of its word, but no further back than its middle: there it would be read in front of it.
  const least = before && isClosing ? before.at.x + middleX(before.base) - (at.x + middle) : -Infinity;
  const heights = Array.from({ length: levels }, (_, k) => (k / (levels - 1)) * lowest);
  const places = [
    ...shifts.filter((shift) => shift >= Math.min(0, least)).flatMap((shift) => standing(at.x + shift)),
    ...heights.flatMap((y) => [...leaning(y), ...linked(y)]),
  ];
  const [best] = places.toSorted((a, b) => a.cost - b.cost);
  return best;
}
