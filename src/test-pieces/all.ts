/** All test pieces: what each one finds out, and its spec for the stock at hand. */

import { engravingField } from './engraving-field.ts';
import { engravingLadder } from './engraving-ladder.ts';
import { holeComb } from './hole-comb.ts';
import { kerfTest } from './kerf-test.ts';
import type { TestPiece } from './test-piece.ts';
import { webComb } from './web-comb.ts';

/** In the order in which a new stock is tested. */
export const testPieces = {
  kerf: { title: 'Kerf test', finds: 'how much the beam removes', spec: kerfTest },
  web: { title: 'Web comb', finds: 'how narrow a bridge can be', spec: webComb },
  holes: { title: 'Hole comb', finds: 'the hole that your twine or ribbon needs', spec: holeComb },
  ladder: {
    title: 'Engraving ladder',
    finds: 'the smallest lettering you can read, and the spacing of engraved lines',
    spec: engravingLadder,
  },
  field: { title: 'Engraving field', finds: 'power and speed for engraving', spec: engravingField },
} as const satisfies Readonly<Record<string, TestPiece>>;

export type TestPieceName = keyof typeof testPieces;

export const testPieceNames = Object.keys(testPieces) as readonly TestPieceName[];

export function isTestPiece(name: string): name is TestPieceName {
  return Object.hasOwn(testPieces, name);
}
