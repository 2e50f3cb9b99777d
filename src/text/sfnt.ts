/**
 * The container of a font. Reads its tables by tag from a TrueType or OpenType file (sfnt), a collection of several
 * faces, or a WOFF file (W3C, WOFF File Format 1.0 and 2.0), and writes them as one plain sfnt, the only form that
 * HarfBuzz takes.
 *
 * Fonts are untrusted: every offset is checked before it is followed, and any fault is reported with a `BadFontError`.
 */

import { Unzlib } from 'fflate';
import { BadFontError } from './bad-font.ts';
import { maxFontBytes } from './font-files.ts';
import { isWoff2, unpackWoff2 } from './woff2.ts';

export type FontTables = ReadonlyMap<string, Uint8Array>;

/** Bytes from `start` up to `end`; fewer if the file is shorter. */
export type ReadStretch = (start: number, end: number) => Promise<Uint8Array>;

interface TableRecord {
  readonly tag: string;
  readonly offset: number;
  readonly length: number;
}

const headerBytes = 12;
const recordBytes = 16;
const woffHeaderBytes = 44;
const woffRecordBytes = 20;
const maxTables = 128;
const maxFaces = 256;

/** The file itself or, for a WOFF 2 file, its unpacked content: the form that the functions here take. */
export async function unpacked(bytes: Uint8Array): Promise<Uint8Array> {
  return isWoff2(bytes) ? await unpackWoff2(bytes) : bytes;
}

/** The tables of one face of an unpacked file; `index` counts the faces of a collection from 0. */
export function readTables(bytes: Uint8Array, index = 0): FontTables {
  if (bytes.length > maxFontBytes) throw new BadFontError('is larger than 64 MB');
  const signature = readSignature(bytes);
  if (signature === 'wOFF') return inflateWoff(bytes);
  const offsets = signature === 'ttcf' ? faceOffsets(bytes) : [0];
  const offset = offsets[index];
  if (offset === undefined) throw new BadFontError(`has no face number ${index + 1}`);
  const tables = new Map<string, Uint8Array>();
  for (const { tag, offset: start, length } of tableRecords(view(bytes, offset))) {
    tables.set(tag, stretch(bytes, start, length));
  }
  return tables;
}

/**
 * Only the named tables, of every face in a file, reading no more of the file than necessary. For looking through the
 * hundreds of fonts on a computer.
 */
export async function scanTables(read: ReadStretch, tags: ReadonlySet<string>): Promise<FontTables[]> {
  const start = await read(0, headerBytes + maxFaces * 4);
  if (isWoff2(start)) {
    const whole = await unpackWoff2(await read(0, maxFontBytes + 1));
    return scanTables((from, to) => Promise.resolve(whole.subarray(from, to)), tags);
  }
  const signature = readSignature(start);
  if (signature === 'wOFF') return [readTables(await read(0, maxFontBytes + 1))];
  const faces: FontTables[] = [];
  for (const offset of signature === 'ttcf' ? faceOffsets(start) : [0]) {
    const directory = await read(offset, offset + headerBytes + maxTables * recordBytes);
    const tables = new Map<string, Uint8Array>();
    for (const record of tableRecords(view(directory))) {
      if (!tags.has(record.tag)) continue;
      tables.set(record.tag, stretch(await read(record.offset, record.offset + record.length), 0, record.length));
    }
    faces.push(tables);
  }
  return faces;
}

/** The tables as one plain sfnt. */
export function writeSfnt(tables: FontTables): Uint8Array {
  const chosen = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const padded = (length: number): number => (length + 3) & ~3;
  let offset = headerBytes + chosen.length * recordBytes;
  const out = new Uint8Array(chosen.reduce((sum, [, table]) => sum + padded(table.length), offset));
  const header = view(out);
  header.setUint32(0, tables.has('CFF ') || tables.has('CFF2') ? 0x4f54544f /* OTTO */ : 0x00010000);
  header.setUint16(4, chosen.length);
  // The search hints of the header and the checksums stay 0: HarfBuzz ignores them.
  chosen.forEach(([tag, table], i) => {
    const at = headerBytes + i * recordBytes;
    for (let j = 0; j < 4; j++) out[at + j] = tag.charCodeAt(j);
    header.setUint32(at + 8, offset);
    header.setUint32(at + 12, table.length);
    out.set(table, offset);
    offset += padded(table.length);
  });
  return out;
}

