/**
 * Glyph outlines of TrueType fonts that do not vary, by opentype.js; no other file of the engine imports it. All others are
 * HarfBuzz's to draw: opentype.js is off by up to thousands of units where a font varies, and can take half a minute over a
 * damaged CFF font. It is loaded when the first font is.
 */

import type { CurvePath } from '../geometry/curves.ts';
import { writeSfnt, type FontTables } from './sfnt.ts';

/**
 * All that outlines hang on. The layout tables stay out: opentype.js takes most of its time over them and fails on some that
 * are in order.
 */
const outlineTables: ReadonlySet<string> = new Set([
  ...['head', 'hhea', 'hmtx', 'maxp', 'name', 'cmap', 'post'],
  ...['loca', 'glyf'],
]);

/**
 * Outlines in font units, y up; `undefined` for a font that is not of that kind, and for one, or a glyph of it, that cannot be
 * read. Glyphs are read when they are asked for.
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
