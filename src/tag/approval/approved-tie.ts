/** What a tag hangs on, as a customer reads it on a proof. */

import type { Tag } from '../tag.ts';
import type { ApprovedTie } from './types.generated.ts';

/** Without a kind where the spec names none; `undefined` for a tag that does not hang, or on a nail. */
export function approvedTie({ pieces, tie }: Pick<Tag, 'pieces' | 'tie'>): ApprovedTie | undefined {
  if (!pieces.some(({ hangers }) => hangers.some(({ kind }) => kind !== 'keyhole'))) return undefined;
  return tie ? { kind: tie.kind, size: Number(tie.size.toFixed(2)) } : {};
}
