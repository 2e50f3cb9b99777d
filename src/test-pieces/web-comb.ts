/** Web comb: ten tongues on necks from 0.5 to 3 mm; bending and pulling them shows how narrow material may be. */

import { trimmedNumber, label, rectangle, specText } from './spec-text.ts';
import type { StockAtHand } from './test-piece.ts';

export const neckWidthsMm = [0.5, 0.7, 0.9, 1.1, 1.3, 1.5, 1.8, 2.1, 2.5, 3] as const;

const plate = { width: 140, height: 24 } as const;
const neckMm = 8;
const tongue = { width: 11, height: 14 } as const;
/** Overlap of a neck with what it joins, in mm, so that the union is sure to connect. */
const lapMm = 1;

export function webComb({ head, name }: StockAtHand): string {
  const pitch = plate.width / neckWidthsMm.length;
  const shapes: Record<string, string> = { plate: rectangle(plate.width, plate.height, { right: 0, up: 0 }) };
  const top = plate.height / 2;
  const names = neckWidthsMm.map((width, i) => {
    const right = (i - (neckWidthsMm.length - 1) / 2) * pitch;
    shapes[`neck${i + 1}`] = rectangle(width, neckMm + 2 * lapMm, { right, up: top + neckMm / 2 });
    shapes[`tongue${i + 1}`] = rectangle(tongue.width, tongue.height, {
      right,
      up: top + neckMm + tongue.height / 2,
    });
    shapes[`figure${i + 1}`] = label(trimmedNumber(width), { right, up: top - 6 });
    return i + 1;
  });
  shapes['title'] = label(`web comb, ${name}`, { right: 0, up: -top + 6 }, 3.6);
  return specText({
    title: `Web comb, ${name}`,
    comment: [
      'Finds how narrow a bridge can be. Measure the kerf first: without it, every neck comes out that much narrower. Cut the comb,',
      'flex each tongue gently and pull on it; if the sheet has a grain, cut one comb along it and one across. To enter the',
      'narrowest neck that holds, run “Tagwright: Enter a Measurement…”.',
    ],
    head,
    shapes,
    piece: [
      `body: [plate, ${names.flatMap((i) => [`neck${i}`, `tongue${i}`]).join(', ')}]`,
      `engrave: [${['title', ...names.map((i) => `figure${i}`)].join(', ')}]`,
    ],
  });
}
