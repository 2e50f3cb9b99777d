/**
 * A font's own description: names, style, licence, metrics. Read from the `name`, `OS/2`, `head`, `hhea` and `fvar`
 * tables as laid out in the OpenType specification.
 */

import { BadFontError } from './bad-font.ts';
import { view, type FontTables } from './sfnt.ts';

export interface FontDescription {
  /** The family name that people use (name 16, else 1). */
  readonly family: string;
  /** Every name of the family: both groupings, all languages. */
  readonly families: readonly string[];
  /** Such as "Bold Italic" (name 17, else 2). */
  readonly style: string;
  /** 1–1000; 400 is regular, 700 bold. */
  readonly weight: number;
  readonly italic: boolean;
  /** From 1, ultra-condensed, to 9, ultra-expanded; 5 is normal. */
  readonly width: number;
  /** The range of weights of a variable font. */
  readonly weightAxis?: { readonly min: number; readonly max: number };
  readonly licence: FontLicence;
}

export interface FontLicence {
  /** Name 0. */
  readonly copyright?: string;
  /** Name 13. */
  readonly text?: string;
  /** Name 14. */
  readonly url?: string;
  /** OS/2 `fsType`; `undefined` if the font has no such table. */
  readonly embedding?: EmbeddingRights;
  /** Bit 8 of `fsType`: no part of it may be embedded on its own. */
  readonly wholeOnly?: true;
  /** Bit 9: only bitmaps of it may be embedded. */
  readonly picturesOnly?: true;
}

/**
 * Bits 0–3 of `fsType`, of which the least restrictive counts. Outlines cut from a sheet do not embed a font; this is
 * for the note.
 */
export type EmbeddingRights = 'installable' | 'editable' | 'preview-and-print' | 'restricted';

/** The tables that `describeFont` reads. */
export const descriptiveTables: ReadonlySet<string> = new Set(['name', 'OS/2', 'head', 'fvar']);

export function describeFont(tables: FontTables): FontDescription {
  return guarded(() => {
    const names = readNames(tables.get('name'));
    const os2 = tableView(tables, 'OS/2');
    const selection = os2 && os2.byteLength >= 64 ? os2.getUint16(62) : 0;
    const style = names.best(17) ?? names.best(2) ?? '';
    const weightAxis = readAxis(tables, 'wght');
    const families = [...new Set([...names.all(16), ...names.all(1)])];
    return {
      family: names.best(16) ?? names.best(1) ?? '',
      families,
      style,
      weight: clampWeight(os2 && os2.byteLength >= 6 ? os2.getUint16(4) : 400),
      italic: (selection & 0b1) !== 0 || (selection & (1 << 9)) !== 0 || /italic|oblique/i.test(style),
      width: os2 && os2.byteLength >= 8 ? os2.getUint16(6) : 5,
      ...(weightAxis && { weightAxis }),
      licence: readLicence(names, os2),
    };
  });
}

export interface FontMetrics {
  readonly unitsPerEm: number;
  /** In font units, y up; `descender` is negative. */
  readonly ascender: number;
  readonly descender: number;
  readonly lineGap: number;
  /** Absent if the font does not give it (OS/2 before version 2, or 0). */
  readonly xHeight?: number;
  readonly capHeight?: number;
}

export function readMetrics(tables: FontTables): FontMetrics {
  return guarded(() => {
    const head = tableView(tables, 'head');
    const hhea = tableView(tables, 'hhea');
    if (!head || !hhea) throw new BadFontError('lacks the tables that say how large it is');
    const unitsPerEm = head.getUint16(18);
    if (unitsPerEm < 16 || unitsPerEm > 16384) throw new BadFontError('is damaged: its unit makes no sense');
    const os2 = tableView(tables, 'OS/2');
    const typographic = os2 && os2.byteLength >= 74 && (os2.getUint16(62) & (1 << 7)) !== 0;
    const lines = typographic
      ? { ascender: os2.getInt16(68), descender: os2.getInt16(70), lineGap: os2.getInt16(72) }
      : { ascender: hhea.getInt16(4), descender: hhea.getInt16(6), lineGap: hhea.getInt16(8) };
    const heights = os2 && os2.byteLength >= 90 && os2.getUint16(0) >= 2;
    const xHeight = heights ? os2.getInt16(86) : 0;
    const capHeight = heights ? os2.getInt16(88) : 0;
    return { unitsPerEm, ...lines, ...(xHeight > 0 && { xHeight }), ...(capHeight > 0 && { capHeight }) };
  });
}

