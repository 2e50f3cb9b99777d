/** Licences of the packages in a bundle, which require to be shipped with it. */

import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** `inputs`: paths of bundled files, relative to `root`. Throws for a package that states no licence. */
export function thirdPartyNotices(root: string, inputs: readonly string[]): string {
  const names = inputs.map((input) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input)?.[0]);
  const folders = [...new Set(names.filter((name) => name !== undefined))].sort();
  return [...folders.map((folder) => notice(join(root, folder))), strokes].join('\n');
}

/** Compiled-in code that the package's own licence does not mention. */
const compiledIn: Readonly<Record<string, string>> = {
  wawoff2:
    'It holds Brotli (https://github.com/google/brotli), Copyright (c) 2009, 2010, 2013-2016 by the Brotli Authors, under the same licence.',
};

/** Required notice for the letters in `text/single-line-letters.ts`. */
const strokes = `Single-line letters

The Hershey Fonts were originally created by Dr. A. V. Hershey while working at the U. S. National Bureau of Standards.
The format of the font data from which they were converted was originally created by James Hurt, Cognition, Inc.,
900 Technology Park Drive, Billerica, MA 01821.
`;

function notice(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    name: string;
    version: string;
    license?: string;
  };
  const within = compiledIn[name];
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  if (!file && !license) throw new Error(`${name} is bundled, but says nothing of its licence`);
  const text = file ? readFileSync(join(folder, file), 'utf8').trim() : '';
  return `${name} ${version}, ${license ?? 'licence below'}\n\n${text}\n${within === undefined ? '' : `\n${within}\n`}\n${'-'.repeat(72)}\n`;
}
