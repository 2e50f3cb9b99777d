/** Openings for the tie so near to marks or lettering that they look like a mistake, or read as an accent. */

import { boundsOf, contains, ringArea, widened } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Lettering } from '../../tag/lettering/letters.ts';
import { marksAbove } from '../../tag/lettering/marks-above.ts';
import type { Piece, PlacedHanger } from '../../tag/tag.ts';
import { clearance } from './clearance.ts';
import { gluedOver } from './assembly.ts';
import { perRegionPair } from './per-region-pair.ts';

/** Below this distance, in mm, a hole looks misplaced (our own judgement). */
export const slipMm = 1;

/**
 * A hole over a letter reads as its accent if it is about as large and as near as one: within this many x-heights above
 * its middle, less the farther it is to the side, and not beyond its edge (our own judgement, from looking at Å and i
 * in the bundled fonts).
 */
const accentGap = 0.35;
const smallestAccent = 0.2;
const largestAccent = 0.7;

/**
 * Beside or below the top of the dot of a letter, and no further from it than so many of its own diameters, an opening reads as another one, if it is from
 * so many to so many times as wide (our own judgement).
 */
const dot = { away: 1, least: 0.4, most: 2.5 } as const;

/** Where a hole no longer reads as an accent, one sees why if it does not so much nearer either, in mm. Our own judgement. */
const seenMm = 1.5;

/** Capitals that have a ring or a dot above in a language of Europe; nobody reads one over an S. */
const accentedCapital = /^[AUEICGZ]/;

/** Something drawn, cut or glued beside an opening. */
export interface OpeningNeighbour {
  readonly region: Region;
  readonly lettering: readonly Lettering[];
  /** Such as “name”, or “engraving”. */
  readonly name: string;
  /** Letters that are open, as the opening itself is. */
  readonly isOpen?: true;
  /** Fitted into its room, so that it keeps clear of openings by itself. */
  readonly isFitted?: true;
}

/**
 * Everything an opening should keep clear of: engraving, lettering that is cut through or scored, and glued lettering.
 */
export function openingNeighbours(piece: Piece, pieces: readonly Piece[], hanger: PlacedHanger): OpeningNeighbour[] {
  const marks = piece.marks.flatMap(({ operation, region, lettering = [], shape, area }) =>
    operation === 'engrave' || lettering.length > 0
      ? [{ region, lettering, name: nameOr(shape.name, 'engraving'), ...(area?.room && { isFitted: true as const }) }]
      : [],
  );
  const cuts = piece.sources.flatMap(({ use, lettering = [], region, shape }) =>
    lettering
      .filter(({ as }) => (as === 'opening') !== (use === 'cut'))
      .map((each) => ({
        region: each.shape ?? region,
        lettering: [each],
        name: nameOr(shape.name, 'lettering'),
        isOpen: true as const,
      })),
  );
  const glued = gluedOver(piece, pieces).flatMap(({ region, sources, title }) => {
    const lettering = sources.flatMap(({ use, lettering: own = [] }) => (use === 'body' ? own : []));
    return lettering.length > 0 ? [{ region, lettering, name: `“${title}”` }] : [];
  });
  return [...marks, ...cuts, ...glued].filter((each) => !surrounds(each, hanger));
}

/**
 * Whether the opening is set in a field or inside a border, which is intended. Letters are not: nobody sets an opening
 * in one on purpose.
 */
function surrounds({ region, lettering }: OpeningNeighbour, { centre }: PlacedHanger): boolean {
  if (hasLetters(lettering)) return false;
  return contains(region, centre) || region.some((ring) => ringArea(ring) < 0 && contains([ring], centre));
}

/** Whether the letters themselves are drawn, rather than left bright in a field. */
export function hasLetters(lettering: readonly Lettering[] = []): boolean {
  return lettering.some(({ as }) => as === 'material');
}

/**
 * An opening beside a letter reads as another one, an upright slot as an I, if it is nearer than the first and between the others as high, in
 * heights of that letter. Our own judgement.
 */
const likeLetter = { gap: 0.5, least: 0.4, most: 1.4 } as const;

export interface Nearness {
  readonly width: number;
  /** The letter that is cut through like the slot, which reads as another one beside it. */
  readonly besideLetter?: string;
  /** The letter whose accent it reads as. */
  readonly accentOf?: string;
  /** The letter beside whose dot it reads as another. */
  readonly besideDotOf?: string;
}

