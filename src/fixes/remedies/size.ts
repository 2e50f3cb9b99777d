/** Remedies that make a piece fit the sheet. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, setting, specLength } from '../candidate.ts';

/** Shrinks the shapes of the body that have a size, each in the proportion by which the piece is too large. */
export function smallerPiece(at: Case): Remedy[] {
  const { piece, model, tag } = at;
  const box = piece && boundsOf(piece.region);
  const body = model.pieces.find(({ id }) => id === piece?.id)?.body ?? [];
  if (!box || !tag.sheet) return [];
  const { width, height, margin } = tag.sheet;
  const room = [width - 2 * margin, height - 2 * margin].map((side) => side - tag.stock.kerf) as [number, number];
  const size = [box.maxX - box.minX, box.maxY - box.minY] as [number, number];
  const factor = Math.max(
    Math.min(room[0] / size[0], room[1] / size[1]),
    Math.min(room[0] / size[1], room[1] / size[0]),
  );
  const shapes = body.map(({ shape }) => {
    const { width: wide, height: high } = shape.modifiers;
    const key = wide === undefined ? 'height' : 'width';
    const before = wide ?? high;
    return {
      words: `Make ${shapeTitle(shape)} smaller`,
      candidates:
        before === undefined
          ? []
          : [1, 0.97, 0.92, 0.85].flatMap((share) => {
              const after = Math.floor(before * factor * share * 10) / 10;
              return after > 0 ? setting(at, shape.path, key, specLength(after, tag.units)) : [];
            }),
    };
  });
  return [...shapes, ...wholeSmaller(at, size[0] * factor)];
}

/** Shrinks the whole piece, with its lettering and marks; the opening and its wall keep their size. */
function wholeSmaller(at: Case, width: number): Remedy[] {
  const piece = at.model.pieces.find(({ id }) => id === at.piece?.id);
  if (!piece || piece.glueTo !== undefined || piece.size?.side === 'height') return [];
  const candidates = [1, 0.98, 0.95, 0.9].flatMap((share) => {
    const mm = Math.floor(width * share);
    return mm > 0 ? setting(at, piece.path, 'width', specLength(mm, at.tag.units)) : [];
  });
  return [{ words: `Make “${piece.title}” smaller as a whole`, candidates }];
}
