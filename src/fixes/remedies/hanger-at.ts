/** The hanger that an issue is about: as it is written, and where it has been put. */

import { samePath } from '../../core/values.ts';
import { distance } from '../../geometry/measure.ts';
import type { Hanger } from '../../spec/model/model.ts';
import type { PlacedHanger } from '../../tag/tag.ts';
import type { Case } from '../candidate.ts';

export function hangerAt({ model, issue }: Case): Hanger | undefined {
  return model.pieces.flatMap(({ hangers }) => hangers).find(({ path }) => samePath(path, issue.path));
}

/** Where it has been put; of a row, the one that the issue is about. */
export function placedAt({ piece, issue }: Case): PlacedHanger | undefined {
  const placed = piece?.hangers.filter(({ path }) => samePath(path, issue.path)) ?? [];
  const seen = issue.points?.[0];
  const off = ({ centre }: PlacedHanger) => (seen ? distance(centre, seen) : 0);
  return placed.reduce<PlacedHanger | undefined>((a, b) => (a && off(a) <= off(b) ? a : b), undefined);
}
