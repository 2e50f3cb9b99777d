/** Columns by which tables say how many are wanted, whatever they are called. */

import { isMeantAs } from '../schema/suggest.ts';

export const quantityColumn = 'quantity';

/** Words of shops and spreadsheets for it, in letters alone. */
const sure: ReadonlySet<string> = new Set('quantity qty qnty quant count copies pcs howmany'.split(' '));
/** The same, unless they number the lines or say something else. */
const likely: ReadonlySet<string> = new Set('number numberof no nr num amount pieces units'.split(' '));

/** The letters of a column's name: “Order No.” is the same word as “order_no”. */
export function lettersIn(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}]/gu, '');
}

/** `cells`: all of the column. */
export function saysHowMany(name: string, cells: readonly string[]): 'surely' | 'probably' | undefined {
  const word = lettersIn(name);
  const isSure = sure.has(word) || isMeantAs(word, quantityColumn);
  if (!isSure && !likely.has(word)) return undefined;
  const written = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (written.length === 0 || !written.every((cell) => /^\d{1,4}$/.test(cell))) return undefined;
  if (isSure) return 'surely';
  const isRunning = written.every((cell, index) => Number(cell) === Number(written[0]) + index);
  return isRunning && written.length > 1 ? undefined : 'probably';
}
