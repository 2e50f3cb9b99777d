/** The entries of a piece's lists, each with the ids of what it makes in a scene. */

import type { ShapeEntry, PieceModel } from '../spec/model/model.ts';
import { ids } from './scene-ids.ts';

export interface EntryIds extends ShapeEntry {
  readonly list: 'body' | 'cut' | 'mark';
  readonly ids: string[];
}

export function entriesOf({ id, body, cut, engrave, score }: PieceModel): EntryIds[] {
  return [
    ...body.map((entry, index): EntryIds => {
      return { ...entry, list: 'body', ids: [ids.shape(id, index), ids.holes(id, index)] };
    }),
    ...cut.map((entry, index): EntryIds => ({ ...entry, list: 'cut', ids: [ids.cut(id, index)] })),
    ...[...engrave, ...score].map((entry, index): EntryIds => ({ ...entry, list: 'mark', ids: [ids.mark(id, index)] })),
  ];
}
