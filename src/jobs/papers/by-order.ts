/** Groups a job by order: the contents of each parcel. Rush orders come first, and otherwise orders are as in their tables. */

import { specName } from '../../core/names.ts';
import type { CheckedJob, LaidOutJob } from '../job.ts';
import { pieceRows } from './job-table.ts';
import { turnOf } from '../orders/orders.ts';
import type { PieceRow } from './job-table.ts';
import type { JobTag, LeftOutTag } from '../orders/work.ts';
import { groupedBy } from '../../core/grouped.ts';

export interface PickedTag {
  readonly spec: string;
  readonly label: string;
  /** What tells it from the other tags of the job. */
  readonly name: string;
  readonly copies: number;
  /** The lines that ask for it. */
  readonly made: readonly JobTag[];
  readonly pieces: readonly PieceRow[];
}

export interface PickedOrder {
  /** Empty if it belongs to no order. */
  readonly order: string;
  readonly rush: boolean;
  readonly tags: readonly PickedTag[];
  readonly leftOut: readonly (LeftOutTag & Pick<PickedTag, 'name'>)[];
}

export function byOrder(job: Pick<LaidOutJob, 'layout' | 'pieces' | 'leftOut' | 'orders'>): PickedOrder[] {
  const rows = groupedBy(pieceRows(job), ({ order, spec, tag }) => orderKey(order, spec, tag));
  const { tags } = job.pieces;
  const nameOf = tagNames(job);
  const turn = turnOf(job.orders);
  const names = [...new Set([...tags, ...job.leftOut].map(({ order }) => order))].sort((a, b) => turn(a) - turn(b));
  const orders = names.map((order): PickedOrder => {
    const own = tags.filter((tag) => tag.order === order);
    const kinds = groupedBy(own, ({ spec, label }) => orderKey(order, spec, label));
    return {
      order,
      rush: own.some(({ rush }) => rush),
      tags: [...kinds].map(([key, [first, ...more]]) => ({
        spec: first!.spec,
        label: first!.label,
        name: nameOf(first!),
        copies: [first!, ...more].reduce((sum, { copies }) => sum + copies, 0),
        made: [first!, ...more],
        pieces: rows.get(key) ?? [],
      })),
      leftOut: job.leftOut.filter((each) => each.order === order).map((each) => ({ ...each, name: nameOf(each) })),
    };
  });
  return [...orders.filter(({ rush }) => rush), ...orders.filter(({ rush }) => !rush)];
}

function orderKey(...parts: readonly string[]): string {
  return JSON.stringify(parts);
}

type Named = Pick<JobTag, 'spec' | 'label' | 'product'>;

/**
 * Names of tags in lists: the label, with the product if the table says it, or with the spec where tags of two have one
 * label; else the product or spec alone.
 */
export function tagNames({ pieces, leftOut }: Pick<CheckedJob, 'pieces' | 'leftOut'>): (tag: Named) => string {
  const specs = new Map<string, Set<string>>();
  for (const { spec, label } of [...(pieces?.tags ?? []), ...leftOut])
    specs.set(label, (specs.get(label) ?? new Set()).add(spec));
  return (tag) => {
    const { label } = tag;
    const made = madeName(tag);
    if (label === '' || label === made) return made;
    return tag.product !== undefined || (specs.get(label)?.size ?? 0) > 1 ? `${label} (${made})` : label;
  };
}

/** What kind of tag it is: the product, or the name of its spec. */
export function madeName({ spec, product }: Pick<Named, 'spec' | 'product'>): string {
  return product ?? specName(spec.replace(/^.*\//, ''));
}
