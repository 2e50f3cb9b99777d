/**
 * Completions at an offset of a spec. Every suggestion is first tried on the spec's value; one that would cause a new
 * problem, such as a key that does not go with the shape's generator, is not offered.
 */

import { completion } from './suggestion.ts';
import type { Completion, Suggestion } from './suggestion.ts';
import { keyIdeas } from './key-suggestions.ts';
import { namesIn } from '../navigation/names.ts';
import type { NamePlace } from '../navigation/names.ts';
import { placesAt, placeholderWord } from './cursor-context.ts';
import type { CursorContext } from './cursor-context.ts';
import type { WorkspaceNames } from '../surroundings.ts';
import { SuggestionTrial } from './trial.ts';
import { columnValues, valueIdeas } from './value-suggestions.ts';

export function completionsAt(text: string, offset: number, around: WorkspaceNames): Completion[] {
  return placesAt(text, offset).flatMap((place) => {
    const trial = new SuggestionTrial(place, around);
    const names = namesIn(place.held).filter(({ name }) => name !== placeholderWord);
    const fitting =
      place.role === 'key' ? keyIdeas(place, names, around, trial) : fittingValues(place, names, around, trial);
    const isTop = place.role === 'key' && place.path.length === 0;
    return fitting.map((idea) => completion(idea, place, isTop ? rankAtTop(idea) : rankOf(idea, trial)));
  });
}

/** A list for a batch is meant to be typed over, so it is offered even if it lacks columns. */
function fittingValues(
  place: CursorContext,
  names: readonly NamePlace[],
  around: WorkspaceNames,
  trial: SuggestionTrial,
): Suggestion[] {
  const ideas = valueIdeas(place, names, around);
  return place.path.length === 1 && place.path[0] === 'batch'
    ? ideas
    : [...trial.sift(ideas), ...columnValues(place, around).filter((idea) => trial.brings(idea).length === 0)];
}

/** The order in which a tag is usually written. */
const orderOfWork = [
  'tagwright',
  'tagwright_job',
  'title',
  'use',
  'stock',
  'tie',
  'tags',
  'sheets',
  'shapes',
  'pieces',
];

/** Whole tags first, then keys in the order in which they are needed, then the rest. */
function rankAtTop({ kind, label }: Suggestion): number {
  if (kind === 'snippet') return 0;
  const at = orderOfWork.indexOf(label);
  return 1 + (at < 0 ? orderOfWork.length : at);
}

/** Suggestions that solve a problem come first, and a shape's generator before its modifiers. */
function rankOf(idea: Suggestion, trial: SuggestionTrial): number {
  if (idea.kind === 'snippet') return 3;
  if (!trial.mends(idea)) return 2;
  return idea.kind === 'generator' ? 1 : 0;
}
