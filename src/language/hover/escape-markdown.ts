/** Escapes text that may come from a spec for use in a hover: shown literally, never as markup. */

/**
 * Escapes every character that Markdown or HTML could interpret. The editor's own `appendText` does that as well, but
 * also joins all words with non-breaking spaces.
 */
export function escapeMarkdown(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_{}[\]()#+\-.!|~$:&<>]/g, (sign) => (/[&<>]/.test(sign) ? `&#${sign.charCodeAt(0)};` : `\\${sign}`));
}
