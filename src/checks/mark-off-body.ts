/** Engraving and score lines that run beyond the edge of their piece: they would be burnt into the bed, or into the next piece. */

import { difference } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Finding } from '../issue.ts';
import type { Mark, Piece } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { mm } from './check.ts';
import { remembered } from './remembered.ts';

/** What lies beyond by less is where the two merely touch, in mm². */
const touchingMm2 = 0.02;

export const markOffBody: Check = ({ pieces }) =>
  pieces.flatMap((piece) => piece.marks.flatMap((mark) => offBody(mark, piece)));

/** The hanger's opening counts as body: what crosses it is `hole-blocked`. */
function offBody(mark: Mark, piece: Piece): Finding[] {
  const off = beyond(mark.region, piece.region).flatMap((part) => {
    const { hanger } = piece;
    return hanger ? difference(part, [hanger.opening]) : part;
  });
  const parts = partsOf(off).filter((part) => area(part) > touchingMm2);
  const [largest] = parts;
  if (!largest) return [];
  const what = mark.operation === 'engrave' ? 'Engraving' : 'A score line';
  const box = boundsOf(largest)!;
  const size = `${mm(box.maxX - box.minX)} × ${mm(box.maxY - box.minY)}`;
  const places = parts.length === 1 ? size : `${parts.length} places, the largest ${size}`;
  return [
    {
      code: 'mark-off-body',
      severity: 'warning',
      piece: piece.id,
      path: mark.path,
      points: [boxCentre(box)],
      message: `${what} runs beyond the edge of “${piece.title}” (${places}).`,
    },
  ];
}

const beyond = remembered((mark, region) => partsOf(difference(mark, [region])));
