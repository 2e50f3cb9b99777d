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
  readonly issue: Issue;
  readonly line: number;
  readonly labels: Set<string>;
}

export class TagWarnings {
  readonly #found = new Map<string, Warned>();

  add({ issues, source }: MadeTag, label: string): void {
    for (const issue of issues.filter(({ severity }) => severity === 'warning')) {
      const cause = causeOf(issue);
      const { line } = source.position(issue.range.start);
      const known = this.#found.get(cause) ?? { issue, line, labels: new Set() };
      known.labels.add(clip(label));
      this.#found.set(cause, known);
    }
  }

  of(spec: string): { readonly code: IssueCode; readonly message: string }[] {
    return [...this.#found.values()].map(({ issue, line, labels }) => {
      const who = listedQuoted(
        [...labels].filter((label) => label !== ''),
        mostNames,
      );
      const place = `${spec}, line ${line}`;
      return { code: issue.code, message: `${who === '' ? place : `${who} (${place})`}: ${issue.message}` };
    });
  }
}
