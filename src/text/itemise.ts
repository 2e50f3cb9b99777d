/**
 * Divides a line of text into runs that one font file can shape: one file, one direction, one script.
 *
 * The unit is the grapheme, what a reader calls a letter: a base with its accents stays in one run, whether it was typed as
 * one character or as several. Direction follows the Unicode Bidirectional Algorithm (UAX #9).
 */

import bidiFactory from 'bidi-js';

export interface Coverage {
  covers(codePoint: number): boolean;
}

export interface Run {
  /** UTF-16 offsets in `ItemisedLine.text`, `end` exclusive. */
  readonly start: number;
  readonly end: number;
  /** Which file shapes it; `undefined` when none has the letter, and the run is that one grapheme. */
  readonly file: number | undefined;
  /** Odd: right to left. */
  readonly level: number;
}

export interface ItemisedLine {
  /** The line as it is shaped: accents composed where the font has them so. */
  readonly text: string;
  /** From an offset in `text` to the offset in the line as given where that grapheme begins; one entry more than `text` has. */
  readonly origin: readonly number[];
  /** In the order they are seen, from left to right. */
  readonly runs: readonly Run[];
}

interface Letter {
  /** As it is to be shaped; empty when nothing is. */
  readonly form: string;
  readonly file: number | undefined;
}

/** Letters of scripts that run from right to left, and the marks that set that direction. */
const rightToLeft =
  /[\u0590-\u08ff\u200f\u202b\u202e\u2067\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });
const bidi = bidiFactory();

/** `files` in the order in which a letter is looked for. */
export function itemise(line: string, files: readonly Coverage[]): ItemisedLine {
  let text = '';
  const origin: number[] = [];
  const letters: { readonly start: number; readonly file: number | undefined; readonly script: string | undefined }[] =
    [];
  for (const { segment, index } of graphemes.segment(line)) {
    const { form, file } = chooseFile(segment, files, letters.at(-1)?.file);
    if (form === '') continue;
    letters.push({ start: text.length, file, script: scriptOf(form) });
    for (let i = 0; i < form.length; i++) origin.push(index);
    text += form;
  }
  origin.push(line.length);

  const levels = rightToLeft.test(text) ? bidi.getEmbeddingLevels(text).levels : undefined;
  const runs: (Run & { end: number; script: string | undefined })[] = [];
  letters.forEach(({ start, file, script }, i) => {
    const end = letters[i + 1]?.start ?? text.length;
    const level = levels?.[start] ?? 0;
    const last = runs.at(-1);
    const sameScript = !last?.script || !script || last.script === script;
    if (last && file !== undefined && last.file === file && last.level === level && sameScript) {
      last.end = end;
      last.script ??= script;
    } else {
      runs.push({ start, end, file, level, script });
    }
  });
  return { text, origin, runs: visualOrder(runs) };
}

/**
 * The first file that has every character of a letter, composed or else decomposed. HarfBuzz itself makes up for a missing
 * space of special width, and hides what has no shape of its own (joiners, variation selectors), so these do not count.
 */
function chooseFile(grapheme: string, files: readonly Coverage[], previous: number | undefined): Letter {
  if (/\p{Surrogate}/u.test(grapheme)) return { form: '\ufffd', file: undefined };
  const clean = grapheme.replaceAll('\t', ' ').replace(/\p{Cc}/gu, '');
  const visible = clean.replace(/\p{Default_Ignorable_Code_Point}/gu, '');
  if (visible === '') return { form: clean, file: previous ?? 0 };
  for (const form of ['NFC', 'NFD']) {
    const needed = Array.from(visible.normalize(form), (char) => (/\p{Zs}/u.test(char) ? 0x20 : char.codePointAt(0)!));
    const file = files.findIndex((candidate) => needed.every((codePoint) => candidate.covers(codePoint)));
    if (file >= 0) return { form: clean.normalize(form), file };
  }
  return { form: clean, file: undefined };
}

/** Scripts that fonts give rules of their own; whatever is in none of them (digits, stops, other scripts) joins any run. */
const scripts = [
  ...['Latin', 'Greek', 'Cyrillic', 'Armenian', 'Georgian', 'Hebrew', 'Arabic', 'Syriac', 'Thaana', 'Nko'],
  ...['Devanagari', 'Bengali', 'Gurmukhi', 'Gujarati', 'Oriya', 'Tamil', 'Telugu', 'Kannada', 'Malayalam', 'Sinhala'],
  ...['Thai', 'Lao', 'Tibetan', 'Myanmar', 'Khmer', 'Ethiopic', 'Cherokee', 'Hangul', 'Hiragana', 'Katakana', 'Han'],
].map((name) => ({ name, letter: new RegExp(`\\p{Script=${name}}`, 'u') }));

function scriptOf(text: string): string | undefined {
  return scripts.find(({ letter }) => letter.test(text))?.name;
}

/** UAX #9, rule L2: from the highest level down to the lowest odd one, turn round every stretch at that level or above. */
function visualOrder(runs: readonly Run[]): Run[] {
  const ordered = [...runs];
  const highest = Math.max(0, ...runs.map((run) => run.level));
  for (let level = highest; level > 0; level--) {
    for (let start = 0; start < ordered.length; start++) {
      let end = start;
      while (end < ordered.length && ordered[end]!.level >= level) end++;
      if (end - start > 1) ordered.splice(start, end - start, ...ordered.slice(start, end).reverse());
      start = end;
    }
  }
  return ordered;
}
