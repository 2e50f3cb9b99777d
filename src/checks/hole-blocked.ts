/** Lettering, marks or glued pieces in the way of the tie. */

import { intersection, offset } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import { mm, mm2 } from '../spec/figures.ts';
import type { Finding } from '../issue.ts';
import type { Piece, PlacedHanger, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { lineWithin } from './line-within.ts';
import { remembered } from './remembered.ts';

/** Engraving over more of the opening than this surrounds it: a field that the hole is set in, and no lettering in its way. */
const surrounding = 0.98;

/** Overlaps below this are where the two merely touch, in mm². */
const touchingMm2 = 0.02;

/** A score line no further inside the hole than this runs along its edge, in mm. */
const touchingMm = 0.05;

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
  // How deep `sink` sets it is its maker's word.
  if (hanger.kind === 'ring' && !((hanger.sink ?? 0) > 0)) {
    // A ring set deeper than it touches is meant to bite: only what goes past the middle of the hole is in the way of the tie.
    const bite = shared(hanger.opening, piece.body);
    if (area(bite) > area(hanger.opening) / 2)
      report('warning', bite, 'The hole of the ring is cut mostly out of the body');
  }
  for (const mark of piece.marks) {
    if (mark.operation === 'score') {
      const { length, at } = scored(hanger.opening, mark.region);
      if (!at) continue;
      findings.push({
        code: 'hole-blocked',
        severity: 'warning',
        piece: piece.id,
        path: hanger.path,
        points: [at],
        message: `A score line runs across the hole (${mm(length, 1)} of it).`,
      });
      continue;
    }
    const crossed = shared(hanger.opening, mark.region);
    if (area(crossed) > surrounding * area(hanger.opening)) continue;
    report('warning', crossed, 'Engraving runs across the hole');
  }
  for (const other of pieces) {
    if (other.glueTo === piece.id)
      report('error', shared(hanger.opening, other.region), `“${other.title}”, glued on, covers the hole`);
  }
  return findings;
}

/** Of a score line, which is its outline: a border round the hole is in nobody's way. */
const scored = remembered((opening, line) => lineWithin(line, offset(opening, -touchingMm)));

const shared = remembered((opening, other) => intersection(opening, other));
