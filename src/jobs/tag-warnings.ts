/** What is wrong with tags of a job that are cut all the same: told at their spec, once for each cause. */

import { causeOf } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { clip } from '../core/length.ts';
import { listedQuoted } from '../core/names.ts';
import type { MadeTag } from './left-out.ts';

/** Most tags that are named. */
const mostNames = 3;

interface Warned {
  readonly line: number;
  /** The first of each tag. */
  readonly found: Map<string, Issue>;
}

interface TagWarning {
  readonly code: IssueCode;
  readonly message: string;
  /** With every name, where the message has some of them as a count. */
  readonly onPaper?: string;
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
      const [worst, issue] = worstOf(found);
      const names = [...found.keys()].filter((label) => label !== '').map((label) => clip(label));
      const place = `${spec}, line ${line}`;
      const alike = new Set([...found.values()].map(({ message }) => message)).size === 1;
      // Figures and letters are those of one tag.
      const where = alike || worst === '' ? '' : `, ${issue.width === undefined ? 'in' : 'worst in'} “${clip(worst)}”`;
      const say = (who: string) => `${who === '' ? place : `${who} (${place})`}${where}: ${issue.message}`;
      const [message, onPaper] = [say(listedQuoted(names, mostNames)), say(listedQuoted(names))];
      return { code: issue.code, message, ...(onPaper === message ? {} : { onPaper }) };
    });
  }
}

/** The narrowest, or the first. */
function worstOf(found: ReadonlyMap<string, Issue>): readonly [label: string, issue: Issue] {
  const shortBy = ({ width, minimum = 1 }: Issue) => (width === undefined ? 1 : width / minimum);
  return [...found].reduce((worst, each) => (shortBy(each[1]) < shortBy(worst[1]) ? each : worst));
}
