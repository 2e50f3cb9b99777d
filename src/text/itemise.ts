/**
 * Divides a line of text into runs that can be shaped in one go: one direction, one script, and no letter the font lacks.
 *
 * The unit is the grapheme, what a reader calls a letter: a base with its accents stays in one run, whether it was typed as
 * one character or as several. Direction follows the Unicode Bidirectional Algorithm (UAX #9).
 */

import bidiFactory from 'bidi-js';

export interface TextRun {
  /** UTF-16 offsets in `ItemisedLine.text`, `end` exclusive. */
  readonly start: number;
  readonly end: number;
  /** Whether the font lacks it; such a run is one grapheme. */
  readonly missing: boolean;
  /** Embedding level; odd levels run from right to left. */
  readonly level: number;
}

export interface ItemisedLine {
  /** The line as it is shaped, with accents composed if the font has them so. */
  readonly text: string;
  /** The offset in the given line of each grapheme, by offset in `text`; one entry more than `text` has. */
  readonly origin: readonly number[];
  /** Runs in visual order, from left to right. */
  readonly runs: readonly TextRun[];
}

interface ShapedLetter {
  /** The characters to shape; empty if there are none. */
  readonly form: string;
  readonly missing: boolean;
}

/** Letters of scripts that run from right to left, and the marks that set that direction. */
const rightToLeft =
  /[\u0590-\u08ff\u200f\u202b\u202e\u2067\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

let bidi: ReturnType<typeof bidiFactory> | undefined;

/** The library's tables are unpacked for the first text that needs them. */
function levelsOf(text: string): ArrayLike<number> {
  bidi ??= bidiFactory();
  return bidi.getEmbeddingLevels(text).levels;
}

export function itemise(line: string, covers: (codePoint: number) => boolean): ItemisedLine {
  let text = '';
  const origin: number[] = [];
  const letters: { readonly start: number; readonly missing: boolean; readonly script: string | undefined }[] = [];
  for (const { segment, index } of graphemes.segment(line)) {
    const { form, missing } = chooseForm(segment, covers);
    if (form === '') continue;
    letters.push({ start: text.length, missing, script: scriptOf(form) });
    for (let i = 0; i < form.length; i++) origin.push(index);
    text += form;
  }
  origin.push(line.length);

  const levels = rightToLeft.test(text) ? levelsOf(text) : undefined;
  const runs: (TextRun & { end: number; script: string | undefined })[] = [];
  letters.forEach(({ start, missing, script }, i) => {
    const end = letters[i + 1]?.start ?? text.length;
    const level = levels?.[start] ?? 0;
    const last = runs.at(-1);
    const sameScript = !last?.script || !script || last.script === script;
    if (last && !last.missing && !missing && last.level === level && sameScript) {
      last.end = end;
      last.script ??= script;
    } else {
      runs.push({ start, end, missing, level, script });
    }
  });
  return { text, origin, runs: visualOrder(runs) };
}

/**
 * The form of a letter to shape: composed, or else decomposed, if the font has all its characters. HarfBuzz itself
 * makes up for a missing space of special width, and hides characters without a shape of their own (joiners, variation
 * selectors), so these do not count.
 */
function chooseForm(grapheme: string, covers: (codePoint: number) => boolean): ShapedLetter {
  if (/\p{Surrogate}/u.test(grapheme)) return { form: '\ufffd', missing: true };
  const clean = grapheme.replaceAll('\t', ' ').replace(/\p{Cc}/gu, '');
  const form = [clean.normalize('NFC'), clean.normalize('NFD')].find((candidate) =>
    Array.from(candidate).every((char) => {
      if (/\p{Default_Ignorable_Code_Point}/u.test(char)) return true;
      return covers(/\p{Zs}/u.test(char) ? 0x20 : char.codePointAt(0)!);
    }),
  );
  return { form: form ?? clean, missing: form === undefined };
}

/** Whether a font has a letter, composed or in parts. */
export function hasLetter(grapheme: string, { covers }: { readonly covers: (codePoint: number) => boolean }): boolean {
  return !chooseForm(grapheme, covers).missing;
}

/** Scripts for which fonts have their own rules; anything else (digits, punctuation, other scripts) joins any run. */
const scripts = [
  ...['Latin', 'Greek', 'Cyrillic', 'Armenian', 'Georgian', 'Hebrew', 'Arabic', 'Syriac', 'Thaana', 'Nko'],
  ...['Devanagari', 'Bengali', 'Gurmukhi', 'Gujarati', 'Oriya', 'Tamil', 'Telugu', 'Kannada', 'Malayalam', 'Sinhala'],
  ...['Thai', 'Lao', 'Tibetan', 'Myanmar', 'Khmer', 'Ethiopic', 'Cherokee', 'Hangul', 'Hiragana', 'Katakana', 'Han'],
].map((name) => ({ name, letter: new RegExp(`\\p{Script=${name}}`, 'u') }));

function scriptOf(text: string): string | undefined {
  return scripts.find(({ letter }) => letter.test(text))?.name;
}

/** UAX #9, rule L2: from the highest level down to the lowest odd one, reverse every stretch at that level or above. */
function visualOrder(runs: readonly TextRun[]): TextRun[] {
  const ordered = [...runs];
  const highest = runs.reduce((level, run) => Math.max(level, run.level), 0);
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
