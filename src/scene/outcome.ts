/** Outcome of a fix: the tag as it would be, drawn over the present one. Pure. */

import type { Tag } from '../tag/tag.ts';
import type { OutcomePiece } from '../protocol/preview.ts';
import type { Fix } from '../core/issue.ts';
import { labelOf } from '../spec/batch/batch.ts';
import { sceneOf } from './scene.ts';

type InBatch = Parameters<typeof labelOf>[0];

/** Whether there is an outcome to draw: where a fix leaves names out, another tag may have come to the row. */
export function isOfSameTag({ aside }: Pick<Fix, 'aside'>, before: InBatch, after: InBatch): boolean {
  return !aside || labelOf(before) === labelOf(after);
}

export function outcomeOf(tag: Tag): OutcomePiece[] {
  // No source offsets: nothing in this drawing can be pointed at.
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
