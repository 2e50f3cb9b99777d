/** The red, green and blue channels, each from 0 to 255, of a colour written as #RRGGBB, with or without the #. */
export function channels(hex: string): [red: number, green: number, blue: number] {
  const digits = hex.replace('#', '');
  const channel = (from: number) => parseInt(digits.slice(from, from + 2), 16);
  return [channel(0), channel(2), channel(4)];
}
