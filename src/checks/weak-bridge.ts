/** Places where a piece is too narrow to hold: short necks, walls round holes, and whole thin strokes. */

import { findNecks } from '../geometry/necks.ts';
import type { Neck } from '../geometry/necks.ts';
import type { Point } from '../geometry/types.ts';
import type { Finding } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import { blame } from './blame.ts';
import type { Check } from './check.ts';
import { mm } from './check.ts';

export const weakBridges: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) => findNecks(piece.region, stock.minWeb).map((neck) => toFinding(piece, neck, stock.minWeb)));

function toFinding(piece: Piece, neck: Neck, minWeb: number): Finding {
  const { kind, width, ends, length, areas } = neck;
  const middle: Point = { x: (ends[0].x + ends[1].x) / 2, y: (ends[0].y + ends[1].y) / 2 };
  const least = `at least ${mm(minWeb)} is wanted`;
  const messages = {
    bridge: `Weak bridge: only ${mm(width)} of material joins parts of ${areas[0].toFixed(0)} and ${areas[1].toFixed(0)} mm²; ${least}.`,
    loop: `Weak wall: only ${mm(width)} of material between two edges; ${least}.`,
    stroke: `Thin stroke: ${length.toFixed(1)} mm long and ${mm(width)} at its narrowest; ${least}.`,
  };
  return {
    code: kind === 'stroke' ? 'thin-stroke' : 'weak-bridge',
    severity: 'warning',
    piece: piece.id,
    path: blame(piece, middle),
    points: ends,
    width,
    message: messages[kind],
  };
}
