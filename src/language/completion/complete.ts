/**
 * Completions at an offset of a spec. Every suggestion is first tried on the spec's value; one that would cause a new
 * problem, such as a key that does not go with the shape's generator, is not offered.
 */

import { completion } from './suggestion.ts';
import type { Completion, Suggestion } from './suggestion.ts';
import { keySuggestions } from './key-suggestions.ts';
import { namesIn } from '../navigation/names.ts';
import type { NamePlace } from '../navigation/names.ts';
import { placesAt, placeholderWord } from './cursor-context.ts';
import type { CursorContext } from './cursor-context.ts';
import type { WorkspaceNames } from '../workspace-names.ts';
import { SuggestionTrial } from './trial.ts';
import { columnValues, valueSuggestions } from './value-suggestions.ts';

export function completionsAt(text: string, offset: number, around: WorkspaceNames): Completion[] {
  return placesAt(text, offset).flatMap((place) => {
    const trial = new SuggestionTrial(place, around);
    const names = namesIn(place.held).filter(({ name }) => name !== placeholderWord);
    const fitting =
      place.role === 'key' ? keySuggestions(place, names, around, trial) : fittingValues(place, names, around, trial);
    const isTop = place.role === 'key' && place.path.length === 0;
    return fitting.map((suggestion) =>
      completion(suggestion, place, isTop ? rankAtTop(suggestion) : rankOf(suggestion, trial)),
    );
  });
}

/**
 * A list for a batch is meant to be typed over, so it is offered even if it lacks columns. Names to leave out are as many as
 * a table has rows, and none of them can be wrong.
 */
function fittingValues(
  place: CursorContext,
  names: readonly NamePlace[],
  around: WorkspaceNames,
  trial: SuggestionTrial,
): Suggestion[] {
  const suggestions = valueSuggestions(place, names, around);
  const [section, key] = place.path;
  return section === 'batch' && (key === undefined || key === 'without')
    ? suggestions
    : [
        ...trial.sift(suggestions),
        ...columnValues(place, around).filter((suggestion) => trial.brings(suggestion).length === 0),
      ];
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
function rankOf(suggestion: Suggestion, trial: SuggestionTrial): number {
  if (suggestion.kind === 'snippet') return 3;
  if (!trial.solvesProblem(suggestion)) return 2;
  return suggestion.kind === 'generator' ? 1 : 0;
}
