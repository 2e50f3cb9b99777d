/** Findings of a kind sorted by the shape that is to blame: what one line of the spec causes has one remedy, and is one finding. */

import type { Point } from '../geometry/types.ts';
import type { FaultPlace, Finding, YamlPath } from '../core/issue.ts';
import type { Piece } from '../tag/tag.ts';
import { blame } from './blame.ts';

/** Finding out whom to blame goes through all outlines; of a drawing that is nothing but specks the rest goes to the first. */
const mostBlamed = 60;

export interface Caused<T> {
  readonly path: YamlPath;
  /** One at least, in the order given. */
  readonly found: T[];
}

/** Causes in the order in which their first place was given. */
export function byCause<T>(
  piece: Piece,
  places: readonly T[],
  pointsOf: (place: T) => readonly Point[],
): readonly Caused<T>[] {
  const causes = new Map<string, Caused<T>>();
  let first: Caused<T> | undefined;
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

/** Where a finding is seen that stands for one place or for several, the worst first. */
export function seenAt(places: readonly FaultPlace[]): Pick<Finding, 'points' | 'width' | 'places'> {
  const [worst] = places;
  return { ...worst, ...(places.length > 1 ? { places } : {}) };
}
