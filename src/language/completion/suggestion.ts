/** Something that could be written at a place, before it has been tried. */

import type { TextRange } from '../../core/issue.ts';
import type { CursorContext } from './cursor-context.ts';
import { plainOf } from './snippets.ts';
import { SpecSource } from '../../spec/source.ts';

export type SuggestionKind = 'key' | 'generator' | 'value' | 'unit' | 'font' | 'shape' | 'piece' | 'file' | 'snippet';

export interface Suggestion {
  readonly kind: SuggestionKind;
  readonly label: string;
  /** A word or two beside the label. */
  readonly detail?: string;
  /** Markdown; what is from the spec is in it as plain text only. */
  readonly docs?: string;
  /** In snippet syntax. */
  readonly snippet: string;
  /** What the word is compared with as one types; the label unless said. */
  readonly filter?: string;
  /** The value of the whole spec with it. */
  readonly whole: unknown;
}

/** An idea that leaves the spec no worse than it is. */
export interface Completion extends Omit<Suggestion, 'whole' | 'filter'> {
  readonly replace: TextRange;
  readonly filter: string;
  /** Lower comes first; equal ones in their order. */
  readonly rank: number;
}

/** The same few hundred snippets come up again and again, and parsing them is most of the work of a completion. */
const values = new Map<string, unknown>();
const mostValues = 2000;

/** What a snippet between brackets says as a value. */
export function valueOfSnippet(snippet: string): unknown {
  if (values.has(snippet)) return values.get(snippet);
  const { value } = new SpecSource(plainOf(snippet));
  if (values.size >= mostValues) values.clear();
  values.set(snippet, value);
  return value;
}

export function completion(idea: Suggestion, place: CursorContext, rank: number): Completion {
  const { before, after, replace, quote } = place;
  const { kind, label, detail, docs, snippet, filter = label } = idea;
  return {
    kind,
    label,
    ...(detail === undefined ? {} : { detail }),
    ...(docs === undefined ? {} : { docs }),
    snippet: `${before}${snippet}${after}`,
    filter: `${before}${quote}${filter}`,
    replace,
    rank,
  };
}
