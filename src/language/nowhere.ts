/** Places for a value that is in no text. */

import type { SpecPlaces } from '../spec/yaml/source.ts';

const nowhere = { start: 0, end: 0 };

export const nowherePlaces: Omit<SpecPlaces, 'value'> = {
  issues: [],
  range: () => nowhere,
  keyRange: () => nowhere,
  position: () => ({ line: 1, column: 1 }),
};
