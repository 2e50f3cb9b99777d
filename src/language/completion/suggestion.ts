/** A suggestion for a place in the text, before it has been tried. */

import type { TextRange } from '../../core/issue.ts';
import type { CursorContext } from './cursor-context.ts';
import { plainOf } from './snippets.ts';
import { SpecSource } from '../../spec/yaml/source.ts';

export type SuggestionKind = 'key' | 'generator' | 'value' | 'unit' | 'font' | 'shape' | 'piece' | 'file' | 'snippet';

export interface Suggestion {
  readonly kind: SuggestionKind;
  readonly label: string;
  /** A word or two shown beside the label. */
  readonly detail?: string;
  /** Markdown; text from the spec is included as plain text only. */
  readonly docs?: string;
  readonly snippet: string;
  /** Text matched against the typed word; by default the label. */
  readonly filter?: string;
  /** The value of the whole spec with the suggestion applied. */
  readonly whole: unknown;
}

/** A suggestion that causes no new problem. */
export interface Completion extends Omit<Suggestion, 'whole' | 'filter'> {
  readonly replace: TextRange;
  readonly filter: string;
  /** Lower ranks come first; equal ones keep their order. */
  readonly rank: number;
}

/** Cached: the same few hundred snippets recur, and parsing them is most of the work of a completion. */
const values = new Map<string, unknown>();
const mostValues = 2000;

/** Value of a snippet in flow style. */
export function valueOfSnippet(snippet: string): unknown {
  if (values.has(snippet)) return values.get(snippet);
  const { value } = new SpecSource(plainOf(snippet));
  if (values.size >= mostValues) values.clear();
  values.set(snippet, value);
  return value;
}

export function completion(suggestion: Suggestion, place: CursorContext, rank: number): Completion {
  const { before, after, replace, quote } = place;
  const { kind, label, detail, docs, snippet, filter = label } = suggestion;
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
