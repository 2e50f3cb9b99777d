/** The words that a material is named by: “Black walnut, 3 mm” is black and walnut. */

export function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
