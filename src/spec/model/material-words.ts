/** The words in the name of a material, in lower case: “Black walnut, 3 mm” contains black and walnut. */

export function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
