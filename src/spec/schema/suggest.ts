/** “Did you mean”: the known words nearest to an unknown one. */

import { distance } from 'fastest-levenshtein';

/** At most three of `known`, nearest first, without any so far off that it would be a guess. */
export function nearestWords(word: string, known: readonly string[]): string[] {
  const wanted = word.toLowerCase();
  const furthest = furthestFrom(word);
  return known
    .map((candidate) => ({ candidate, steps: editDistance(wanted, candidate.toLowerCase()) }))
    .filter(
      ({ candidate, steps }) => steps <= furthest || (wanted.length > 2 && candidate.toLowerCase().startsWith(wanted)),
    )
    .sort((a, b) => a.steps - b.steps || (a.candidate < b.candidate ? -1 : 1))
    .slice(0, 3)
    .map(({ candidate }) => candidate);
}

/** Whether a word is one of `known`, or a slip of the hand away from it. */
export function isMeantAs(word: string, known: string): boolean {
  return editDistance(word.toLowerCase(), known.toLowerCase()) <= furthestFrom(word);
}

/** Most letters of a word that may be wrong. */
function furthestFrom(word: string): number {
  return Math.max(1, Math.floor(word.length / 3));
}

/** Number of letters inserted, left out or changed; swapping two neighbours counts as one slip (Damerau 1964). */
function editDistance(wanted: string, candidate: string): number {
  for (let at = 0; at + 1 < wanted.length; at += 1) {
    if (wanted.slice(0, at) + wanted[at + 1]! + wanted[at]! + wanted.slice(at + 2) === candidate) return 1;
  }
  return distance(wanted, candidate);
}

/** The end of a message: ` Did you mean “width”?`, or nothing. */
export function didYouMean(suggestions: readonly string[]): string {
  return suggestions.length === 0 ? '' : ` Did you mean ${suggestions.map((word) => `“${word}”`).join(' or ')}?`;
}
