/** Semantic highlighting: the names of a spec with their kinds. */

import type { TextRange } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/source.ts';
import { namesIn } from './names.ts';

export const colouredKinds = ['shape', 'piece', 'named'] as const;

export interface ColouredName {
  readonly range: TextRange;
  readonly kind: (typeof colouredKinds)[number];
  readonly given: boolean;
}

/** In text order, without fonts and files, which the spec does not define. */
export function colouredNames(source: SpecSource): ColouredName[] {
  return namesIn(source)
    .flatMap(({ kind, range, given }): ColouredName[] => {
      switch (kind) {
        case 'shape':
        case 'part':
          return [{ range, kind: 'shape', given }];
        case 'piece':
          return [{ range, kind, given }];
        case 'hanger':
        case 'stock':
        case 'tie':
        case 'machine':
          return [{ range, kind: 'named', given }];
        case 'font':
        case 'drawing':
        case 'spec':
        case 'table':
        case 'column':
        case 'tag':
        case 'offcuts':
          return [];
      }
    })
    .sort((a, b) => a.range.start - b.range.start);
}
