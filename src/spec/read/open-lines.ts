/** Which shapes have lines in them that enclose nothing. */

import { oncePer } from '../../core/once-per.ts';
import type { Shape } from '../model/shape-model.ts';

type Lines = 'all' | 'some' | 'none';

/**
 * Whether a shape is made of such lines, wholly or in part. Shapes share what they are made of: asked anew each time, a few
 * lines of YAML would take for ever.
 */
export const openLinesIn = oncePer(({ generator }: Shape): Lines => {
  switch (generator.kind) {
    case 'path':
    case 'drawing':
      return generator.asLines ? 'all' : 'none';
    case 'strokes':
      return 'all';
    case 'border':
      return generator.lines.every(({ from, to }) => from === to) ? 'all' : 'none';
    case 'from':
      return openLinesIn(generator.shape);
    case 'repeat':
    case 'difference':
      return firstOf(generator.shapes);
    case 'union':
    case 'lines': {
      const found = new Set(generator.shapes.map(openLinesIn));
      return found.size === 1 ? [...found][0]! : found.size === 0 ? 'none' : 'some';
    }
    case 'intersection': {
      const found = generator.shapes.map(openLinesIn);
      return found.find((each) => each === 'all') ?? found.find((each) => each === 'some') ?? 'none';
    }
    default:
      return 'none';
  }
});

function firstOf([first]: readonly Shape[]): Lines {
  return first ? openLinesIn(first) : 'none';
}
