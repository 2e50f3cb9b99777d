/** Material between two pieces, as a job says it for the sheets of each stock; and saying it, as edits of its text. */

import { lengthText } from '../edits/length-text.ts';
import type { TextEdit } from '../core/issue.ts';
import type { SpecSource } from '../spec/source.ts';
import type { JobModel } from './model.ts';

export interface StockGap {
  readonly stock: string;
  /** In mm. */
  readonly gap: number;
  /** The most that there is sense in. */
  readonly most: number;
}

/** More leaves a board of scraps (our own judgement); what is written may be more. */
const mostMm = 10;

export function gapsOf({ sheets }: Pick<JobModel, 'sheets'>): StockGap[] {
  return [...sheets].flatMap(([stock, sources]): StockGap[] => {
    const gaps = sources.map(({ gap }) => gap);
    const gap = Math.max(...gaps);
    return gaps.length > 0 ? [{ stock, gap, most: Math.max(mostMm, gap) }] : [];
  });
}

/** Of each entry of a stock, in the units in which it says so already. An edit is `undefined` where the text has no place for it. */
export function gapEdits(
  stock: string,
  gap: number,
  { model, source }: { readonly model: JobModel; readonly source: SpecSource },
): (TextEdit | undefined)[] {
  const written = source.value as { readonly sheets?: Readonly<Record<string, readonly { readonly gap?: unknown }[]>> };
  return (model.sheets.get(stock) ?? []).map(({ path }) => {
    const before = written.sheets?.[stock]?.[Number(path[2])]?.gap;
    return source.setKey(path, 'gap', lengthText(gap, before, model.units));
  });
}
