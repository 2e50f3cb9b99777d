/** What a fix would make of the tag, as the page lays it over what is there. Pure. */

import type { Tag } from '../tag/tag.ts';
import type { OutcomePiece } from '../protocol/preview.ts';
import { sceneOf } from './scene.ts';

export function outcomeOf(tag: Tag): OutcomePiece[] {
  // Nothing of it can be pointed at.
  const { pieces } = sceneOf(tag, () => 0);
  return pieces.map(({ id, title, glueTo, parts, bounds }) => {
    const isCut = (operation: string): boolean => operation === 'cut-outer' || operation === 'cut-inner';
    const dataOf = (all: typeof parts): string => all.map(({ data }) => data).join('');
    return {
      id,
      title,
      ...(glueTo !== undefined && { glueTo }),
      solid: dataOf(parts.filter(({ operation }) => isCut(operation))),
      marks: dataOf(parts.filter(({ operation }) => !isCut(operation))),
      bounds,
    };
  });
}
