/**
 * Glued pieces that would have to overlap in one layer, or that hide something that should be seen of the piece below.
 */

import type { Point } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import { mm2 } from '../core/figures.ts';
import { piecesBelow } from '../tag/pieces-below.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { bearingsOf, isUnheld } from './measures/bearing.ts';
import { blame } from './measures/blame.ts';
import type { Check } from './check.ts';
import { hiddenMarks, hiddenOpenings } from './measures/hidden-below.ts';
import { areLevel } from './measures/layers.ts';
import { areaOfAll, overlapCentre, overlapsOf } from './measures/overlap.ts';

export const piecesOverlap: Check = (tag) =>
  tag.pieces.flatMap((piece, index) => [...collisions(piece, index, tag), ...hidingFindings(piece, tag)]);

/** One finding per pair, at the later of the two. */
function collisions(piece: Piece, index: number, { pieces }: Tag): Finding[] {
  return pieces.slice(0, index).flatMap((other): Finding[] => {
    if (!areLevel(piece, other, pieces)) return [];
    const overlaps = overlapsOf(other.region, piece.region);
    const [largest] = overlaps;
    if (!largest) return [];
    const where = overlaps.length > 1 ? ` in ${overlaps.length} places` : '';
    const message = `“${piece.title}” and “${other.title}” are in the same layer and overlap (${mm2(areaOfAll(overlaps), 1)}${where}): they cannot both lie flat.`;
    return [overlapFinding(piece, 'error', overlapCentre(largest), message)];
  });
}

/** The parts of every piece below that a piece hides. */
function hidingFindings(piece: Piece, { pieces, made }: Tag): Finding[] {
  return piecesBelow(piece, pieces).flatMap((under) =>
    [...hiddenMarks(piece, under, made), ...(isOn(piece, under) ? hiddenOpenings(piece, under) : [])].map(
      ({ isSevere, point, message }) => overlapFinding(piece, isSevere ? 'warning' : 'info', point, message),
    ),
  );
}

/** Whether it lies on it at all; what only fills an opening is reported by `off-backing`. */
function isOn(piece: Piece, under: Piece): boolean {
  return !bearingsOf(piece.region, under.region).every((bearing) => bearing.isWithin && isUnheld(bearing));
}

function overlapFinding(piece: Piece, severity: Finding['severity'], point: Point, message: string): Finding {
  return { code: 'pieces-overlap', severity, piece: piece.id, path: blame(piece, point), points: [point], message };
}
