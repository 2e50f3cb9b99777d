/** Parts that fall out of a piece: the dots of letters, letters that do not touch, counters of letters cut through a plate. */

import { area, boundsOf, boxCentre, contains } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Finding } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import { mm2, mmByMm } from '../spec/figures.ts';
import { blame } from './blame.ts';
import type { Check } from './check.ts';

/** Listed one by one up to here; a text whose letters all fall apart is one finding. */
const mostListed = 6;

export const looseParts: Check = ({ pieces }) =>
  pieces.flatMap((piece) => (piece.parts === 'many' ? [] : loosePartsOf(piece)));

function loosePartsOf(piece: Piece): Finding[] {
  const parts = partsOf(piece.region);
  const held = parts.find((part) => holds(part, piece)) ?? parts[0];
  const loose = parts.filter((part) => part !== held);
  if (loose.length > mostListed) {
    const message = `“${piece.title}” falls into ${parts.length} parts. Join them, put them on a backing, or say “parts: many”.`;
    return [finding(piece, loose[0]!, message)];
  }
  return loose.map((part) => {
    const box = boundsOf(part)!;
    const size = mmByMm(box.maxX - box.minX, box.maxY - box.minY, 1);
    return finding(
      piece,
      part,
      `A part of “${piece.title}” (${size}, ${mm2(area(part), 1)}) is joined to nothing and falls out.`,
    );
  });
}

/** The part that stays is the one that hangs. */
function holds(part: Region, { hangers }: Piece): boolean {
  return hangers.some(({ centre }) => part.some((ring) => contains([ring], centre)));
}

function finding(piece: Piece, part: Region, message: string): Finding {
  const box = boundsOf(part)!;
  const middle = boxCentre(box);
  const at: Point = contains(part, middle) ? middle : part[0]![0]!;
  return {
    code: 'loose-part',
    severity: 'error',
    piece: piece.id,
    path: blame(piece, part[0]![0]!),
    points: [at],
    message,
  };
}
