/** Lettering that stands on the same line on all tags: the letters that this line has room for. */

import { filled } from '../batch/batch.ts';
import type { BatchRow } from '../batch/batch.ts';
import type { Evenly } from '../model/shape-model.ts';
import type { RoomFor } from '../types.generated.ts';
import type { Problems } from './problems.ts';

/** By rows and text: each row of a batch is read with all of them. */
const known = new WeakMap<readonly BatchRow[], Map<string, Evenly>>();

/** `text` as it is written and as the row that is read has it. `room`: what the spec says itself; the schema check leaves holes. */
export function evenlyOf(
  written: string,
  text: string,
  { row }: Pick<Problems, 'row'>,
  room: Partial<RoomFor> = {},
): Evenly {
  const { letters, longest } = room;
  if (letters !== undefined && longest !== undefined) return { letters, longest };
  const rows = row?.batch.rows ?? [];
  // By itself, it stands as the words of another spec would.
  if (rows.length < 2) return hasSmallLetters(text) ? 'any words' : lettersOf([text]);
  const texts = known.get(rows) ?? new Map<string, Evenly>();
  known.set(rows, texts);
  const here = texts.get(written) ?? lettersOf(rows.flatMap((each) => filled(written, each, () => undefined) ?? []));
  texts.set(written, here);
  return here;
}

const lineBreak = /\r\n|[\n\v\f\r\u0085\u2028\u2029]/;

function lettersOf(texts: readonly string[]): Evenly {
  const letters = texts
    .flatMap((text) => text.normalize('NFC').split(lineBreak))
    .map((line) => Array.from(line.trim()));
  return {
    letters: [...new Set(letters.flat())]
      .filter((letter) => letter.trim() !== '')
      .sort()
      .join(''),
    longest: letters.reduce((most, { length }) => Math.max(most, length), 0),
  };
}

/** Whether it has small letters, and is not capitals, digits and signs alone. */
export const hasSmallLetters = (text: string): boolean => /\p{Ll}/u.test(text);
