/** A fault in a font file. The message completes the sentence "The font … ". */
export class BadFontError extends Error {}
