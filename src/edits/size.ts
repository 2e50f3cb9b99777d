/** Resizes a shape by hand by changing the figure in the text that gives its size. */

import type { TextEdit, YamlPath } from '../core/issue.ts';
import type { Units } from '../core/units.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { listed } from '../core/names.ts';
import { asksForColumns } from '../spec/batch/row-values.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { lengthInMm, lengthText } from './length-text.ts';
import { valueAt } from '../core/values.ts';

export const axes = ['width', 'height'] as const;
export type Axis = (typeof axes)[number];

/** Least size that can be set by hand, in mm. */
const leastMm = 0.5;

/** Generators whose value is their size, or has it under one of the keys below. */
const plates = [
  'rectangle',
  'ellipse',
  'circle',
  'heart',
  'oval',
  'house',
  'label',
  'ticket',
  'scallops',
  'polygon',
  'arrow',
];

/** The directions in which a shape's own size is written in the text; none if it is rotated. */
export function sizeAxes(source: SpecSource, shape: Shape): Axis[] {
  return axes.filter((axis) => figurePath(source, shape, axis));
}

/** Where nothing else can be said. */
export const setInText = 'its size is changed in the text';

/** What sets a size that cannot be changed by hand, and what to change instead; empty if all of it can. */
export function whatSetsSize(source: SpecSource, shape: Shape): string {
  const { fit, rotate = 0 } = shape.modifiers;
  const known = sizeAxes(source, shape);
  if (known.length === axes.length) return '';
  if (rotate % 180 !== 0) return 'it is turned; change its size in the text';
  if (axes.some((axis) => writtenPath(source, shape, axis) && !known.includes(axis)))
    return 'the batch gives its size; change it there';
  if (known[0]) return `only its ${known[0]} is written; the rest follows`;
  if (fit) return '“fit” sets its size; change its margin or what it fits in';
  const { generator } = shape;
  if (generator.kind === 'stack') {
    const members = generator.shapes.map(({ name }) => (name === undefined ? 'a member' : `“${name}”`));
    return `its size is that of ${listed([...new Set(members)])}; change those in the text`;
  }
  return setInText;
}

/** The edit that changes the size by `by` mm; `undefined` if the shape has no such size of its own. */
export function sizeEdit(source: SpecSource, shape: Shape, axis: Axis, by: number, units: Units): TextEdit | undefined {
  const path = figurePath(source, shape, axis);
  if (!path) return undefined;
  const before = valueAt(source.value, path);
  const mm = Math.max(lengthInMm(before, units) + by, leastMm);
  return { range: source.range(path), text: lengthText(mm, before, units) };
}

/** Path of the figure; `undefined` if a column of the batch gives the size. */
function figurePath(source: SpecSource, shape: Shape, axis: Axis): YamlPath | undefined {
  const path = writtenPath(source, shape, axis);
  return path && !asksForColumns(valueAt(source.value, path)) ? path : undefined;
}

function writtenPath(source: SpecSource, { path, modifiers }: Shape, axis: Axis): YamlPath | undefined {
  const { width, height, fit, rotate = 0 } = modifiers;
  if (rotate % 180 !== 0) return undefined;
  if (modifiers[axis] !== undefined) return [...path, axis];
  if (width !== undefined || height !== undefined || fit) return undefined;
  const places: YamlPath[] = plates.flatMap((plate) => {
    const own = [...path, plate];
    // The width of an arrow is its `length`.
    return [own, [...own, 'size'], [...own, 'across'], ...(axis === 'width' ? [[...own, 'length']] : [])];
  });
  return places.flatMap((place) => {
    const value = valueAt(source.value, place);
    if (Array.isArray(value)) return [[...place, axis === 'width' ? 0 : 1]];
    // A single figure for both directions, such as a circle's, stays single.
    return typeof value === 'number' || typeof value === 'string' ? [place] : [];
  })[0];
}
