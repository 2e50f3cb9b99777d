/**
 * Glyph outlines of TrueType fonts without variations, by opentype.js; no other file of the engine imports it. HarfBuzz
 * draws all others: opentype.js is off by up to thousands of units for variable fonts, and can take half a minute over
 * a damaged CFF font. It is loaded with the first font.
 */

import type { CurvePath } from '../geometry/curves.ts';
import { writeSfnt, type FontTables } from './sfnt.ts';

/**
 * All tables that outlines depend on. The layout tables are left out: opentype.js spends most of its time on them and
 * fails on some that are sound.
 */
const outlineTables: ReadonlySet<string> = new Set([
  ...['head', 'hhea', 'hmtx', 'maxp', 'name', 'cmap', 'post'],
  ...['loca', 'glyf'],
]);

/**
 * Outlines in font units, y up; `undefined` for a font of another kind, and for a font or glyph that cannot be read.
 * Glyphs are read on demand.
 */
export async function openOutlines(
  tables: FontTables,
): Promise<((glyph: number) => CurvePath | undefined) | undefined> {
  if (!tables.has('glyf') || tables.has('fvar')) return undefined;
  const { parse } = await import('opentype.js/dist/opentype.mjs');
  try {
    const wanted = new Map([...tables].filter(([tag]) => outlineTables.has(tag)));
    const { glyphs } = parse(writeSfnt(wanted).buffer, { lowMemory: true });
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
