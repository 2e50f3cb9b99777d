/** Openings for the tie so near to engraving or lettering that they look like a slip, or are read as an accent on a letter. */

import { boundsOf, contains, ringArea } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { Lettering } from '../tag/letters.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import { clearance } from './clearance.ts';
import { gluedOver } from './assembly.ts';
import { remembered } from './remembered.ts';

/** Nearer than this, a hole looks as if it had slipped, in mm (our own judgement). */
export const slipMm = 1;

/**
 * Over a letter, no farther than this share of its height, a hole is read as its accent where it is as large as one, which
 * shares of that height say as well (our own judgement, from looking at Å and i in the bundled fonts).
 */
const accentGap = 0.2;
const smallestAccent = 0.15;
const largestAccent = 0.5;

/** What is drawn, cut or glued beside an opening. */
export interface Beside {
  readonly region: Region;
  readonly lettering: readonly Lettering[];
  /** Such as “name”, or “engraving”. */
  readonly name: string;
}

/** All that an opening should keep clear of: engraving, lettering that is cut through or scored, and glued lettering. */
export function besidesOf(piece: Piece, pieces: readonly Piece[], hanger: PlacedHanger): Beside[] {
  const marks = piece.marks.flatMap(({ operation, region, lettering = [], shape }) =>
    operation === 'engrave' || lettering.length > 0
      ? [{ region, lettering, name: named(shape.name, 'engraving') }]
      : [],
  );
  const cuts = piece.sources.flatMap(({ use, lettering = [], region, shape }) =>
    lettering
      .filter(({ as }) => (as === 'opening') !== (use === 'cut'))
      .map((each) => ({ region: each.shape ?? region, lettering: [each], name: named(shape.name, 'lettering') })),
  );
  const glued = gluedOver(piece, pieces).flatMap(({ region, sources, title }) => {
    const lettering = sources.flatMap(({ use, lettering: own = [] }) => (use === 'body' ? own : []));
    return lettering.length > 0 ? [{ region, lettering, name: `“${title}”` }] : [];
  });
  return [...marks, ...cuts, ...glued].filter((each) => !surrounds(each, hanger));
}

/** A field that the opening is set in, or a border round it: neither is a letter, in which nobody sets one on purpose. */
function surrounds({ region, lettering }: Beside, { centre }: PlacedHanger): boolean {
  if (hasLetters(lettering)) return false;
  return contains(region, centre) || region.some((ring) => ringArea(ring) < 0 && contains([ring], centre));
}

/** Whether letters are what is drawn, and not left bright in a field. */
export function hasLetters(lettering: readonly Lettering[] = []): boolean {
  return lettering.some(({ as }) => as === 'material');
}

export interface Nearness {
  readonly width: number;
  readonly isAccent: boolean;
}

/** How near an opening is to what is beside it; `undefined` where that looks as if it were meant. */
export function nearness(hanger: PlacedHanger, { region, lettering }: Beside): Nearness | undefined {
  const width = gapTo(hanger.opening, region);
  if (width < slipMm) return { width, isAccent: false };
  const above = hanger.kind === 'slot' || hanger.kind === 'keyhole' ? undefined : accentAbove(hanger, lettering);
  return above === undefined ? undefined : { width: above, isAccent: true };
}

/** How far above a letter an opening stands that is read as its accent. */
function accentAbove({ centre, openingSize }: PlacedHanger, lettering: readonly Lettering[]): number | undefined {
  for (const { letters, grow } of lettering) {
    for (const { region } of letters) {
      const box = boundsOf(region);
      if (!box || centre.x < box.minX || centre.x > box.maxX) continue;
      const height = box.maxY - box.minY + 2 * grow;
      const gap = centre.y - openingSize / 2 - (box.maxY + grow);
      const isAsLarge = openingSize > smallestAccent * height && openingSize < largestAccent * height;
      if (isAsLarge && gap > 0 && gap < accentGap * height) return gap;
    }
  }
  return undefined;
}

function named(name: string | undefined, otherwise: string): string {
  return name === undefined ? `the ${otherwise}` : `“${name}”`;
}

const gapTo = remembered((opening, region) => clearance(opening, region, slipMm));
