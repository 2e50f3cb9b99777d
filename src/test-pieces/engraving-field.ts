/**
 * Engraving field: squares for power × speed, each on a layer of its own. The values are set by hand, and the best
 * square is identified by its number.
 */

import { label, largest, rectangle, specText } from './spec-text.ts';
import type { FieldValues, StockAtHand } from './test-piece.ts';

/** Default values to set by hand; our own choice, from hardly visible to about the most of a small laser. */
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
export function fieldCells(
  { powers, speeds }: FieldValues = { powers: usualPowers, speeds: usualSpeeds },
): FieldCell[] {
  return speeds.flatMap((speed, row) =>
    powers.map((power, column) => ({ number: row * powers.length + column + 1, power, speed })),
  );
}

/** Most columns, or rows; as many as the default has. */
const mostValues = 5;
const units = { powers: { text: '%', most: 100 }, speeds: { text: 'mm/s', most: 5000 } } as const;

/** Parses two to five values such as `10, 20, 30 %`; returns a problem if there are none. */
export function fieldValues(
  what: keyof FieldValues,
  typed: string,
): { readonly values: readonly string[] } | { readonly problem: string } {
  const { text, most } = units[what];
  const figures = typed
    .replaceAll(text, ' ')
    .split(/[\s,;]+/)
    .filter((figure) => figure !== '');
  const isGood = (figure: string) => /^\d+(\.\d+)?$/.test(figure) && Number(figure) > 0 && Number(figure) <= most;
  const isWhole = figures.length >= 2 && figures.length <= mostValues && new Set(figures).size === figures.length;
  return isWhole && figures.every(isGood)
    ? { values: figures.map((figure) => `${figure} ${text}`) }
    : { problem: `Write two to five different ${what} of at most ${most} ${text}, such as ${usualFor(what)}.` };
}

/** The default, as it could be typed. */
export function usualFor(what: keyof FieldValues): string {
  const { text } = units[what];
  const usual = what === 'powers' ? usualPowers : usualSpeeds;
  return `${usual.map((each) => each.replace(` ${text}`, '')).join(', ')} ${text}`;
}

export function engravingField({ head, name, field }: StockAtHand): string {
  const { powers, speeds } = field ?? { powers: usualPowers, speeds: usualSpeeds };
  // The meaning of the numbers is known elsewhere for the default squares only.
  const isUsual = powers.join() === usualPowers.join() && speeds.join() === usualSpeeds.join();
  const shapes: Record<string, string> = {
    plate: rectangle(largest.width, largest.height, { right: 0, up: 0 }),
  };
  const legends: string[] = [];
  const addLegend = (key: string, text: string) => {
    shapes[key] = text;
    legends.push(key);
  };
  const [left, top] = [-30, 22];
  const cells = fieldCells({ powers, speeds }).map(({ number }) => {
    const [row, column] = [Math.floor((number - 1) / powers.length), (number - 1) % powers.length];
    const at = { right: left + column * pitch.right, up: top - row * pitch.up };
    shapes[`cell-${number}`] = rectangle(cell.width, cell.height, at);
    if (isUsual)
      addLegend(`number${number}`, label(String(number), { right: at.right - cell.width / 2 - 3.2, up: at.up }, 2.4));
    return `cell-${number}`;
  });
  powers.forEach((power, i) => {
    addLegend(`power${i + 1}`, label(power.replace(' %', ''), { right: left + i * pitch.right, up: top + 8.5 }));
  });
  speeds.forEach((speed, i) => {
    addLegend(`speed${i + 1}`, label(speed.replace(' mm/s', ''), { right: left - 27, up: top - i * pitch.up }));
  });
  addLegend('title', label(`engraving field, ${name}`, { right: 0, up: largest.height / 2 - 6 }, 3.6));
  addLegend('powers', label('power, %', { right: left - 15, up: top + 8.5 }));
  addLegend('speeds', label('speed, mm/s', { right: left - 26, up: top + 4.6 }));
  shapes['legend'] = `{union: [${legends.join(', ')}]}`;
  return specText({
    title: `Engraving field, ${name}`,
    comment: [
      `Finds power and speed for engraving. Every square is on a layer of its own, ${isUsual ? 'named after its number' : 'counted row by row'}: on`,
      'the machine, set it to the power of its column and the speed of its row by hand. Engrave the layer “legend” with the settings',
      `you use now. To enter ${isUsual ? 'the number' : 'the power and speed'} of the square you like best, run “Tagwright: Enter a Measurement…”.`,
    ],
    head,
    output: '{engrave_layers: each}',
    shapes,
    piece: ['body: [plate]', `engrave: [legend, ${cells.join(', ')}]`],
  });
}
