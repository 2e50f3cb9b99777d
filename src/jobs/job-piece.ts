/** A piece of a job, once for each time it is cut. */

import type { Region } from '../geometry/types.ts';
import type { Piece } from '../tag/tag.ts';
import type { PiecePaths } from '../toolpath/piece-paths.ts';
import type { JobTag } from './work.ts';

export interface JobPiece {
  readonly of: JobTag;
  /** Which of its copies, from 1. */
  readonly copy: number;
  readonly piece: Piece;
  readonly lines: PiecePaths;
  /** What the beam encloses, marks beyond the edge included; the same object for every copy. */
  readonly region: Region;
}

/** The same whenever the job has this piece, and that of no other. */
export function pieceId({ of: { spec, order, label }, copy, piece }: JobPiece): string {
  return JSON.stringify([spec, order, label, copy, piece.id]);
}
