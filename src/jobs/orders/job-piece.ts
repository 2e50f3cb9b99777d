/** A piece of a job, one for each copy. */

import type { Region } from '../../geometry/types.ts';
import type { Piece } from '../../tag/tag.ts';
import { takenBy } from './taken-by.ts';
import type { JobTag } from './work.ts';

export interface JobPiece {
  readonly of: JobTag;
  /** Number of the copy, from 1. */
  readonly copy: number;
  readonly piece: Piece;
  /** Area enclosed by the beam, including marks beyond the edge; made whenever it is asked for. */
  readonly region: Region;
}

export function jobPiece(of: JobTag, copy: number, piece: Piece): JobPiece {
  return {
    of,
    copy,
    piece,
    get region() {
      return takenBy(piece, of.tag);
    },
  };
}

/** A stable id, unique within the job. */
export function pieceId({ of: { spec, order, label }, copy, piece }: JobPiece): string {
  return JSON.stringify([spec, order, label, copy, piece.id]);
}
