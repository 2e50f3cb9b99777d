/** The red, green and blue of a colour written as #RRGGBB, or without its #: each from 0 to 255. */
export function channels(hex: string): [red: number, green: number, blue: number] {
  const digits = hex.replace('#', '');
  const channel = (from: number) => parseInt(digits.slice(from, from + 2), 16);
  return [channel(0), channel(2), channel(4)];
}
