/** Lettering, marks or glued pieces in the way of the tie. */

import { intersection } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import { mm2 } from '../spec/figures.ts';
import type { Finding } from '../issue.ts';
import type { Piece, PlacedHanger, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { remembered } from './remembered.ts';

/** Engraving over more of the opening than this surrounds it: a field that the hole is set in, and no lettering in its way. */
const surrounding = 0.98;

/** Overlaps below this are where the two merely touch, in mm². */
const touchingMm2 = 0.02;

export const holeBlocked: Check = (tag) =>
  tag.pieces.flatMap((piece) => piece.hangers.flatMap((hanger) => blockedHole(hanger, piece, tag)));

function blockedHole(hanger: PlacedHanger, piece: Piece, { pieces }: Tag): Finding[] {
  const findings: Finding[] = [];
  const report = (severity: 'error' | 'warning', overlap: Region, message: string): void => {
    const box = boundsOf(overlap);
    const covered = area(overlap);
    if (!box || covered < touchingMm2) return;
    findings.push({
      code: 'hole-blocked',
      severity,
      piece: piece.id,
      path: hanger.path,
      points: [boxCentre(box)],
      message: `${message} (${mm2(covered, 1)}).`,
    });
  };
  if (hanger.kind === 'ring') {
    // A ring set deeper than it touches is meant to bite: only what goes past the middle of the hole is in the way of the tie.
    const bite = shared(hanger.opening, piece.body);
    if (area(bite) > area(hanger.opening) / 2)
      report('warning', bite, 'The hole of the ring is cut mostly out of the body');
  }
  for (const mark of piece.marks) {
    const what = mark.operation === 'engrave' ? 'Engraving' : 'A score line';
    const crossed = shared(hanger.opening, mark.region);
    if (mark.operation === 'engrave' && area(crossed) > surrounding * area(hanger.opening)) continue;
    report('warning', crossed, `${what} runs across the hole`);
  }
  for (const other of pieces) {
    if (other.glueTo === piece.id)
      report('error', shared(hanger.opening, other.region), `“${other.title}”, glued on, covers the hole`);
  }
  return findings;
}

const shared = remembered((opening, other) => intersection(opening, other));
