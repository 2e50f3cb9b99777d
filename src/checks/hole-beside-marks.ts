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
 * A hole over a letter is read as its accent where it is as large as one and as near: so many x-heights over its middle, less the
 * farther it stands aside, and nothing over its edge (our own judgement, from looking at Å and i in the bundled fonts).
 */
const accentGap = 0.35;
const smallestAccent = 0.2;
const largestAccent = 0.7;

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
  const above = accentAbove(hanger, lettering);
  return above === undefined ? undefined : { width: above, isAccent: true };
}

/** How far above a letter an opening stands that is read as its accent; only a round one is. */
export function accentAbove(
  { kind, centre, openingSize }: Pick<PlacedHanger, 'kind' | 'centre' | 'openingSize'>,
  lettering: readonly Lettering[],
): number | undefined {
  if (kind === 'slot' || kind === 'keyhole') return undefined;
  for (const { letters, grow, xHeight } of lettering) {
    const share = openingSize / xHeight;
    if (share < smallestAccent || share > largestAccent) continue;
    for (const { region } of letters) {
      const box = boundsOf(region);
      if (!box) continue;
      const gap = centre.y - openingSize / 2 - (box.maxY + grow);
      const aside = Math.abs(centre.x - (box.minX + box.maxX) / 2);
      // Over an i, which is narrower than the hole, it need not be centred more closely than by its own width.
      const reach = Math.max((box.maxX - box.minX) / 2 + grow, openingSize / 2);
      if (gap > 0 && Math.hypot(aside / reach, gap / (accentGap * xHeight)) < 1) return gap;
    }
  }
  return undefined;
}

function named(name: string | undefined, otherwise: string): string {
  return name === undefined ? `the ${otherwise}` : `“${name}”`;
}

const gapTo = remembered((opening, region) => clearance(opening, region, slipMm));
