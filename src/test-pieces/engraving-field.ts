/** Squares for power × speed, each on a layer of its own: they are set by hand, and the best one is known by its number. */

import { label, largest, rectangle, specText } from './spec-text.ts';
import type { StockAtHand } from './test-piece.ts';

/** What is set by hand unless the maker says otherwise; our own choice, from hardly anything to most of what small lasers do. */
export const usualPowers: readonly string[] = ['10 %', '20 %', '30 %', '45 %', '60 %'];
export const usualSpeeds: readonly string[] = ['100 mm/s', '150 mm/s', '200 mm/s', '300 mm/s', '400 mm/s'];

export interface FieldCell {
  readonly number: number;
  readonly power: string;
  readonly speed: string;
}

const cell = { width: 13, height: 9 } as const;
const pitch = { right: 22, up: 14 } as const;

/** Row by row: one speed, all powers. */
export function fieldCells(): FieldCell[] {
  return usualSpeeds.flatMap((speed, row) =>
    usualPowers.map((power, column) => ({ number: row * usualPowers.length + column + 1, power, speed })),
  );
}

export function engravingField({ head, name }: StockAtHand): string {
  const shapes: Record<string, string> = {
    plate: rectangle(largest.width, largest.height, { right: 0, up: 0 }),
  };
  const legends: string[] = [];
  const addLegend = (key: string, text: string) => {
    shapes[key] = text;
    legends.push(key);
  };
  const [left, top] = [-30, 22];
  const cells = fieldCells().map(({ number }) => {
    const [row, column] = [Math.floor((number - 1) / usualPowers.length), (number - 1) % usualPowers.length];
    const at = { right: left + column * pitch.right, up: top - row * pitch.up };
    shapes[`cell-${number}`] = rectangle(cell.width, cell.height, at);
    addLegend(`number${number}`, label(String(number), { right: at.right - cell.width / 2 - 3.2, up: at.up }, 2.4));
    return `cell-${number}`;
  });
  usualPowers.forEach((power, i) => {
    addLegend(`power${i + 1}`, label(power.replace(' %', ''), { right: left + i * pitch.right, up: top + 8.5 }));
  });
  usualSpeeds.forEach((speed, i) => {
    addLegend(`speed${i + 1}`, label(speed.replace(' mm/s', ''), { right: left - 27, up: top - i * pitch.up }));
  });
  addLegend('title', label(`engraving field, ${name}`, { right: 0, up: largest.height / 2 - 6 }, 3.6));
  addLegend('powers', label('power, %', { right: left - 15, up: top + 8.5 }));
  addLegend('speeds', label('speed, mm/s', { right: left - 26, up: top + 4.6 }));
  shapes['legend'] = `{union: [${legends.join(', ')}]}`;
  return specText({
    title: `Engraving field, ${name}`,
    comment: [
      'Finds power and speed for engraving. Every square is on a layer of its own, named after its number: on the machine, set it to',
      'the power of its column and the speed of its row by hand. Engrave the layer “legend” with the settings you use now. To enter',
      'the number of the square you like best, run “Tagwright: Enter a Measurement…”.',
    ],
    head,
    output: '{engrave_layers: each}',
    shapes,
    piece: ['body: [plate]', `engrave: [legend, ${cells.join(', ')}]`],
  });
}
