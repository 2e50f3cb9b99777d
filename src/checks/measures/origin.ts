/** The original of a shape, and its name in messages. */

import { textsOf } from '../../spec/model/shape-model.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Piece, Tag } from '../../tag/tag.ts';

/** The shape that a copy, or a copy of a copy, is made from. */
export function originOf(shape: Shape): Shape {
  return shape.generator.kind === 'from' ? originOf(shape.generator.shape) : shape;
}

/** Whether a shape is made with another, or with a copy of it: a halo with the letters it surrounds. */
export function isMadeWith(shape: Shape, other: Shape): boolean {
  if (originOf(shape) === originOf(other)) return true;
  const { generator } = shape;
  if ('shapes' in generator) return generator.shapes.some((part) => isMadeWith(part, other));
  return 'shape' in generator && isMadeWith(generator.shape, other);
}

/** Whether a piece is made of the shape, of a copy of it, or of the shape it is a copy of. */
export function isMadeFromSame(shape: Shape, { sources }: Piece, made: Tag['made']): boolean {
  const origin = originOf(shape);
  const paths = sources.map(({ path }) => path.join('/'));
  return [...made.keys()].some((other) => originOf(other) === origin && paths.includes(other.path.join('/')));
}

/** Whether the visible part of a shape is letters; a field with letters cut out of it is not. */
export function isLettering({ generator }: Shape): boolean {
  switch (generator.kind) {
    case 'text':
    case 'lines':
      return true;
    case 'from':
      return isLettering(generator.shape);
    case 'union':
      return generator.shapes.some(isLettering);
    case 'difference':
    case 'intersection':
      return generator.shapes[0] !== undefined && isLettering(generator.shapes[0]);
    default:
      return false;
  }
}

/** The name of a shape in messages. One without a name is called by its original, or by its words. */
export function nameForMessage({ name, generator }: Shape): string | undefined {
  if (name !== undefined) return `“${name}”`;
  if (generator.kind === 'from') return nameForMessage(generator.shape);
  const words = textsOf(generator).map(({ text }) => text);
  return words.length > 0 ? `“${words.join(' ')}”` : undefined;
}
