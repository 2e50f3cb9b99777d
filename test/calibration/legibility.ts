/**
 * How well the figures of `checks/measures/readability.ts` foretell what an independent reader makes of lettering: words that it reads
 * as the font draws them, shown again as they come out of the machine.
 *
 *   npm run calibrate -- [--words N] [--faces tuned|held-out|all|unseen] [--every] [--fit] [--readings FILE] [--out FILE.md]
 *
 * `--every`: each growth at each size; otherwise at one of the four, by turns. `--readings`: what was read is kept there, a
 * line of JSON each, and not read again. `--fit`: sets the weights anew, by all of the fonts and by all but each. All of it takes
 * hours on one core.
 */

import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { doubtful, readability, unlikely } from '../../src/checks/measures/readability.ts';
import { casesOf, inkOf, letteringOf, stemOf } from './cases.ts';
import type { Case } from './cases.ts';
import { drawn } from './drawn.ts';
import { calibrationFaces, unseenFaces } from './faces.ts';
import type { CalibrationFace } from './faces.ts';
import { openReader } from './reader.ts';
import type { Reader } from './reader.ts';
import { fitted } from './fit.ts';
import { asMarkdown } from './table.ts';
import type { Judged } from './table.ts';
import { calibrationWords } from './words.ts';

/** A height at which no beam takes anything of a letter, in mm. */
const naturalMm = 12;

/**
 * Shows words to the reader, and judges what it was shown. Words it does not read as the font draws them are left out.
 * @param isTaken Which of the words are shown in which of the faces.
 */
export async function calibrate(
  words: readonly string[],
  faces: readonly CalibrationFace[],
  every: boolean,
  remembered: Remembered = { get: () => undefined, set: () => {} },
  isTaken: (word: number, face: number) => boolean = () => true,
): Promise<Judged[]> {
  const reader = await openReader();
  const judged: Judged[] = [];
  for (const [index, { name, kind, heldOut, open }] of faces.entries()) {
    const face = await open();
    const stem = stemOf(face);
    for (const [turn, word] of words.entries()) {
      if (!isTaken(turn, index)) continue;
      const natural = inkOf(letteringOf(face, word, naturalMm));
      const isRead = (key: string, read: () => Promise<boolean>) => once(`${name} ${word} ${key}`, remembered, read);
      if (!(await isRead('natural', () => reader.reads(word, drawn(natural, naturalMm))))) continue;
      for (const each of casesOf(face, stem, word, turn, !every)) {
        const read = await isRead(`${each.size} ${each.growth}`, () => readsAsMade(reader, word, each));
        judged.push({ name, kind, heldOut, size: each.size, growth: each.growth, read, ...doubtOf(each) });
      }
    }
  }
  await reader.close();
  return judged;
}

async function readsAsMade(reader: Reader, word: string, { made, size, beam }: Case): Promise<boolean> {
  return made.length > 0 && (await reader.reads(word, drawn(made, size, beam)));
}

function doubtOf({ lettering, beam }: Case): Pick<Judged, 'doubt' | 'figures'> {
  const { doubt, figures } = readability(lettering, { beam: beam.use === 'cut' ? beam.kerf : beam.spot })!;
  return { doubt, figures };
}

export interface Remembered {
  readonly get: (key: string) => boolean | undefined;
  readonly set: (key: string, read: boolean) => void;
}

async function once(key: string, remembered: Remembered, read: () => Promise<boolean>): Promise<boolean> {
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const isRead = await read();
  remembered.set(key, isRead);
  return isRead;
}

function rememberedIn(file: string): Remembered {
  const known = new Map<string, boolean>();
  const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n').filter(Boolean) : [];
  for (const line of lines) known.set(...(JSON.parse(line) as [string, boolean]));
  return {
    get: (key) => known.get(key),
    set: (key, read) => {
      appendFileSync(file, `${JSON.stringify([key, read])}\n`);
    },
  };
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      words: { type: 'string', default: String(calibrationWords.length) },
      faces: { type: 'string', default: 'held-out' },
      every: { type: 'boolean', default: false },
      fit: { type: 'boolean', default: false },
      readings: { type: 'string' },
      out: { type: 'string' },
    },
  });
  const faces =
    values.faces === 'unseen'
      ? unseenFaces
      : calibrationFaces.filter(({ heldOut }) => values.faces === 'all' || heldOut === (values.faces === 'held-out'));
  const words = calibrationWords.slice(0, Number(values.words));
  const judged = await calibrate(
    words,
    faces,
    values.every,
    values.readings === undefined ? undefined : rememberedIn(values.readings),
  );
  const table = asMarkdown(judged, words.length, { doubtful, unlikely });
  console.log(table);
  if (values.fit) console.log(fitted(judged));
  if (values.out !== undefined) writeFileSync(values.out, table);
}

if (process.argv[1] === import.meta.filename) await main();
