/** What stands above each piece: its finished size, its parts and how many problems it has. */

import type { Report } from '../engine.ts';
import type { TextRange } from '../issue.ts';
import { counted, sizeIn } from './figures.ts';
import { partsOf, sizeOfRegion } from './sizes.ts';

export interface PieceLens {
  readonly piece: string;
  /** Of the piece's key. */
  readonly range: TextRange;
  readonly text: string;
  /** The size alone, to be taken elsewhere. */
  readonly size: string;
}

/** None while there is no tag: what was made of an earlier text is not what stands below. */
export function lensesOf({ tag, source, issues }: Report): PieceLens[] {
  if (!tag) return [];
  return tag.pieces.flatMap(({ id, path, region }) => {
    const size = sizeOfRegion(region);
    if (!size) return [];
    const count = (severity: string) =>
      issues.filter((issue) => issue.piece === id && issue.severity === severity).length;
    const [errors, warnings] = [count('error'), count('warning')];
    const text = [
      sizeIn(size, tag.units),
      counted(partsOf(region).parts, 'part'),
      ...(errors > 0 ? [counted(errors, 'error')] : []),
      ...(warnings > 0 ? [counted(warnings, 'warning')] : []),
      ...(errors + warnings > 0 ? [] : ['no problems']),
    ].join(' · ');
    return [{ piece: id, range: source.keyRange(path), text, size: sizeIn(size, tag.units) }];
  });
}
