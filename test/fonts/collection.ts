/** A collection (TTC) of whole fonts, its header laid out as the OpenType specification has it. */
export function collection(fonts: readonly Uint8Array[]): Uint8Array {
  const headerBytes = 12 + fonts.length * 4;
  const out = new Uint8Array(fonts.reduce((sum, font) => sum + font.length, headerBytes));
  const view = new DataView(out.buffer);
  out.set(new TextEncoder().encode('ttcf'));
  view.setUint16(4, 1);
  view.setUint32(8, fonts.length);
  let start = headerBytes;
  fonts.forEach((font, i) => {
    view.setUint32(12 + i * 4, start);
    out.set(font, start);
    // Offsets of tables count from the start of the collection.
    for (let table = 0; table < view.getUint16(start + 4); table++) {
      const at = start + 12 + table * 16 + 8;
      view.setUint32(at, view.getUint32(at) + start);
    }
    start += font.length;
  });
  return out;
}
