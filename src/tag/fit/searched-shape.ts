/** A shape for which a place is searched, in a close and in a rough outline, and the largest size near a place. */

import { boundsOf } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point } from '../../geometry/types.ts';
import type { MadeShape } from '../made-shape.ts';
import { IndexedSilhouette, largestNear } from './contacts.ts';
import type { Freedom } from './contacts.ts';
import type { RoomPart } from './room.ts';
import { gridIn, samplesOf } from './search.ts';
import type { FitPlacement, Samples } from './search.ts';
import { roughened, silhouetteOf } from './silhouette.ts';

/**
 * Something that the rough search missed may obstruct the close one, which then starts from these shares of the size.
 */
const beginnings = [1, 0.98, 0.94, 0.85];

/** Tolerance of the outlines searched with, in mm: in the close and in the rough search. */
const closeMm = 0.003;
const roughMm = 0.03;

/** First step of the rough and of the close search, in mm. */
export const firstStep = 1.5;
export const lastStep = 0.1;

/** The rough search ends with a change of less than this, in mm, and a close one continues from there. */
const roughStill = 0.02;

export interface FoundPlacement {
  readonly placement: FitPlacement;
  readonly part: RoomPart;
}

export function ofSize({ placement, part }: FoundPlacement, scale: number): FoundPlacement {
  return { placement: { ...placement, scale }, part };
}

/** In its own coordinates, with its visual centre as origin. */
export class SearchedShape {
  readonly close: IndexedSilhouette;
  readonly rough: IndexedSilhouette;
  readonly samples: Samples;
  /** Height of the baseline of lettering, whose origin is on it. */
  readonly baseline: number | undefined;
  readonly free: Freedom;

  constructor(made: MadeShape, own: Point, baseline?: number) {
    this.baseline = baseline;
    this.free = baseline === undefined ? 'all' : 'along x';
    const close = silhouetteOf({ ...made, region: simplified(made.region, closeMm) }, own);
    this.close = new IndexedSilhouette(close);
    this.rough = new IndexedSilhouette(roughened(close, roughMm));
    const box = boundsOf(this.close.solids.flat())!;
    // What stands within the outline of letters has hardly room to.
    const inner = made.lettering ? [] : gridIn(box).filter((point) => this.rough.contains(point));
    this.samples = samplesOf(this.rough.points, inner, box);
  }

  freedom(only?: 'x' | 'y'): Freedom {
    return only && this.baseline === undefined ? `along ${only}` : this.free;
  }

  roughly({ rough, field }: RoomPart, place: FitPlacement, free: Freedom): FitPlacement | undefined {
    return largestNear({ outline: this.rough, walls: rough, field, free, step: firstStep, still: roughStill }, place);
  }

  closely({ walls, field }: RoomPart, place: FitPlacement, free: Freedom): FitPlacement | undefined {
    const search = { outline: this.close, walls, field, free, step: lastStep };
    for (const share of beginnings) {
      const found = largestNear(search, { ...place, scale: share * place.scale });
      if (found) return found;
    }
    return undefined;
  }
}
