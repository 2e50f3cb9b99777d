/**
 * Gives the plate of a sample another width, and all that goes with it the same share, in round figures: a spec with one
 * width for its plate and another for its piece says two things at once.
 */

import { lengthInMm } from '../edits/length-text.ts';
import { withEdits } from '../fixes/find-fixes.ts';
import type { TextEdit, YamlPath } from '../core/issue.ts';
import { roundInches, trimmed, type Units } from '../core/units.ts';
import { isGroup, samePath, unitsOf, valueAt } from '../core/values.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { isLength } from './schema.ts';
import { valuesIn } from './values-with-schema.ts';

/** Where the generators that samples make plates with have their width. */
const widthsAt: readonly YamlPath[] = [
  ['label', 'size', 0],
  ['arrow', 'length'],
  ['scallops', 'across'],
];

/** `undefined` if no plate says its width, or a ring beside it makes the tag wider. */
export function withPlateWidth(source: SpecSource, width: string): string | undefined {
  const { value, tree, text } = source;
  const units = unitsOf(value);
  const place = placeOfWidth(value);
  const written = place && valueAt(value, place);
  if (!place || written === undefined) return undefined;
  const share = lengthInMm(width, units) / lengthInMm(written, units);
  const edits = [...valuesIn(tree)].flatMap(({ node, path, schemas }): TextEdit[] => {
    if (node.kind !== 'scalar' || !schemas.some(isLength) || !belongs(path)) return [];
    const mm = lengthInMm(node.value, units);
    if (mm === 0) return [];
    return [{ range: node.range, text: samePath(path, place) ? width : rounded(share * mm, units) }];
  });
  return withEdits(text, edits);
}

function placeOfWidth(value: unknown): YamlPath | undefined {
  const pieces = valueAt(value, ['pieces']);
  const [piece] = Object.values(isGroup(pieces) ? pieces : {});
  const [body, ...others] = (valueAt(piece, ['body']) as readonly unknown[] | undefined) ?? [];
  const isWidened =
    valueAt(piece, ['hanger', 'ring']) !== undefined && valueAt(piece, ['hanger', 'ring', 'at']) !== 'top';
  if (typeof body !== 'string' || others.length > 0 || isWidened) return undefined;
  return widthsAt.map((path): YamlPath => ['shapes', body, ...path]).find((path) => valueAt(value, path) !== undefined);
}

/** Shapes, and the place of a hanger; what holds a tie is as large as the tie wants it. */
function belongs([group, , ...path]: YamlPath): boolean {
  return group === 'shapes' || (group === 'pieces' && path.includes('at'));
}

/** Half millimetres, and tenths of what is small. */
function rounded(mm: number, units: Units): string {
  if (units === 'in') return `${roundInches(mm)} in`;
  return `${Math.abs(mm) >= 5 ? Math.round(2 * mm) / 2 : trimmed(mm, 1)} mm`;
}
