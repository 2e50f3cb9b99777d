/** How each operation is drawn: the user's wishes, and what is usual where there are none. */

import { coloursOf } from '../tag/operation-colours.ts';
import type { Operation, Tag } from '../tag/tag.ts';

export interface Style {
  /** #RRGGBB. */
  readonly color: string;
  /** In mm, on a screen or on paper; the machine follows the middle of a line. */
  readonly lineWidth: number;
  readonly layer: string;
}

const lineWidthMm = 0.1;

export function styleOf({ output }: Tag, operation: Operation): Style {
  const given = output.styles[operation];
  return {
    color: coloursOf(output)[operation],
    lineWidth: given?.lineWidth ?? lineWidthMm,
    layer: given?.layer ?? operation,
  };
}

/** What a person calls an operation. */
export const operationNames: Readonly<Record<Operation, string>> = {
  engrave: 'Engrave',
  score: 'Score',
  'cut-inner': 'Cut, inner',
  'cut-outer': 'Cut, outer',
};
