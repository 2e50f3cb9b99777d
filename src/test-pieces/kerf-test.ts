/**
 * Kerf test: three slots and the pieces that drop out of them. They differ by twice the kerf, however exactly the
 * machine moves.
 */

import { label, rectangle, specText } from './spec-text.ts';
import type { StockAtHand } from './test-piece.ts';

const slots = [
  { width: 10, right: -34 },
  { width: 20, right: -11 },
  { width: 30, right: 23 },
] as const;

export function kerfTest({ head, name }: StockAtHand): string {
  const shapes: Record<string, string> = { plate: '{rectangle: [120 mm, 34 mm], radius: 3 mm}' };
  for (const { width, right } of slots) {
    shapes[`slot${width}`] = rectangle(width, 10, { right, up: 8 });
    shapes[`figure${width}`] = label(String(width), { right, up: -1.5 }, 3.6);
  }
  shapes['title'] = label(`kerf test, ${name}, this side up`, { right: 0, up: -11 }, 3.4);
  return specText({
    title: `Kerf test, ${name}`,
    comment: [
      'Finds the kerf. The beam runs on the drawn lines. Brush off the char, then measure every slot, and the piece that fell out',
      'of it, on the labelled face, with the tips of the caliper just below the edge: cuts taper, and that face was towards the',
      'beam. Then run “Tagwright: Enter a Measurement…”.',
    ],
    head,
    output: '{compensate: false}',
    shapes,
    piece: [
      'body: [plate]',
      `cut: [${slots.map(({ width }) => `slot${width}`).join(', ')}]`,
      `engrave: [title, ${slots.map(({ width }) => `figure${width}`).join(', ')}]`,
    ],
  });
}
