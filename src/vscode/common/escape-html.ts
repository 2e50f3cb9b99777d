/** A text as HTML has it, between tags and within quotes: never markup. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (char) => `&#${char.charCodeAt(0)};`);
}
