/** Text that may come from a spec, for a hover: shown as it is, never as markup. */

/**
 * Every sign that Markdown or HTML could read as more than itself is escaped. The editor's own `appendText` does that as well,
 * but ties all words together with spaces that do not break.
 */
export function plain(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_{}[\]()#+\-.!|~$:&<>]/g, (sign) => (/[&<>]/.test(sign) ? `&#${sign.charCodeAt(0)};` : `\\${sign}`));
}
