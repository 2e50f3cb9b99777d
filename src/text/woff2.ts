/**
 * WOFF 2 files (W3C, WOFF File Format 2.0) as plain fonts, by wawoff2: the decoder of the format's authors as
 * WebAssembly. No other file imports it, and it is loaded with the first such file.
 *
 * The sizes that a file states are added up before anything is unpacked, so that a small file cannot fill the memory;
 * the decoder stops at the stated size.
 */

import { BadFontError } from './bad-font.ts';

/** Largest size that the decoder unpacks, in MB. */
const maxUnpackedMb = 30;

const headerBytes = 48;
const maxTables = 128;

/**
 * In the table directory, bits 0–5 of a table's flags give its name; with this value, four characters follow instead.
 */
const namedTable = 63;

/** Indices of `glyf` and `loca` in the specification's list of known tables (section 5.2). */
const glyf = 10;
const loca = 11;

export function isWoff2(bytes: Uint8Array): boolean {
  return [0x77, 0x4f, 0x46, 0x32].every((byte, i) => bytes[i] === byte);
}

/** @throws BadFontError if it cannot be unpacked, or would be too large. */
export async function unpackWoff2(bytes: Uint8Array): Promise<Uint8Array> {
  if (Math.max(bytes.length, unpackedBytes(bytes)) > maxUnpackedMb * 1024 * 1024)
    throw new BadFontError(`is larger than ${maxUnpackedMb} MB once unpacked: use its TTF or OTF file instead`);
  const { default: decompress } = await import('wawoff2/decompress.js');
  try {
    return await decompress(bytes);
  } catch {
    throw new BadFontError('is damaged: it cannot be unpacked');
  }
}

/** The larger of the sizes that the file states: of its decompressed tables together, and of the resulting font. */
function unpackedBytes(bytes: Uint8Array): number {
  if (bytes.length < headerBytes) throw new BadFontError('is cut short');
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const count = data.getUint16(12);
  if (count === 0 || count > maxTables) throw new BadFontError('is damaged: its table of contents makes no sense');
  let at = headerBytes;
  const byte = (): number => {
    const value = bytes[at++];
    if (value === undefined) throw new BadFontError('is cut short');
    return value;
  };
  /** UIntBase128 of the specification: seven bits per byte, the highest first, at most five bytes. */
  const length = (): number => {
    let value = 0;
    for (let i = 0; i < 5; i++) {
      const next = byte();
      value = value * 128 + (next & 0x7f);
      if (next < 0x80) return value;
    }
    throw new BadFontError('is damaged: its table of contents makes no sense');
  };
  let [packed, plain] = [0, data.getUint32(16)];
  for (let i = 0; i < count; i++) {
    const flags = byte();
    const table = flags & 0x3f;
    if (table === namedTable) at += 4;
    const original = length();
    // Version 0 of `glyf` and `loca` is the transformed one; of all other tables it is the plain one.
    const transformed = table === glyf || table === loca ? flags >> 6 !== 3 : flags >> 6 !== 0;
    packed += transformed ? length() : original;
    plain = Math.max(plain, original);
  }
  return Math.max(packed, plain);
}
