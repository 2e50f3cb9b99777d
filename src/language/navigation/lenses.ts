/** Code lenses above each piece: its finished size, its parts and its number of problems. */

import type { Report } from '../../engine/engine.ts';
import { isError, tally, type Issue, type TextRange } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { shapesOf } from '../../tag/load.ts';
import { counted, sizeText } from '../../core/units.ts';
import { countParts, sizeOfRegion } from '../hover/sizes.ts';
import { valueAt } from '../../core/values.ts';

export interface PieceLens {
  readonly piece: string;
  /** Range of the piece's key. */
  readonly range: TextRange;
  readonly text: string;
  /** The size alone, for copying. */
  readonly size: string;
}

/**
 * `source`: the current text, which may be newer than the report. `since`: the issues of that text, where no tag can be
 * made of it.
 */
export function lensesOf(
  { tag, model, issues }: Report,
  source: SpecSource,
  since?: readonly Pick<Issue, 'severity'>[],
): PieceLens[] {
  if (!tag) return [];
  const errors = since?.filter(isError);
  // A problem of the text has a path but no piece. A shape that cannot be made is missing from every piece that uses
  // it.
  const isOf = ({ piece, path: [section, name] }: Issue, id: string) => {
    if (piece !== undefined) return piece === id;
    if (section !== 'shapes') return section === 'pieces' && name === id;
    const made = model?.pieces.find((each) => each.id === id);
    return made !== undefined && [...shapesOf(made)].some((shape) => shape.name === name);
  };
  return tag.pieces.flatMap(({ id, path, region }) => {
    const size = sizeOfRegion(region);
    if (!size || valueAt(source.value, path) === undefined) return [];
    const text = [
      sizeText(size.width, size.height, tag.units),
      counted(countParts(region).parts, 'part'),
      errors
        ? `out of date: ${tally(errors)}`
        : tally(issues.filter((issue) => isOf(issue, id))).replaceAll(', ', ' · ') || 'no problems',
    ].join(' · ');
    return [{ piece: id, range: source.keyRange(path), text, size: sizeText(size.width, size.height, tag.units) }];
  });
}
