/** Writes the record of what a customer approved. */

import type { Tag } from '../tag.ts';
import { approvedPiece } from './approved-piece.ts';
import { approvedTie } from './approved-tie.ts';
import type { ApprovalRecord, ApprovedTag } from './types.generated.ts';

/** `name`: in a batch, the cell that names the tag's row. */
export function approvedTag(tag: Pick<Tag, 'pieces' | 'stock' | 'tie'>, name: string | undefined): ApprovedTag {
  const tie = approvedTie(tag);
  return {
    ...(name === undefined ? {} : { name }),
    ...(tie ? { hangs_on: tie } : {}),
    pieces: tag.pieces.map((piece) => approvedPiece(piece, tag)),
  };
}

/** A value a line, so that tools which compare files by lines show what has changed. */
export function approvalText({ on, note, tags }: { on: string; note: string; tags: readonly ApprovedTag[] }): string {
  const record: ApprovalRecord = {
    tagwright_approval: 1,
    approved_on: on,
    ...(note === '' ? {} : { note }),
    tags: [...tags],
  };
  return `${JSON.stringify(record, null, 1)}\n`;
}
