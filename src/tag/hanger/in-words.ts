/** Hangers in words: which is meant, and what keeps one from being placed. */

import { limit } from '../../core/figures.ts';
import { placeInWords } from '../../core/place-in-words.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Hanger } from '../../spec/model/model.ts';
import type { PlacedHanger } from '../tag.ts';
import { insetsOf } from './space.ts';

/** “the hole at the top”, “the slot on the left”. Those of a row have one place, so they have the same words. */
export function openingInWords({ kind, at, centre }: PlacedHanger, body: Region): string {
  const what = kind === 'ring' ? 'the hole of the ring' : `the ${kind}`;
  if (at.kind !== 'anchor') return `${what} ${placeInWords(centre, boundsOf(body)!)}`;
  const isAcross = at.anchor === 'left' || at.anchor === 'right';
  return `${what} ${isAcross ? 'on' : 'at'} the ${at.anchor.replace('-', ' ')}`;
}

/** @param isLettering Whether the body is letters and nothing else. */
export function noRoomFor(hanger: Hanger, isLettering: boolean): string {
  const { kind, row } = hanger;
  if (row)
    return `There is no room for ${row.count} ${kind}s in a row here; set them closer together, or make the body larger.`;
  if (isLettering)
    return `No letter has room for the ${kind} here: hang the tag by a “ring”, which stands beside the letters.`;
  if (kind === 'ring') return 'There is no room for the ring here; make the body larger or the ring smaller.';
  const least = insetsOf(hanger).at(-1)!;
  const across = kind === 'keyhole' ? hanger.head : hanger.opening;
  return (
    `There is no room for the ${kind} here. It takes ${limit(across + 2 * least)}: ${limit(across)} for itself and ` +
    `${limit(least)} of material on each side. Make the body larger or the ${kind} smaller.`
  );
}
