/** Links to the files that a spec names. */

import type { TextRange } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { isFontFile } from '../../text/font-files.ts';
import { namesIn } from './names.ts';
import type { AnyNameKind } from './names.ts';

export interface FileLink {
  readonly range: TextRange;
  /** As written. */
  readonly file: string;
}

const fileKinds: ReadonlySet<AnyNameKind> = new Set(['drawing', 'spec', 'table', 'approval']);

export function linksIn(source: SpecSource): FileLink[] {
  return namesIn(source)
    .filter(({ kind, name }) => fileKinds.has(kind) || (kind === 'font' && isFontFile(name)))
    .map(({ range, name }) => ({ range, file: name }));
}
