/** Embeds the text of a spec in its exports: self-contained, and without the price of the sheet. */

import type { Report } from '../engine/engine.ts';
import type { Job } from '../export/job/job.ts';
import { withEdits } from '../core/issue.ts';
import type { YamlPath } from '../core/issue.ts';
import { removeKey } from '../edits/remove-key.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { selfContained } from './self-contained.ts';
import { isGroup, valueAt } from '../core/values.ts';

/** Returns the job unchanged if its text cannot be made self-contained or would reveal the price. */
export function withSpec(job: Job, { source, uses }: Pick<Report, 'source' | 'uses'>): Job {
  const result = selfContained(source, uses);
  const spec = 'text' in result ? withoutPrices(result.text) : undefined;
  return spec === undefined ? job : { ...job, spec };
}

/** `undefined` if a price cannot be removed by itself. */
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
  return edit && withoutPrices(withEdits(text, [edit]));
}
