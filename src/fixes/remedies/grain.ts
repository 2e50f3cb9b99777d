/** Remedy for a piece with the grain across it: the sheet is laid the other way. */

import { otherGrain } from '../../tag/grain-direction.ts';
import type { Case, Remedy } from '../candidate.ts';
import { setting, valueAt } from '../candidate.ts';

/** Only the maker knows whether there is a sheet to be laid so. */
export function alongGrain(at: Case): Remedy[] {
  const { piece, tag } = at;
  if (!piece) return [];
  const { name } = tag.stock;
  const path = name === undefined ? ['stock'] : ['stocks', name];
  const grain = otherGrain(piece, tag);
  const isLooked = valueAt(at, [...path, 'look']) !== undefined;
  const candidates = isLooked
    ? setting(at, [...path, 'look'], 'grain', grain)
    : setting(at, path, 'look', `{grain: ${grain}}`);
  return [{ words: 'Lay the sheet so that the grain runs along it', candidates, isChoice: true }];
}
