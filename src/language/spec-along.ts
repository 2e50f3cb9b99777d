/** The text of a spec that goes along with what is made of it: it stands alone, and says nothing of what the sheet cost. */

import type { Report } from '../engine/engine.ts';
import type { Job } from '../export/job.ts';
import { applied } from '../core/issue.ts';
import type { YamlPath } from '../core/issue.ts';
import { removeKey } from '../edits/remove-key.ts';
import { SpecSource } from '../spec/source.ts';
import { selfContained } from './self-contained.ts';
import { isGroup, valueAt } from '../core/values.ts';

/** The job as it is where its text would not stand alone, or would give the price away. */
export function withSpec(job: Job, { source, uses }: Pick<Report, 'source' | 'uses'>): Job {
  const result = selfContained(source, uses);
  const spec = 'text' in result ? withoutPrices(result.text) : undefined;
  return spec === undefined ? job : { ...job, spec };
}

/** `undefined` where a price cannot be taken out by itself. */
function withoutPrices(text: string): string | undefined {
  const source = new SpecSource(text);
  const stocks = valueAt(source.value, ['stocks']);
  const paths: YamlPath[] = [
    ['stock'],
    ...(isGroup(stocks) ? Object.keys(stocks).map((name) => ['stocks', name]) : []),
  ];
  const priced = paths.find((path) => valueAt(source.value, [...path, 'price']) !== undefined);
  if (!priced) return text;
  const siblings = Object.keys(valueAt(source.value, priced) as object).length - 1;
  const edit = removeKey(source, [...priced, 'price'], siblings);
  return edit && withoutPrices(applied(text, [edit]));
}
