/** The names of a spec as what they are names of, for colouring. */

import type { TextRange } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/source.ts';
import { namesIn } from './names.ts';

export const colouredKinds = ['shape', 'piece', 'named'] as const;

export interface ColouredName {
  readonly range: TextRange;
  readonly kind: (typeof colouredKinds)[number];
  readonly given: boolean;
}

/** In the order of the text. Fonts and files are not the spec's own names. */
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
