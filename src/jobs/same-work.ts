/** Whether what is asked for has changed between two readings of a job. */

import type { CheckedJob } from './job.ts';

/**
 * Whether two readings ask for the very same pieces from the same sheets and offcuts, so that a layout of the one is one
 * of the other. Tags are the same if they have been kept (`orders/kept-tags.ts`); others count as different.
 */
export function isSameWork(one: CheckedJob, other: CheckedJob): boolean {
  const [tags, others] = [one.pieces?.tags ?? [], other.pieces?.tags ?? []];
  return (
    one.source.text === other.source.text &&
    tags.length === others.length &&
    tags.every(({ tag }, index) => tag === others[index]!.tag) &&
    aroundTags(one) === aroundTags(other)
  );
}

function aroundTags({ name, model, pieces, offcuts, leftOut, orders }: CheckedJob): string {
  return JSON.stringify([
    name,
    [model?.title, model?.units, model?.keepTogether, model?.effort, model?.fixed],
    pieces?.tags.map((each) => ({ ...each, tag: undefined })),
    pieces?.stocks.map(({ name: stock, from, output, rooms }) => [stock, from, output, rooms]),
    [...offcuts].map(([file, { source }]) => [file, source?.text]),
    leftOut,
    orders,
  ]);
}
