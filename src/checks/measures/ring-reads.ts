/** What a ring reads as that was not asked for with its place. */

import type { ReadAs } from '../../tag/hanger/reading.ts';
import type { PlacedHanger } from '../../tag/tag.ts';

/** Below or behind the letters is where it was asked for then. */
const asked: readonly { readonly is: ReadAs; readonly at: RegExp }[] = [
  { is: 'tail', at: /^bottom/ },
  { is: 'p', at: /right$/ },
];

export function ringReads({ at, readAs = [] }: Pick<PlacedHanger, 'at' | 'readAs'>): readonly ReadAs[] {
  const anchor = at.kind === 'anchor' ? at.anchor : '';
  return readAs.filter((each) => !asked.some(({ is, at: place }) => is === each && place.test(anchor)));
}
