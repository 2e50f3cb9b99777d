/** Gap between pieces for the sheets of each stock in a job, and edits that change it. */

import { lengthText } from '../../edits/length-text.ts';
import type { TextEdit } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { JobModel } from '../read/model.ts';

export interface StockGap {
  readonly stock: string;
  /** In mm. */
  readonly gap: number;
  /** Largest sensible gap, in mm. */
  readonly most: number;
}

/** Largest gap offered, in mm; more wastes the sheet (our own judgement), but the text may ask for more. */
const mostMm = 10;

export function gapsOf({ sheets }: Pick<JobModel, 'sheets'>): StockGap[] {
  return [...sheets].flatMap(([stock, sources]): StockGap[] => {
    const gaps = sources.map(({ gap }) => gap);
    const gap = Math.max(...gaps);
    return gaps.length > 0 ? [{ stock, gap, most: Math.max(mostMm, gap) }] : [];
  });
}

/**
 * One edit for each entry of the stock, in the units that it uses already. An edit is `undefined` if the text has no
 * place for it.
 */
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
