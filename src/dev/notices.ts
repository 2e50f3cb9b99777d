/** The licences of the packages whose code a bundle holds, which ask to be shipped with it. */

import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** `inputs`: paths of bundled files, relative to `root`. Throws for a package that says nothing of its licence. */
export function thirdPartyNotices(root: string, inputs: readonly string[]): string {
  const names = inputs.map((input) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input)?.[0]);
  const folders = [...new Set(names.filter((name) => name !== undefined))].sort();
  return folders.map((folder) => notice(join(root, folder))).join('\n');
}

function notice(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    name: string;
    version: string;
    license?: string;
  };
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  if (!file && !license) throw new Error(`${name} is bundled, but says nothing of its licence`);
  const text = file ? readFileSync(join(folder, file), 'utf8').trim() : '';
  return `${name} ${version}, ${license ?? 'licence below'}\n\n${text}\n\n${'-'.repeat(72)}\n`;
}
