/** Tries suggestions on the value of the spec: none may cause a problem that is not there already. */

import { readSpec } from '../../spec/parse.ts';
import type { Uses } from '../../spec/files/used-files.ts';
import type { Grammar } from '../grammar.ts';
import { nowherePlaces } from '../nowhere.ts';
import type { WorkspaceNames } from '../workspace-names.ts';
import type { Suggestion } from './suggestion.ts';
import type { CursorContext } from './cursor-context.ts';

const specIssues: Grammar['issues'] = (value, uses) => readSpec({ value, ...nowherePlaces }, uses).issues;

export class SuggestionTrial {
  readonly #uses: Uses;
  readonly #issues: Grammar['issues'];
  readonly #known = new WeakMap<object, readonly string[]>();
  /**
   * Problems that are there already. A half-typed word is a problem itself, so a key is compared with the spec without
   * it.
   */
  readonly #before: readonly string[];

  constructor({ role, colon, now, rest }: CursorContext, { uses, grammar }: Pick<WorkspaceNames, 'uses' | 'grammar'>) {
    this.#uses = uses;
    this.#issues = grammar?.issues ?? specIssues;
    const written = this.#problems(now);
    const without = role === 'value' ? written : this.#problems(rest);
    this.#before = colon ? without.filter((problem) => written.includes(problem)) : without;
  }

  /** New problems that a suggestion would cause. */
  brings({ whole }: Suggestion): readonly string[] {
    return this.#problems(whole).filter((problem) => !this.#before.includes(problem));
  }

  solvesProblem({ whole }: Suggestion): boolean {
    return this.#problems(whole).length < this.#before.length;
  }

  /**
   * Suggestions that cause no new problem. A problem that all of several values would cause does not depend on the
   * choice: the present value, or its absence, only hid it.
   */
  sift(suggestions: readonly Suggestion[]): Suggestion[] {
    const brought = suggestions.map((suggestion) => this.brings(suggestion));
    const [first, ...others] = brought;
    const shared = others.length > 0 ? first!.filter((problem) => others.every((each) => each.includes(problem))) : [];
    return suggestions.filter((_, index) => brought[index]!.every((problem) => shared.includes(problem)));
  }

  #problems(value: unknown): readonly string[] {
    const known = typeof value === 'object' && value !== null ? this.#known.get(value) : undefined;
    if (known) return known;
    const problems = this.#issues(value, this.#uses).map(
      ({ code, path, message }) => `${code}@${path.join('/')}: ${message}`,
    );
    if (typeof value === 'object' && value !== null) this.#known.set(value, problems);
    return problems;
  }
}
