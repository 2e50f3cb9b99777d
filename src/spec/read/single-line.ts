/** The font name that stands for lettering of single strokes. */
export const singleLine = 'single line';

export function isSingleLine(font: unknown): boolean {
  return (
    typeof font === 'string' &&
    font
      .trim()
      .toLowerCase()
      .replace(/[-\s]+/g, ' ') === singleLine
  );
}