function readLicence(names: Names, os2: DataView | undefined): FontLicence {
  const copyright = names.best(0);
  const text = names.best(13);
  const url = names.best(14);
  const fsType = os2 && os2.byteLength >= 10 ? os2.getUint16(8) : undefined;
  return {
    ...(copyright && { copyright }),
    ...(text && { text }),
    ...(url && { url }),
    ...(fsType !== undefined && { embedding: embeddingRights(fsType) }),
    ...(fsType !== undefined && (fsType & (1 << 8)) !== 0 && { wholeOnly: true }),
    ...(fsType !== undefined && (fsType & (1 << 9)) !== 0 && { picturesOnly: true }),
  };
}

function embeddingRights(fsType: number): EmbeddingRights {
  if (fsType & 0b1000) return 'editable';
  if (fsType & 0b0100) return 'preview-and-print';
  return fsType & 0b0010 ? 'restricted' : 'installable';
}

interface Names {
  /** The English text of a name, else one in any language. */
  best(id: number): string | undefined;
  all(id: number): string[];
}

function readNames(table: Uint8Array | undefined): Names {
  const found: { readonly id: number; readonly english: boolean; readonly text: string }[] = [];
  if (table && table.length >= 6) {
    const data = view(table);
    const count = data.getUint16(2);
    const strings = data.getUint16(4);
    for (let i = 0; i < count && 18 + i * 12 <= table.length; i++) {
      const at = 6 + i * 12;
      const platform = data.getUint16(at);
      const language = data.getUint16(at + 4);
      const id = data.getUint16(at + 6);
      const start = strings + data.getUint16(at + 10);
      const bytes = table.subarray(start, start + data.getUint16(at + 8));
      const text = new TextDecoder(platform === 1 ? 'macintosh' : 'utf-16be').decode(bytes).trim();
      const english = platform === 3 ? language === 0x409 : language === 0;
      if (text) found.push({ id, english, text });
    }
  }
  const all = (id: number): string[] => found.filter((name) => name.id === id).map((name) => name.text);
  return { all, best: (id) => found.find((name) => name.id === id && name.english)?.text ?? all(id)[0] };
}

function readAxis(tables: FontTables, tag: string): { min: number; max: number } | undefined {
  const fvar = tableView(tables, 'fvar');
  if (!fvar || fvar.byteLength < 16) return undefined;
  const start = fvar.getUint16(4);
  const size = fvar.getUint16(10);
  for (let i = 0; i < fvar.getUint16(8); i++) {
    const at = start + i * size;
    if (String.fromCharCode(...[0, 1, 2, 3].map((j) => fvar.getUint8(at + j))) !== tag) continue;
    return { min: fvar.getInt32(at + 4) / 65536, max: fvar.getInt32(at + 12) / 65536 };
  }
  return undefined;
}

function tableView(tables: FontTables, tag: string): DataView | undefined {
  const table = tables.get(tag);
  return table && view(table);
}

/** Some old fonts count weights from 1 to 9. */
function clampWeight(weight: number): number {
  return weight >= 1 && weight <= 9 ? weight * 100 : Math.min(Math.max(weight, 1), 1000);
}

/** Turns the RangeError of a DataView, which a table shorter than it must be causes, into a `BadFontError`. */
function guarded<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (error instanceof RangeError) throw new BadFontError('is damaged: one of its tables is too short');
    throw error;
  }
}
