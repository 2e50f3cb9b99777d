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
      completion(suggestion, place, isTop ? rankAtTop(suggestion) : rankOf(suggestion, place, trial)),
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

/** The ways to give a size, as makers think of them: what is measured before the em of a font. */
const sizeKeys = ['width', 'x_height', 'cap_height', 'height', 'fit', 'size'];
const afterSizes = sizeKeys.length;

/** Suggestions that solve a problem come first, and a shape's generator before its modifiers; room to fit into before the whole of a shape. */
function rankOf(suggestion: Suggestion, place: CursorContext, trial: SuggestionTrial): number {
  const isSnippet = suggestion.kind === 'snippet';
  if (place.role !== 'key' && place.path.at(-1) === 'fit') return isSnippet ? 0 : 1;
  if (isSnippet) return afterSizes + 2;
  if (!trial.solvesProblem(suggestion)) return afterSizes + 1;
  return suggestion.kind === 'generator' ? afterSizes : Math.max(0, sizeKeys.indexOf(suggestion.label));
}
