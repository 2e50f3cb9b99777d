/** What has changed since the customer approved it. */

import type { Finding } from '../core/issue.ts';
import type { Point } from '../geometry/types.ts';
import type { ApprovedTag } from '../tag/approval/read-approval.ts';
import type { Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { addedOrGone, changedTie, differenceOf } from './measures/approved-look.ts';

export const notAsApproved: Check = (tag) => {
  const { approval } = tag;
  if (!approval) return [];
  const { on, name, tags, path } = approval;
  const fault = { code: 'not-as-approved', severity: 'warning', path } as const;
  if (tags.length === 0) {
    const what = name === undefined ? 'This tag' : `“${name}”`;
    return [{ ...fault, message: `${what} is not among the tags that were approved on ${on}.` }];
  }
  let fewest: Finding[] | undefined;
  for (const was of tags) {
    const found = changesSince(tag, was).map((change): Finding => ({
      ...fault,
      ...change,
      message: `Not as approved on ${on}: ${change.message}.`,
    }));
    if (found.length === 0) return [];
    if (!fewest || found.length < fewest.length) fewest = found;
  }
  return fewest ?? [];
};

/** Messages without their beginning and their full stop. */
function changesSince(tag: Tag, was: ApprovedTag): Pick<Finding, 'message' | 'piece' | 'points' | 'places'>[] {
  const changed = tag.pieces.flatMap((piece) => {
    const before = was.pieces.find(({ id }) => id === piece.id);
    const difference = before && differenceOf(piece, tag, before);
    if (!difference) return [];
    const { words, points } = difference;
    return [{ message: words, piece: piece.id, ...placesAt(points) }];
  });
  const come = tag.pieces.filter(({ id }) => !was.pieces.some((other) => other.id === id)).map(({ title }) => title);
  const gone = was.pieces.filter(({ id }) => !tag.pieces.some((other) => other.id === id)).map(({ title }) => title);
  const tie = changedTie(tag, was);
  return [...changed, ...[...(tie ? [tie] : []), ...addedOrGone(come, gone)].map((message) => ({ message }))];
}

/** The largest difference first. */
function placesAt(points: readonly Point[]): Pick<Finding, 'points' | 'places'> {
  const places = points.map((point) => ({ points: [point] }));
  return places.length === 0 ? {} : { ...places[0]!, ...(places.length > 1 ? { places } : {}) };
}
