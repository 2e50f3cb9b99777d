/** Semantic highlighting: the names of a spec with their kinds. */

import type { TextRange } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { namesIn } from './names.ts';

export const nameTokenKinds = ['shape', 'piece', 'named'] as const;

export interface NameToken {
  readonly range: TextRange;
  readonly kind: (typeof nameTokenKinds)[number];
  readonly given: boolean;
}

/** In text order, without fonts and files, which the spec does not define. */
export function nameTokens(source: SpecSource): NameToken[] {
  return namesIn(source)
    .flatMap(({ kind, range, isDefinition }): NameToken[] => {
      switch (kind) {
        case 'shape':
        case 'part':
          return [{ range, kind: 'shape', given: isDefinition }];
        case 'piece':
          return [{ range, kind, given: isDefinition }];
        case 'hanger':
        case 'stock':
        case 'tie':
        case 'machine':
          return [{ range, kind: 'named', given: isDefinition }];
        case 'font':
        case 'drawing':
        case 'spec':
        case 'table':
        case 'approval':
        case 'column':
        case 'tag':
        case 'offcuts':
          return [];
      }
    })
    .sort((a, b) => a.range.start - b.range.start);
}
