/** What stands above each piece: its finished size, its parts and how many problems it has. */

import type { Report } from '../../engine/engine.ts';
import { tally, type Issue, type TextRange } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/source.ts';
import { shapesOf } from '../../tag/load.ts';
import { counted, sizeText } from '../../core/units.ts';
import { partsOf, sizeOfRegion } from '../hover/sizes.ts';
import { valueAt } from '../../core/values.ts';

export interface PieceLens {
  readonly piece: string;
  /** Of the piece's key. */
  readonly range: TextRange;
  readonly text: string;
  /** The size alone, to be taken elsewhere. */
  readonly size: string;
}

/** `source`: the text as it stands now, which may be newer than what was made. */
export function lensesOf({ tag, model, issues }: Report, source: SpecSource): PieceLens[] {
  if (!tag) return [];
  // What is wrong with the text has no piece but a place in one. A shape that cannot be made is missing on every piece that
  // is made of it.
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
      counted(partsOf(region).parts, 'part'),
      tally(issues.filter((issue) => isOf(issue, id))).replaceAll(', ', ' · ') || 'no problems',
    ].join(' · ');
    return [{ piece: id, range: source.keyRange(path), text, size: sizeText(size.width, size.height, tag.units) }];
  });
}
