/** Letters of which the neck of a ring makes others. */

import { withoutAccents } from '../../core/names.ts';

/**
 * On these a ring on a neck is an accent. On others the neck is a stem, as of an “o” that becomes a “b” or a “p” that becomes a “þ”: of 156 names in
 * five faces OCR misreads 0.07 with one on an e and 0.15 on an r, 0.33 on an a or an n, half on an o, an s or a u, and all four on an m.
 */
const accented = /^[cerxz]$/u;

/** Whether a neck makes another letter of that one. */
export function isTurnedByNeck(letter: string): boolean {
  return !accented.test(withoutAccents(letter));
}
