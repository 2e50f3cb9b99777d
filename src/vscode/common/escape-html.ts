/** Escapes text for HTML, between tags and in attribute values, so that it is never markup. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (char) => `&#${char.charCodeAt(0)};`);
}
