/**
 * Engraving ladder: lettering from 1 to 4 mm of x-height in the tag's font, and patches for the spacing of engraved
 * lines.
 */

import { yamlText } from '../language/completion/snippets.ts';
import { trimmedNumber, label, largest, nudge, rectangle, specText } from './spec-text.ts';
import type { StockAtHand } from './test-piece.ts';

export const xHeightsMm = [1, 1.2, 1.4, 1.6, 1.8, 2, 2.4, 2.8, 3.4, 4] as const;
export const spacingsMm = [0.05, 0.08, 0.1, 0.12, 0.15, 0.2] as const;

const patch = { width: 12, height: 9 } as const;
/**
 * Line spacing in x-heights: ascenders and descenders together need about as much again on either side; scripts need
 * more than others.
 */
const linesPerXHeight = 2.8;
/** Least line spacing, in mm: room for the label. */
const leastLineMm = 5.2;
/** Letters that fill in and thin strokes, round and straight. */
const sample = 'basil and sage';

export function engravingLadder({ head, name, font }: StockAtHand): string {
  const plate = { width: largest.width, height: largest.height };
  const shapes: Record<string, string> = { plate: rectangle(plate.width, plate.height, { right: 0, up: 0 }) };
  const legends: string[] = [];
  const addLegend = (key: string, text: string) => {
    shapes[key] = text;
    legends.push(key);
  };
  let up = plate.height / 2 - 11;
  for (const [i, height] of xHeightsMm.entries()) {
    const line = Math.max(leastLineMm, linesPerXHeight * height);
    up -= line / 2;
    shapes[`line${i + 1}`] =
      `{text: ${sample}, font: ${yamlText(font)}, x_height: ${trimmedNumber(height)} mm, place: {on: plate, by: x-height}, nudge: ${nudge({ right: -10, up })}}`;
    addLegend(`figure${i + 1}`, label(trimmedNumber(height), { right: -62, up }));
    up -= line / 2;
  }
  for (const [i, spacing] of spacingsMm.entries()) {
    const at = plate.height / 2 - 18 - i * 12.5;
    shapes[layerOf(spacing)] = rectangle(patch.width, patch.height, { right: 60, up: at });
    addLegend(`spacing${i + 1}`, label(trimmedNumber(spacing), { right: 47, up: at }));
  }
  addLegend('title', label(`engraving ladder, ${name}`, { right: -14, up: plate.height / 2 - 5.5 }, 3.4));
  addLegend('hatch', label('line spacing', { right: 56, up: plate.height / 2 - 9.5 }));
  shapes['legend'] = `{union: [${legends.join(', ')}]}`;
  shapes['lines'] = `{union: [${xHeightsMm.map((_, i) => `line${i + 1}`).join(', ')}]}`;
  return specText({
    title: `Engraving ladder, ${name}`,
    comment: [
      `Finds the smallest lettering you can read on this stock in ${font}, by its x-height, and the spacing of engraved lines. Each`,
      'patch is on a layer of its own: set its line spacing, by hand, to the number beside it. To enter the smallest letters you can',
      'read, and the widest spacing that still looks solid, run “Tagwright: Enter a Measurement…”.',
    ],
    head,
    output: '{engrave_layers: each}',
    shapes,
    piece: ['body: [plate]', `engrave: [legend, lines, ${spacingsMm.map(layerOf).join(', ')}]`],
  });
}

function layerOf(spacing: number): string {
  return `lines-${trimmedNumber(spacing).replace('.', '_')}`;
}
