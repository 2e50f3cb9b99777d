/** Hole comb: round holes from 1.5 to 8 mm, to find the smallest that a doubled tie passes through. */

import { disc, trimmedNumber, label, specText } from './spec-text.ts';
import type { StockAtHand } from './test-piece.ts';

export const holesMm = [1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8] as const;

const plate = { width: 140, height: 40 } as const;
/** Wall between two holes, and from the first to the edge, in mm. */
const wallMm = 7;

export function holeComb({ head, name }: StockAtHand): string {
  const shapes: Record<string, string> = {
    plate: `{rectangle: [${plate.width} mm, ${plate.height} mm], radius: 3 mm}`,
  };
  const taken = holesMm.reduce((sum, hole) => sum + hole, 0) + wallMm * (holesMm.length - 1);
  let right = -taken / 2;
  for (const [i, hole] of holesMm.entries()) {
    right += hole / 2;
    shapes[`hole${i + 1}`] = disc(hole, { right, up: 9 });
    shapes[`figure${i + 1}`] = label(trimmedNumber(hole), { right, up: -1.5 });
    right += hole / 2 + wallMm;
  }
  shapes['title'] = label(`hole comb, ${name}`, { right: 0, up: -12 }, 3.6);
  const all = holesMm.map((_, i) => i + 1);
  return specText({
    title: `Hole comb, ${name}`,
    comment: [
      'Finds the hole that your twine or ribbon needs. Fold it double, as on a tag, and push the loop through the holes. To enter',
      'the smallest hole that it passes without a needle, run “Tagwright: Enter a Measurement…”.',
    ],
    head,
    shapes,
    piece: [
      'body: [plate]',
      `cut: [${all.map((i) => `hole${i}`).join(', ')}]`,
      `engrave: [title, ${all.map((i) => `figure${i}`).join(', ')}]`,
    ],
  });
}
