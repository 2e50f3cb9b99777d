/** The reason why a shape that is not fitted has no area, as the end of the sentence “This shape …”. */

import type { Generator, Modifiers } from '../spec/model/shape-model.ts';

const byKind: Readonly<Partial<Record<Generator['kind'], string>>> = {
  path: 'encloses nothing. To score or engrave along it, add “lines: true”',
  intersection: 'is empty: what it is made of shares nothing',
  difference: 'is empty: nothing is left of it',
  border: 'has no room inside the shape that it runs along',
  code: 'has bridges as wide as its modules',
  stick: 'meets nothing of what it should carry',
};

export function whyEmpty({ kind }: Generator, { grow = 0, width, height }: Modifiers): string {
  if (grow < 0) return 'is thinned away to nothing';
  if (grow > 0 && Math.min(width ?? Infinity, height ?? Infinity) <= 2 * grow)
    return 'cannot be grown that much and stay that small';
  return byKind[kind] ?? 'has no area';
}
