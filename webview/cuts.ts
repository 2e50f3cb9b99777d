/** What bounds the solid material of a piece: filled by the even-odd rule, it is the finished piece. Pure. */

import type { PathData, ScenePiece } from '../src/preview/protocol.ts';

export function cutsOf({ parts }: ScenePiece): PathData[] {
  return parts
    .filter(({ operation }) => operation === 'cut-outer' || operation === 'cut-inner')
    .map(({ data }) => data);
}
