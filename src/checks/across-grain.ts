/** Long narrow pieces of solid wood with the grain across them, where wood snaps at a touch. */

import { mm } from '../core/figures.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import { isSolidWood } from '../spec/model/min-web-defaults.ts';
import { isGrainUpright, otherGrain } from '../tag/grain-direction.ts';
import type { Check } from './check.ts';

/**
 * A piece counts from so many times its width and its thickness in length. Across its grain wood bears about a twentieth of what it bears along
 * it, but what is stouter than that is sold every day. Our own judgement.
 */
const longFrom = { widths: 3, thicknesses: 20 } as const;

/** Only the longest piece of a stock is reported: one sheet is turned for all. */
export const acrossGrain: Check = (tag) => {
  const { stock, pieces } = tag;
  if (!isSolidWood(stock.material) || stock.look?.grain === 'none') return [];
  const long = pieces.flatMap((piece) => {
    const box = boundsOf(piece.region);
    // What is glued on a piece, or carries others, does not bend by itself.
    if (!box || piece.glueTo !== undefined || pieces.some(({ glueTo }) => glueTo === piece.id)) return [];
    const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
    const [along, across] = isGrainUpright(piece, tag) ? [high, wide] : [wide, high];
    const isLong = across >= longFrom.widths * along && across >= longFrom.thicknesses * (stock.thickness ?? 0);
    return isLong ? [{ piece, box, across, along }] : [];
  });
  const [worst] = long.sort((a, b) => b.across - a.across);
  if (!worst) return [];
  const { piece, box, across, along } = worst;
  const isStated = stock.look?.grain !== undefined;
  return [
    {
      code: 'across-grain',
      severity: isStated ? 'warning' : 'info',
      piece: piece.id,
      path: piece.path,
      points: [boxCentre(box)],
      width: along,
      message: `“${piece.title}” is ${mm(across, 0)} long and ${mm(along, 0)} wide, and the grain runs across it${isStated ? '' : ' unless the stock says otherwise'}: solid wood snaps there. Lay the sheet so that the grain runs along it, and say so in the stock: “look: {grain: ${otherGrain(piece, tag)}}”.`,
    },
  ];
};
