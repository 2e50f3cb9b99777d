/** What is wrong with tags of a job that are cut all the same: told at their spec, once for each cause. */

import { causeOf } from '../../core/issue.ts';
import type { Issue } from '../../core/issue.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { clip } from '../../core/length.ts';
import { listed, listedQuoted } from '../../core/names.ts';
import type { MadeTag } from './left-out.ts';

/** Most tags that are named. */
const mostNames = 3;

interface Warned {
  readonly line: number;
  /** The first of each tag. */
  readonly found: Map<string, Issue>;
}

/** A tag that has the problem, and its piece, if it is seen on one. */
type WarnedTag = Pick<Issue, 'piece'> & { readonly label: string };

export interface TagWarning {
  readonly code: IssueCode;
  readonly message: string;
  readonly spec: string;
  readonly line: number;
  readonly tags: readonly WarnedTag[];
  /** Whose figures and letters are in the text: “, worst in “Nigella””; empty if they are those of all. */
  readonly where: string;
  readonly text: string;
}

export class TagWarnings {
  readonly #found = new Map<string, Warned>();

  add({ issues, source }: MadeTag, label: string): void {
    for (const issue of issues.filter(({ severity }) => severity === 'warning')) {
      const cause = causeOf(issue);
      const known = this.#found.get(cause) ?? { line: source.position(issue.range.start).line, found: new Map() };
      if (!known.found.has(label)) known.found.set(label, issue);
      this.#found.set(cause, known);
    }
  }

  of(spec: string): TagWarning[] {
    return [...this.#found.values()].map(({ line, found }) => {
      const [worst, { code, width, message: text }] = worstOf(found);
      const names = [...found.keys()].filter((label) => label !== '').map((label) => clip(label));
      const alike = new Set([...found.values()].map(({ message }) => message)).size === 1;
      const where = alike || worst === '' ? '' : `, ${width === undefined ? 'in' : 'worst in'} “${clip(worst)}”`;
      const [who, place] = [listedQuoted(names, mostNames), `${spec}, line ${line}`];
      const message = `${who === '' ? place : `${who} (${place})`}${where}: ${text}`;
      const tags = [...found].map(([label, { piece }]) => ({ label, ...(piece === undefined ? {} : { piece }) }));
      return { code, message, spec, line, tags, where, text };
    });
  }
}

/** With every name and the numbers of the pieces on the maps, and at the end where it is in the spec. */
export function warningOnPaper(
  { spec, line, tags, where, text }: TagWarning,
  numbersOf: (spec: string, tag: WarnedTag) => readonly number[],
): string {
  const who = tags.flatMap((tag) => {
    const numbers = numbersOf(spec, tag);
    const list = numbers.join(', ');
    if (tag.label !== '') return `“${clip(tag.label)}”${list === '' ? '' : ` (${list})`}`;
    return list === '' ? [] : `${numbers.length === 1 ? 'Piece' : 'Pieces'} ${list}`;
  });
  return `${who.length === 0 ? '' : `${listed(who)}${where}: `}${text} (${spec}, line ${line})`;
}

/** The narrowest, or the first. */
function worstOf(found: ReadonlyMap<string, Issue>): readonly [label: string, issue: Issue] {
  const shortBy = ({ width, minimum = 1 }: Issue) => (width === undefined ? 1 : width / minimum);
  return [...found].reduce((worst, each) => (shortBy(each[1]) < shortBy(worst[1]) ? each : worst));
}
