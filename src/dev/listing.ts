/**
 * The extension's own page, as the editor shows it of an installed extension. What it shows there has nothing beside it: pictures
 * are seen from `https:` or within the text, and of links only those to the web work. So the pictures are put within.
 */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(import.meta.dirname, '..', 'vscode', 'listing');

export function listingPage(): string {
  const text = readFileSync(join(folder, 'page.md'), 'utf8');
  return text.replaceAll(/(!\[[^\]]*\])\(([^):]+\.png)\)/g, (_, words: string, file: string) => {
    const picture = readFileSync(join(folder, file)).toString('base64');
    return `${words}(data:image/png;base64,${picture})`;
  });
}
