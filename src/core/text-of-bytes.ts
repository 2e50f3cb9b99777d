/** The text of a file: UTF-8, or UTF-16 with the mark that says so, as some spreadsheets save tables. */

const marks = [
  { encoding: 'utf-16le', bytes: [0xff, 0xfe] },
  { encoding: 'utf-16be', bytes: [0xfe, 0xff] },
] as const;

/** What cannot be read becomes U+FFFD. */
export function textOfBytes(bytes: Uint8Array): string {
  const mark = marks.find((each) => each.bytes.every((byte, index) => bytes[index] === byte));
  return new TextDecoder(mark?.encoding).decode(bytes);
}
