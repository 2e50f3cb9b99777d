/**
 * Glyph outlines of fonts that do not vary, by opentype.js; no other file imports it. (Its outlines of variable fonts are off
 * by tens to thousands of units, so those are drawn by HarfBuzz.)
 */

import { parse } from 'opentype.js/dist/opentype.mjs';
import type { CurvePath } from '../geometry/curves.ts';
import { BadFontError, writeSfnt, type FontTables } from './sfnt.ts';

/**
 * All that outlines hang on. The layout tables stay out: HarfBuzz is what reads them, opentype.js takes most of its time over
 * them and fails on some that are in order.
 */
const outlineTables: ReadonlySet<string> = new Set([
  ...['head', 'hhea', 'hmtx', 'maxp', 'name', 'cmap', 'post'],
  ...['loca', 'glyf', 'CFF '],
]);

/**
 * Outlines in font units, y up, contours as the font has them. Glyphs are read when asked for, and only then does a damaged
 * one make itself known, by an exception of any kind.
 */
export function openOutlines(tables: FontTables): (glyph: number) => CurvePath {
  try {
    const { glyphs } = parse(writeSfnt(tables, outlineTables).buffer, { lowMemory: true });
    return (id) => glyphs.get(id).path.commands;
  } catch {
    throw new BadFontError('is damaged: its outlines cannot be read');
  }
}
