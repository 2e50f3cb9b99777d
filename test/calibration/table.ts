/** What came out of a calibration, in figures. */

import type { Readability } from '../../src/checks/measures/readability.ts';

export interface Judged {
  readonly name: string;
  readonly kind: string;
  readonly heldOut: boolean;
  readonly size: number;
  readonly growth: number;
  /** By the independent reader. */
  readonly read: boolean;
  readonly doubt: number;
  readonly figures: Readability['figures'];
}

export interface Confusion {
  /** No longer read: reported, and not. */
  readonly reported: number;
  readonly missed: number;
  /** Still read: left in peace, and reported all the same. */
  readonly left: number;
  readonly scolded: number;
}

export function confusionOf(judged: readonly Judged[], limit: number): Confusion {
  const count = (read: boolean, isReported: boolean) =>
    judged.filter((each) => each.read === read && each.doubt > limit === isReported).length;
  return {
    reported: count(false, true),
    missed: count(false, false),
    left: count(true, false),
    scolded: count(true, true),
  };
}

/** The mean of the share of unreadable words that are reported and of the share of readable ones that are not. */
export function balancedAccuracy({ reported, missed, left, scolded }: Confusion): number {
  return (reported / (reported + missed) + left / (left + scolded)) / 2;
}

export function asMarkdown(
  judged: readonly Judged[],
  words: number,
  limits: { readonly doubtful: number; readonly unlikely: number },
): string {
  const lines = [`${judged.length} readings, ${words} words.`, ''];
  for (const heldOut of [false, true]) {
    const set = judged.filter((each) => each.heldOut === heldOut);
    if (set.length === 0) continue;
    lines.push(
      `## ${heldOut ? 'The fonts beyond the first six' : 'The first six fonts'}, by the weights as they are`,
      '',
    );
    lines.push(
      '| font | no longer read: reported | missed | still read: left in peace | reported | balanced accuracy |',
    );
    lines.push('|---|---|---|---|---|---|');
    for (const name of new Set(set.map((each) => each.name))) {
      const own = set.filter((each) => each.name === name);
      lines.push(row(`${name} (${own[0]!.kind})`, confusionOf(own, limits.doubtful)));
    }
    lines.push(row('**all**', confusionOf(set, limits.doubtful)));
    lines.push(row('all, warnings alone', confusionOf(set, limits.unlikely)), '');
    lines.push(shares(set, limits), '');
  }
  return `${lines.join('\n').trimEnd()}\n`;
}

function row(name: string, confusion: Confusion): string {
  const { reported, missed, left, scolded } = confusion;
  return `| ${name} | ${reported} | ${missed} | ${left} | ${scolded} | ${balancedAccuracy(confusion).toFixed(3)} |`;
}

/** How many are still read where nothing is said, an info, a warning. */
function shares(set: readonly Judged[], limits: { readonly doubtful: number; readonly unlikely: number }): string {
  const share = (low: number, high: number) => {
    const within = set.filter(({ doubt }) => doubt > low && doubt <= high);
    return `${((100 * within.filter(({ read }) => read).length) / Math.max(1, within.length)).toFixed(0)} % of ${within.length}`;
  };
  const { doubtful, unlikely } = limits;
  return `Still read: ${share(-Infinity, doubtful)} of which nothing is said, ${share(doubtful, unlikely)} with an info, ${share(unlikely, Infinity)} with a warning.`;
}
