/** What stands for a font where a text is drawn with single strokes. */
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
