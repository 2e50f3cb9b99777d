/**
 * An independent reader of lettering: tesseract.js with the English data that its authors publish (LSTM model, whole numbers,
 * tessdata 4.0.0), from their packages alone.
 */

import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { createWorker, OEM, PSM } from 'tesseract.js';

const packages = createRequire(import.meta.url);
const data = join(dirname(packages.resolve('@tesseract.js-data/eng/package.json')), '4.0.0_best_int');

/** A picture of a word whose small letters are about so many pixels high. */
export type DrawAt = (xHeightPx: number) => Uint8Array;

export interface Reader {
  /** Whether any of its readings says the word; it stops at the first that does. */
  reads(word: string, draw: DrawAt): Promise<boolean>;
  /** All that it makes of it. */
  readings(draw: DrawAt): Promise<string[]>;
  close(): Promise<void>;
}

/** It is good at letters of 16 to 40 pixels, and what it does not make out as one line it may as one word. */
const ways = [
  { px: 28, mode: PSM.SINGLE_LINE },
  { px: 16, mode: PSM.SINGLE_LINE },
  { px: 20, mode: PSM.RAW_LINE },
  { px: 40, mode: PSM.RAW_LINE },
  { px: 20, mode: PSM.SINGLE_WORD },
  { px: 28, mode: PSM.SINGLE_BLOCK },
] as const;

export async function openReader(): Promise<Reader> {
  const worker = await createWorker('eng', OEM.LSTM_ONLY, { langPath: data, gzip: true, cacheMethod: 'none' });
  let mode: PSM | undefined;
  const read = async (draw: DrawAt, way: (typeof ways)[number]): Promise<string> => {
    if (mode !== way.mode) await worker.setParameters({ tessedit_pageseg_mode: way.mode });
    mode = way.mode;
    const { data: found } = await worker.recognize(Buffer.from(draw(way.px)));
    return found.text.trim();
  };
  return {
    async reads(word, draw) {
      for (const way of ways) if (isSame(word, await read(draw, way))) return true;
      return false;
    },
    async readings(draw) {
      const all: string[] = [];
      for (const way of ways) all.push(await read(draw, way));
      return all;
    },
    close: async () => {
      await worker.terminate();
    },
  };
}

/** Letters that only their neighbours tell apart, in most fonts. */
const lookalikes: readonly (readonly [RegExp, string])[] = [
  [/[l|!1]/g, 'i'],
  [/0/g, 'o'],
];

/** Without accents, case and marks between words, which a reader may miss and still read the name. */
function folded(text: string): string {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return lookalikes.reduce((all, [from, to]) => all.replace(from, to), plain).replace(/[^\p{L}\p{N}]/gu, '');
}

/** One letter of five, and two of nine, may be missed or taken for another: nobody takes the name for another. Our own judgement. */
export function isSame(word: string, reading: string): boolean {
  const { length } = folded(word);
  return editsFrom(word, reading) <= (length < 5 ? 0 : length < 9 ? 1 : 2);
}

/** How many letters a reading misses, adds or takes for others. */
export function editsFrom(word: string, reading: string): number {
  return editDistance(folded(word), folded(reading));
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}
