/** Converts a spec to the other unit: rewrites every length and sets `units`. */

import { newLineOf } from '../../core/lines.ts';
import { lengthText } from '../../edits/length-text.ts';
import type { TextEdit } from '../../core/issue.ts';
import { parseLength } from '../../core/length.ts';
import type { Units } from '../../core/units.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { isLength } from '../schema.ts';
import { isGroup, unitsOf } from '../../core/values.ts';
import { valuesIn } from '../values-with-schema.ts';

export interface Conversion {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/**
 * Precise to a ten-thousandth of an inch or a hundredth of a millimetre, unless others are to be written. Lengths in points and pixels are unchanged.
 * `undefined` if path data would change its size with the units.
 */
export function unitConversion(source: SpecSource, round: Rounding = lengthAs): Conversion | undefined {
  const { tree, value } = source;
  if (tree?.kind !== 'map' || tree.flow || hasPathData(value)) return undefined;
  const from = unitsOf(value);
  const to: Units = from === 'in' ? 'mm' : 'in';
  const lengths = lengthEdits(source, from, to, round);
  const written = tree.entries.find(({ key }) => key.value === 'units')?.value;
  const first = tree.entries.find(({ key }) => key.value === 'tagwright');
  if (!written && !first?.value) return undefined;
  const at = first?.value?.range.end ?? 0;
  const units: TextEdit = written
    ? { range: written.range, text: to }
    : { range: { start: at, end: at }, text: `${newLineOf(source.text)}units: ${to}` };
  return { title: `Convert this file to ${to === 'in' ? 'inches' : 'millimetres'}`, edits: [units, ...lengths] };
}

/** A length in a unit as it is written. */
type Rounding = (mm: number, units: Units) => string;

const lengthAs: Rounding = (mm, units) => lengthText(mm, undefined, units);

function lengthEdits({ tree }: SpecSource, from: Units, to: Units, round: Rounding): TextEdit[] {
  return [...valuesIn(tree)].flatMap(({ node, schemas }): TextEdit[] => {
    if (node.kind !== 'scalar' || !schemas.some(isLength)) return [];
    const { value, range, quoted } = node;
    if (typeof value !== 'number' && typeof value !== 'string') return [];
    const unit = /[a-z]+\s*$/.exec(String(value))?.[0].trim();
    if (unit === to || unit === 'pt' || unit === 'px') return [];
    const length = parseLength(value, from);
    if (!('mm' in length)) return [];
    const written = round(length.mm, to);
    const text = unit === undefined ? written.replace(/ .*$/, '') : written;
    return [{ range, text: quoted ? JSON.stringify(text) : text }];
  });
}

/** Numbers in path data are in the spec's units and carry none of their own. */
function hasPathData(value: unknown): boolean {
  if (Array.isArray(value)) return value.some(hasPathData);
  return isGroup(value) && (typeof value['path'] === 'string' || Object.values(value).some(hasPathData));
}
