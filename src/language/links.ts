/** Files that a spec names. */

import type { TextRange } from '../issue.ts';
import type { SpecSource } from '../spec/source.ts';
import { isFontFile } from '../text/font-files.ts';
import { namesIn } from './names.ts';

export interface FileLink {
  readonly range: TextRange;
  /** As it is written. */
  readonly file: string;
}

export function linksIn({ tree }: SpecSource): FileLink[] {
  return namesIn(tree)
    .filter(({ kind, name }) => kind === 'drawing' || kind === 'spec' || (kind === 'font' && isFontFile(name)))
    .map(({ range, name }) => ({ range, file: name }));
}
