/** Pieces that do not go on the sheets there are, however they are turned. */

import { boundsOf } from '../geometry/measure.ts';
import { rotation, transform } from '../geometry/affine.ts';
import type { Region } from '../geometry/types.ts';
import type { Finding } from '../issue.ts';
import type { Sheet } from '../spec/model.ts';
import type { Check } from './check.ts';

/** The turns that are tried, in degrees; nearly always the first or the second will do. */
const turns = [0, 90, ...Array.from({ length: 179 }, (_, degree) => degree + 1)];

/** Touching the margin is no fault, and neither is the last hundredth of a millimetre. */
const slackMm = 0.01;

export const tooLarge: Check = ({ sheet, stock, pieces }) => {
  if (!sheet) return [];
  const room = { width: sheet.width - 2 * sheet.margin, height: sheet.height - 2 * sheet.margin };
  return pieces.flatMap(({ id, title, region, path }): Finding[] => {
    const box = boundsOf(region);
    if (!box || fits(region, room, stock.kerf)) return [];
    const size = `${(box.maxX - box.minX).toFixed(1)} × ${(box.maxY - box.minY).toFixed(1)} mm`;
    return [
      {
        code: 'too-large',
        severity: 'error',
        piece: id,
        path,
        message: `“${title}” is ${size} and does not go on the sheet, which has room for ${room.width} × ${room.height} mm.`,
      },
    ];
  });
};

/** The beam runs half a kerf outside the piece on every side. */
function fits(region: Region, room: Pick<Sheet, 'width' | 'height'>, kerf: number): boolean {
  for (const degrees of turns) {
    const box = boundsOf(transform(region, rotation(degrees, { x: 0, y: 0 })))!;
    const across = box.maxX - box.minX + kerf - slackMm;
    const up = box.maxY - box.minY + kerf - slackMm;
    if (across <= room.width && up <= room.height) return true;
  }
  return false;
}
