/** What a fix has brought: findings that were not there before, by the lines of the text as it was. */

import { diffArrays } from 'diff';
import type { ReportedProblem } from './designs.ts';

/** Where each line of the changed text stood, counting from 1; `undefined` for a line that is new. */
export function formerLines(before: string, after: string): (number | undefined)[] {
  const [old, now] = [before.split(/\r?\n/), after.split(/\r?\n/)];
  const former: (number | undefined)[] = [];
  let at = 0;
  let removed: number[] = [];
  for (const { value, added, removed: isGone } of diffArrays(old, now)) {
    if (isGone) {
      removed = value.map((_, i) => at + i + 1);
      at += value.length;
    } else if (added) {
      // A line that was changed is the one with the same key.
      for (const line of value) {
        const same = removed.findIndex((number) => keyOf(old[number - 1]!) === keyOf(line));
        former.push(same < 0 ? undefined : removed.splice(same, 1)[0]);
      }
      removed = [];
    } else {
      removed = [];
      for (let i = 0; i < value.length; i++) former.push(++at);
    }
  }
  return former;
}

function keyOf(line: string): string {
  return /^\s*[^:#]*/.exec(line)![0];
}

/**
 * What is said now and was not before: on any line but `own`, whatever it is; and on any line that lettering is hard to read.
 * @param own Lines whose findings the fix may exchange for others.
 */
export function broughtBy(
  { said, text }: { readonly said: readonly ReportedProblem[]; readonly text: string },
  after: { readonly said: readonly ReportedProblem[]; readonly text: string },
  own: readonly number[],
): ReportedProblem[] {
  const former = formerLines(text, after.text);
  const left = said.map(({ code, line }) => `${code} ${line}`);
  return after.said.filter(({ code, line }) => {
    const was = former[line - 1];
    const known = left.indexOf(`${code} ${was}`);
    if (known >= 0) {
      left.splice(known, 1);
      return false;
    }
    return code === 'hard-to-read' || was === undefined || !own.includes(was);
  });
}