export function view(bytes: Uint8Array, offset = 0): DataView {
  if (offset > bytes.length) throw new BadFontError('is cut short');
  return new DataView(bytes.buffer, bytes.byteOffset + offset, bytes.length - offset);
}

function readSignature(bytes: Uint8Array): 'sfnt' | 'ttcf' | 'wOFF' {
  if (bytes.length === 0) throw new BadFontError('is an empty file');
  const tag = String.fromCharCode(...bytes.subarray(0, 4));
  switch (tag) {
    case '\0\x01\0\0':
    case 'true':
    case 'OTTO':
      return 'sfnt';
    case 'ttcf':
    case 'wOFF':
      return tag;
    case 'PK\x03\x04':
      throw new BadFontError('is a ZIP archive: unpack it and use the font file inside');
  }
  if (/^\s*</.test(new TextDecoder('latin1').decode(bytes.subarray(0, 64)))) {
    throw new BadFontError('is a web page or a drawing, not a font file');
  }
  throw new BadFontError('is not a font file (TTF, OTF, TTC, OTC, WOFF or WOFF2)');
}

function tableRecords(directory: DataView): TableRecord[] {
  if (directory.byteLength < headerBytes) throw new BadFontError('is cut short');
  const count = directory.getUint16(4);
  if (count === 0 || count > maxTables) throw new BadFontError('is damaged: its table of contents makes no sense');
  if (directory.byteLength < headerBytes + count * recordBytes) throw new BadFontError('is cut short');
  return Array.from({ length: count }, (_, i) => {
    const at = headerBytes + i * recordBytes;
    return {
      tag: readTag(directory, at),
      offset: directory.getUint32(at + 8),
      length: directory.getUint32(at + 12),
    };
  });
}

function faceOffsets(bytes: Uint8Array): number[] {
  const header = view(bytes);
  if (header.byteLength < headerBytes) throw new BadFontError('is cut short');
  const count = header.getUint32(8);
  if (count === 0 || count > maxFaces) throw new BadFontError('is damaged: its list of faces makes no sense');
  if (header.byteLength < headerBytes + count * 4) throw new BadFontError('is cut short');
  return Array.from({ length: count }, (_, i) => header.getUint32(headerBytes + i * 4));
}

function inflateWoff(bytes: Uint8Array): FontTables {
  const header = view(bytes);
  if (header.byteLength < woffHeaderBytes) throw new BadFontError('is cut short');
  const count = header.getUint16(12);
  if (header.byteLength < woffHeaderBytes + count * woffRecordBytes) throw new BadFontError('is cut short');
  const tables = new Map<string, Uint8Array>();
  let total = 0;
  for (let i = 0; i < count; i++) {
    const at = woffHeaderBytes + i * woffRecordBytes;
    const compressed = stretch(bytes, header.getUint32(at + 4), header.getUint32(at + 8));
    const length = header.getUint32(at + 12);
    total += length;
    if (total > maxFontBytes) throw new BadFontError('is larger than 64 MB once unpacked');
    tables.set(readTag(header, at), compressed.length < length ? inflate(compressed, length) : compressed);
  }
  return tables;
}

/** Inflates in small pieces, so that a table that unpacks to more than it stated is rejected at once. */
function inflate(compressed: Uint8Array, length: number): Uint8Array {
  const pieceBytes = 16 * 1024;
  const out = new Uint8Array(length);
  let filled = 0;
  const inflater = new Unzlib((piece) => {
    if (filled + piece.length > length) throw new BadFontError('is damaged: a table is longer than it says');
    out.set(piece, filled);
    filled += piece.length;
  });
  try {
    for (let at = 0; at < compressed.length; at += pieceBytes) {
      inflater.push(compressed.subarray(at, at + pieceBytes), at + pieceBytes >= compressed.length);
    }
  } catch (error) {
    if (error instanceof BadFontError) throw error;
    throw new BadFontError('is damaged: it cannot be unpacked');
  }
  if (filled < length) throw new BadFontError('is damaged: it cannot be unpacked');
  return out;
}

function stretch(bytes: Uint8Array, offset: number, length: number): Uint8Array {
  if (offset + length > bytes.length) throw new BadFontError('is cut short');
  return bytes.subarray(offset, offset + length);
}

function readTag(data: DataView, at: number): string {
  return String.fromCharCode(data.getUint8(at), data.getUint8(at + 1), data.getUint8(at + 2), data.getUint8(at + 3));
}
