/** Groups findings of a kind by the shape to blame: one line of the spec has one remedy, and makes one finding. */

import type { Point } from '../../geometry/types.ts';
import type { FaultPlace, Finding, YamlPath } from '../../core/issue.ts';
import type { Piece } from '../../tag/tag.ts';
import { blame } from './blame.ts';

/**
 * Most places blamed individually, as each search goes through all outlines; in a drawing of nothing but specks, the
 * rest are attributed to the first shape.
 */
const mostBlamed = 60;

export interface CauseGroup<T> {
  readonly path: YamlPath;
  /** At least one, in the given order. */
  readonly found: T[];
}

/** Causes in the order of their first place. */
export function byCause<T>(
  piece: Piece,
  places: readonly T[],
  pointsOf: (place: T) => readonly Point[],
): readonly CauseGroup<T>[] {
  const causes = new Map<string, CauseGroup<T>>();
  let first: CauseGroup<T> | undefined;
  for (const [index, place] of places.entries()) {
    if (first && index >= mostBlamed) {
      first.found.push(place);
      continue;
    }
    const path = blame(piece, ...pointsOf(place));
    const cause = causes.get(path.join('/')) ?? { path, found: [] };
    causes.set(path.join('/'), cause);
    cause.found.push(place);
    first ??= cause;
  }
  return [...causes.values()];
}

/** The places of a finding, the worst first; `places` is only set if there are several. */
export function locationOf(places: readonly FaultPlace[]): Pick<Finding, 'points' | 'width' | 'places'> {
  const [worst] = places;
  return { ...worst, ...(places.length > 1 ? { places } : {}) };
}
