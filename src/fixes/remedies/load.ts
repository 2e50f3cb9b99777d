/** Puts what a stick carries onto its piece. */

import type { Case, Remedy } from '../candidate.ts';
import { setting, valueAt } from '../candidate.ts';

/** Adds the shape that a stick carries to the body that the stick belongs to. */
export function loadOnPiece(at: Case): Remedy[] {
  const { issue, piece } = at;
  const load = valueAt(at, issue.path);
  if (!piece || issue.path.at(-1) !== 'carries' || typeof load !== 'string') return [];
  const body = [valueAt(at, [...piece.path, 'body'])].flat();
  if (!body.every((each) => typeof each === 'string')) return [];
  return [
    {
      words: `Put “${load}” on the piece`,
      candidates: setting(at, piece.path, 'body', `[${[load, ...body].join(', ')}]`),
    },
  ];
}
