/** Glyph outlines of fonts that do not vary, by opentype.js; no other file of the engine imports it. */

import { parse } from 'opentype.js/dist/opentype.mjs';
import type { CurvePath } from '../geometry/curves.ts';
import { writeSfnt, type FontTables } from './sfnt.ts';

/**
 * All that outlines hang on. The layout tables stay out: HarfBuzz is what reads them, opentype.js takes most of its time over
 * them and fails on some that are in order.
 */
const outlineTables: ReadonlySet<string> = new Set([
  ...['head', 'hhea', 'hmtx', 'maxp', 'name', 'cmap', 'post'],
  ...['loca', 'glyf', 'CFF '],
]);

/**
 * Outlines in font units, y up, contours as the font has them; `undefined` for a glyph, or for all of them, that cannot be
 * read. Glyphs are read when they are asked for.
 */
export function openOutlines(tables: FontTables): ((glyph: number) => CurvePath | undefined) | undefined {
  try {
    const { glyphs } = parse(writeSfnt(new Map([...tables].filter(([tag]) => outlineTables.has(tag)))).buffer, {
      lowMemory: true,
    });
    return (id) => {
      try {
        return glyphs.get(id).path.commands;
      } catch {
        return undefined;
      }
    };
  } catch {
    return undefined;
  }
}
