/** Glyph outlines, by opentype.js; no other file imports it. */

import { parse, type Glyph } from 'opentype.js/dist/opentype.mjs';
import type { CurveCommand, CurvePath } from '../geometry/curves.ts';
import type { Variations } from './harfbuzz.ts';
import { BadFontError, writeSfnt, type FontTables } from './sfnt.ts';

/** The outline of a glyph in font units, y up, its contours as the font has them; `undefined` when it cannot be read. */
export type Outlines = (glyph: number) => CurvePath | undefined;

/**
 * All that outlines hang on. The layout tables stay out: HarfBuzz is what reads them, opentype.js takes most of its time over
 * them and fails on some that are in order.
 */
const outlineTables: ReadonlySet<string> = new Set([
  ...['head', 'hhea', 'hmtx', 'maxp', 'name', 'cmap', 'post'],
  ...['loca', 'glyf', 'CFF ', 'CFF2', 'fvar', 'avar', 'gvar'],
]);

/** What the package's types leave out: present on variable fonts. */
type VariableFont = ReturnType<typeof parse> & {
  readonly variation?: { getTransform(glyph: Glyph, coordinates: Record<string, number>): Glyph };
};

export function openOutlines(tables: FontTables, variations: Variations): Outlines {
  let font: VariableFont;
  try {
    font = parse(writeSfnt(tables, outlineTables).buffer, { lowMemory: true });
  } catch {
    throw new BadFontError('is damaged: its outlines cannot be read');
  }
  const { glyphs, variation } = font;
  return (id) => {
    try {
      const glyph = glyphs.get(id);
      const path: readonly CurveCommand[] = (variation?.getTransform(glyph, { ...variations }) ?? glyph).path.commands;
      return path.every(isFiniteCommand) ? path : undefined;
    } catch {
      return undefined;
    }
  };
}

function isFiniteCommand(command: CurveCommand): boolean {
  return Object.values(command).every((value) => typeof value === 'string' || Number.isFinite(value));
}
