/** `compensate: false`: the beam runs on the drawn line, and takes half a kerf off the part. */

import { difference, offset, union } from '../geometry/clipper.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Region } from '../geometry/types.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import { lessKerf } from './asked-width.ts';
import { stockOf } from './by-stock.ts';
import type { Resources } from './resources.ts';
import type { Piece } from './tag.ts';

/** Width the beam removes along outer cuts and along inner ones, in mm. */
export function kerfOf({ kerf, kerfs }: Stock): { readonly outer: number; readonly inner: number } {
  return kerfs ?? { outer: kerf, inner: kerf };
}

/** The region grown by `outer` mm along outlines and by `inner` along holes, which shrink; thinned if negative. */
export function offsetByKind(region: Region, { outer, inner }: { outer: number; inner: number }): Region {
  if (outer === inner) return offset(region, outer);
  // Part by part, so that a part inside a hole is not cut off with the hole.
  const parts = partsOf(region).map(([outline, ...holes]) => {
    const openings = holes.map((ring) => [...ring].reverse());
    return difference(offset([outline!], outer), [offset(openings, -inner)]);
  });
  return union(parts);
}

/**
 * The pieces as they come out: thinner by half a kerf all round, their openings wider; pieces that vanish are reported.
 */
export function cutOnTheLine(
  pieces: readonly Piece[],
  stock: Stock,
  { report }: Pick<Resources, 'report'>,
): readonly Piece[] {
  return pieces.flatMap((piece): Piece[] => {
    const { outer, inner } = kerfOf(stockOf(piece, { stock }));
    if (outer === 0 && inner === 0) return [piece];
    const region = offsetByKind(piece.region, { outer: -outer / 2, inner: -inner / 2 });
    if (region.length === 0) {
      const message = `Cut on the line, nothing is left of “${piece.title}”: it is no wider than the kerf.`;
      report({ code: 'empty-shape', severity: 'error', path: ['output', 'compensate'], message });
      return [];
    }
    const hangers = piece.hangers.map((hanger) => ({
      ...hanger,
      opening: offset(hanger.opening, inner / 2),
      openingSize: hanger.openingSize + inner,
      openingLength: hanger.openingLength + inner,
      ...(hanger.wall === undefined ? {} : { wall: hanger.wall - (outer + inner) / 2 }),
    }));
    const asked = lessKerf(piece.asked ?? [], Math.max(outer, inner));
    return [{ ...piece, region, cutLine: piece.region, asked, hangers }];
  });
}
