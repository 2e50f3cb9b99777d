/** Pieces for tests, made of outlines alone. */

import { normalise } from '../../../src/geometry/clipper.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import type { Stock } from '../../../src/spec/model.ts';
import type { Piece, PlacedHanger } from '../../../src/tag/tag.ts';
import { disc, roundedBox, subtract, transformed } from '../support/shapes.ts';

export const stockOf = (material?: string, thickness?: number): Stock => ({
  kerf: 0,
  minWeb: 1.5,
  ...(material === undefined ? {} : { material }),
  ...(thickness === undefined ? {} : { thickness }),
});

function pieceOf(body: Region, hanger: PlacedHanger): Piece {
  const region = normalise(subtract(body, hanger.opening));
  return { id: 'tag', title: 'Tag', region, body, sources: [], marks: [], hanger, parts: 'one', path: [] };
}

/** A body with a round hole of diameter `size`. */
export function drilled(body: Region, centre: Point, size: number): Piece {
  const opening = [disc(centre.x, centre.y, size / 2, 1e-4)];
  return pieceOf(body, { kind: 'hole', centre, opening, openingSize: size, openingLength: size, path: [] });
}

/** A body with an upright-hanging slot, `length` wide and `size` high. */
export function slotted(body: Region, { x, y }: Point, length: number, size: number): Piece {
  const opening = roundedBox(x - length / 2, y - size / 2, x + length / 2, y + size / 2, size / 2, 1e-4);
  return pieceOf(body, { kind: 'slot', centre: { x, y }, opening, openingSize: size, openingLength: length, path: [] });
}

/** The piece turned (radians) about the origin, enlarged, then moved. */
export function movedPiece(piece: Piece, angle: number, scale = 1, dx = 0, dy = 0): Piece {
  const move = (region: Region) => transformed(region, angle, scale, dx, dy);
  const hanger = piece.hanger!;
  return {
    ...piece,
    region: normalise(move(piece.region)),
    body: move(piece.body),
    hanger: {
      ...hanger,
      centre: move([[hanger.centre]])[0]![0]!,
      opening: move(hanger.opening),
      openingSize: hanger.openingSize * scale,
      openingLength: hanger.openingLength * scale,
      ...(hanger.lug ? { lug: move(hanger.lug) } : {}),
    },
  };
}
