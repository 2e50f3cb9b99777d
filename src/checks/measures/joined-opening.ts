/** Finds what a hanger's opening has run into, so that it is no longer a hole of its own. */

import { intersection } from '../../geometry/clipper.ts';
import { area, contains, ringArea } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Piece, PlacedHanger } from '../../tag/tag.ts';
import { perRegionPair } from './per-region-pair.ts';

/** Overlaps smaller than this, in mm², only touch. */
export const touchingMm2 = 0.02;

/**
 * A hole that exceeds the opening by no more than this share is the opening itself: what else is in it is a nick that
 * the tie does not slip into (our own judgement).
 */
const ownShare = 0.05;

/** An opening that loses this share to others no longer exists. */
const wholly = 0.98;

/** State of an opening in its piece. `told`: it runs into the opening of a later hanger, which reports it. */
export type OpeningState = 'closed' | 'beside' | 'open' | 'reported' | RunsInto;

export interface RunsInto {
  /** The thing it runs into, in words: the cut “window”. */
  readonly what: string;
  /** Shared area, in mm². */
  readonly shared: number;
  readonly isWhole: boolean;
}

interface OtherOpening extends Pick<RunsInto, 'what'> {
  readonly region: Region;
  readonly isLater?: boolean;
}

/**
 * The state of a hanger's opening; `closed` if it has a hole of the piece to itself. A hole of the body in the same
 * place is its own.
 */
export function stateOf(piece: Piece, hanger: PlacedHanger): OpeningState {
  const { opening, centre } = hanger;
  const hole = piece.region.find((ring) => ringArea(ring) < 0 && contains([ring], centre));
  const own = area(opening);
  if (hole && -ringArea(hole) <= (1 + ownShare) * own) return 'closed';
  const other = hole && mostShared(otherOpenings(piece, hanger), opening);
  if (other) return other.isLater ? 'reported' : runsInto(other.what, other.shared, own);
  // The disc of a ring goes all round its hole.
  const missing = hanger.lug ? 0 : own - sharedArea(opening, piece.body);
  if (missing > own - touchingMm2) return 'beside';
  if (!hole) return 'open';
  return hanger.lug ? 'closed' : runsInto('an opening of the body', missing, own);
}

function runsInto(what: string, shared: number, own: number): RunsInto {
  return { what, shared, isWhole: shared > wholly * own };
}

function otherOpenings({ sources, hangers }: Piece, own: PlacedHanger): OtherOpening[] {
  const cuts = sources.filter(({ use }) => use === 'cut');
  const at = hangers.indexOf(own);
  return [
    ...cuts.map(({ region, shape }) => ({
      region,
      what: shape.name === undefined ? 'a shape that is cut out' : `the cut “${shape.name}”`,
    })),
    ...hangers.flatMap(({ kind, opening }, index) =>
      index === at ? [] : { region: opening, what: `the other ${kind}`, isLater: index > at },
    ),
  ];
}

/** The one that takes most of the opening, if any. */
function mostShared(
  others: readonly OtherOpening[],
  opening: Region,
): (OtherOpening & { readonly shared: number }) | undefined {
  return others
    .map((other) => ({ ...other, shared: sharedArea(opening, other.region) }))
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared)[0];
}

const sharedArea = perRegionPair((opening, other) => area(intersection(opening, other)));
