/** Texts on a tag: each once, with how it is made. */

import { withLines } from '../../spec/model/shape-model.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { Lettering } from '../../tag/lettering/letters.ts';
import type { Piece } from '../../tag/tag.ts';
import type { Job } from '../job/job.ts';

/**
 * In order of precedence for a text that is used in several ways: a line that shows where letters are glued is not the
 * text itself.
 */
const ways = ['cut out and glued on', 'cut out', 'cut through', 'engraved', 'drawn as a fine line'] as const;
export type WordOperation = (typeof ways)[number];

export interface WordsOn {
  /** Spelling, line by line. */
  readonly lines: readonly string[];
  readonly way: WordOperation;
  /** The name that the font states. */
  readonly font: string;
  readonly isMirrored: boolean;
  /** Absent for single-stroke text. */
  readonly lettering?: Lettering;
}

/** In text order of the spec. */
export function wordsOn({ tag, fonts }: Pick<Job, 'tag' | 'fonts'>): WordsOn[] {
  const found = new Map<string, { way: WordOperation; lettering: Lettering }>();
  for (const [way, lettering] of tag.pieces.flatMap(letteringOf)) {
    const key = pathKey(lettering.path);
    const before = found.get(key);
    if (!before || ways.indexOf(way) < ways.indexOf(before.way)) found.set(key, { way, lettering });
  }
  const strokes = new Map(
    tag.pieces
      .flatMap(({ marks }) => marks)
      .flatMap(({ operation, shape }) =>
        withLines([shape]).map(({ path }): [string, WordOperation] => [
          pathKey(path),
          operation === 'engrave' ? 'engraved' : 'drawn as a fine line',
        ]),
      ),
  );
  const shown = new Map<string, WordsOn>();
  for (const { generator, path, modifiers } of withLines(tag.made.keys())) {
    let words: Omit<WordsOn, 'lines'>;
    if (generator.kind === 'text') {
      const known = found.get(pathKey(path));
      if (!known) continue;
      const font = fonts.find(({ paths }) => paths.some((each) => pathKey(each) === pathKey(path)));
      const style = font && !/^regular$/i.test(font.style) ? ` ${font.style}` : '';
      words = { ...known, isMirrored: known.lettering.isMirrored, font: `${font?.family ?? generator.font}${style}` };
    } else if (generator.kind === 'strokes') {
      const way = strokes.get(pathKey(path));
      if (!way) continue;
      words = { way, font: 'single strokes', isMirrored: modifiers.mirror !== undefined };
    } else continue;
    const lines = linesOf(generator.text);
    const key = JSON.stringify([lines, words.way, words.font, words.isMirrored]);
    if (lines.length > 0 && !shown.has(key)) shown.set(key, { lines, ...words });
  }
  return [...shown.values()];
}

function linesOf(text: string): string[] {
  return text
    .split(/\r\n|[\n\v\f\r\u0085\u2028\u2029]/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

function pathKey(path: YamlPath): string {
  return path.join('/');
}

function letteringOf({ sources, marks, glueTo }: Piece): (readonly [WordOperation, Lettering])[] {
  const cutOperation = glueTo === undefined ? 'cut out' : 'cut out and glued on';
  return [
    ...sources.flatMap(({ use, lettering = [] }) =>
      lettering.map(
        (each) => [(use === 'body') === (each.as === 'material') ? cutOperation : 'cut through', each] as const,
      ),
    ),
    ...marks.flatMap(({ operation, lettering = [] }) =>
      lettering.map((each) => [operation === 'engrave' ? 'engraved' : 'drawn as a fine line', each] as const),
    ),
  ];
}