/** Distance of an opening from what is beside it; `undefined` if it looks intended. */
export function nearness(hanger: PlacedHanger, { region, lettering, isOpen }: OpeningNeighbour): Nearness | undefined {
  const width = gapTo(hanger.opening, region);
  if (width < slipMm) return { width };
  const above = accentAbove(hanger, lettering);
  if (above) return { width: above.gap, accentOf: above.letter };
  const beside = besideDot(hanger, lettering);
  if (beside) return { width: beside.gap, besideDotOf: beside.letter };
  const box = boundsOf(hanger.opening)!;
  if (!isOpen || hanger.kind !== 'slot' || box.maxX - box.minX > box.maxY - box.minY) return undefined;
  const letter = letterBeside(hanger, lettering);
  return letter && { width: letter.gap, besideLetter: letter.letter };
}

/** The letter beside which an opening stands as another one would, and the distance from it. */
export function letterBeside(
  { opening }: Pick<PlacedHanger, 'opening'>,
  lettering: readonly Lettering[],
): { readonly gap: number; readonly letter: string } | undefined {
  const { minX, minY, maxX, maxY } = boundsOf(opening)!;
  const middle = (minY + maxY) / 2;
  for (const { letters, grow } of lettering) {
    for (const { region, text } of letters) {
      const letter = boundsOf(region)!;
      const height = letter.maxY - letter.minY;
      const share = (maxY - minY) / height;
      const gap = Math.max(letter.minX - maxX, minX - letter.maxX) - grow;
      const isLevel = middle > letter.minY && middle < letter.maxY;
      const isLike = share > likeLetter.least && share < likeLetter.most;
      if (isLevel && isLike && gap > 0 && gap < likeLetter.gap * height) return { gap, letter: text };
    }
  }
  return undefined;
}

/** The letter whose dots or accents an opening stands beside as another one, and the distance from them; only round ones do. */
function besideDot(
  { kind, centre, opening, openingSize }: PlacedHanger,
  lettering: readonly Lettering[],
): { readonly gap: number; readonly letter: string } | undefined {
  if (kind === 'slot' || kind === 'keyhole') return undefined;
  for (const { letters, grow } of lettering) {
    for (const { region, text } of letters) {
      for (const mark of marksAbove(region)) {
        const { minX, maxX, maxY } = widened(boundsOf(mark)!, grow);
        const share = openingSize / (maxX - minX);
        const gap = clearance(opening, mark, dot.away * openingSize) - grow;
        const isBeside = centre.y < maxY && gap > 0 && gap < dot.away * openingSize;
        if (isBeside && share > dot.least && share < dot.most) return { gap, letter: text };
      }
    }
  }
  return undefined;
}

/** The letter that an opening reads as an accent of, and the distance above it; only round ones do. */
export function accentAbove(
  { kind, centre, openingSize }: Pick<PlacedHanger, 'kind' | 'centre' | 'openingSize'>,
  lettering: readonly Lettering[],
): { readonly gap: number; readonly letter: string } | undefined {
  if (kind === 'slot' || kind === 'keyhole') return undefined;
  for (const { letters, grow, xHeight } of lettering) {
    const share = openingSize / xHeight;
    if (share < smallestAccent || share > largestAccent) continue;
    for (const { region, text } of letters) {
      const box = boundsOf(region);
      if (!box || (/^\p{Lu}/u.test(text) && !accentedCapital.test(text))) continue;
      const gap = centre.y - openingSize / 2 - (box.maxY + grow);
      const aside = Math.abs(centre.x - (box.minX + box.maxX) / 2);
      // Over an i, which is narrower than the hole, it only needs to be centred within its own width.
      const reach = Math.max((box.maxX - box.minX) / 2 + grow, openingSize / 2);
      if (gap > 0 && Math.hypot(aside / reach, gap / (accentGap * xHeight)) < 1) return { gap, letter: text };
    }
  }
  return undefined;
}

/** A place from which a hole has been moved by a distance that one sees. */
export function nearerToLetters({ x, y }: Point): Point {
  return { x, y: y - seenMm };
}

function nameOr(name: string | undefined, otherwise: string): string {
  return name === undefined ? `the ${otherwise}` : `“${name}”`;
}

const gapTo = perRegionPair((opening, region) => clearance(opening, region, slipMm));
