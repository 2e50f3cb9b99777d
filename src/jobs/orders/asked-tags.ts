/** The tags that orders ask for: each different one is made once, however many lines want it. */

import type { ComputeOptions, ReadSpec } from '../../engine/engine.ts';
import type { Batch } from '../../spec/batch/batch.ts';
import { isMadeTogether } from '../../tag/build.ts';
import { packedOutlinesOf } from '../../tag/outlines-only.ts';
import type { TagsOfReading } from './kept-tags.ts';
import type { MadeTag } from './left-out.ts';
import type { OrderLine } from './orders.ts';
import type { JobReading } from './reading.ts';
import type { TagAsk } from './tag-ask.ts';

export interface AskedTags {
  /** In the order in which lines first ask for them. */
  readonly different: readonly TagAsk[];
  /** Equal for lines that ask for the same. */
  readonly keyOf: (line: OrderLine) => string;
}

/** `columns`: those that the spec asks for; what else lines say makes no difference. `first`: any tag of the spec. */
export function askedTags(
  lines: readonly OrderLine[],
  columns: ReadonlySet<string>,
  first: Pick<ReadSpec, 'model'> | undefined,
): AskedTags {
  const keyOf = ({ row: { cells } }: OrderLine): string =>
    JSON.stringify([...cells].filter(([column]) => columns.has(column)));
  const rows = new Map(lines.toReversed().map((line) => [keyOf(line), line.row]));
  const keys = [...new Set(lines.map(keyOf))];
  const together = first?.model && isMadeTogether(first.model) && batchOf(keys.map((key) => rows.get(key)!));
  const different = keys.map((key, row): TagAsk => {
    return together ? { row, batch: together } : { row: 0, batch: batchOf([rows.get(key)!]) };
  });
  return { different, keyOf };
}

export function batchOf(rows: Batch['rows']): Batch {
  return { columns: [...new Set(rows.flatMap(({ cells }) => [...cells.keys()]))], title: '', rows };
}

interface SpecAsked {
  /** Full path. */
  readonly file: string;
  readonly text: string;
  readonly options: ComputeOptions;
  /** The spec as read in any row. */
  readonly first: ReadSpec;
}

/** Tags of a spec, one after another as they are asked for. `kept`: those made before. */
export async function* madeInTurn(
  { engine, eachTag }: JobReading,
  spec: SpecAsked,
  asked: readonly TagAsk[],
  kept: TagsOfReading | undefined,
): AsyncGenerator<MadeTag, undefined> {
  const { file, text, options, first } = spec;
  const whole = (made: Pick<MadeTag, 'row' | 'issues' | 'tag'>, ask: TagAsk): MadeTag => {
    const batch = ask.batch ?? first.batch;
    return { ...made, source: first.source, ...(batch ? { batch } : {}) };
  };
  if (eachTag) {
    let next = 0;
    for await (const made of eachTag(file, text, asked)) {
      const { tag } = made;
      yield whole(tag ? { ...made, tag: packedOutlinesOf(tag) } : made, asked[next++]!);
    }
    return;
  }
  const make = (ask: TagAsk, read = options.read) =>
    engine.compute(text, { ...options, ...ask, ...(read ? { read } : {}) });
  const makeOrKept = kept?.of(spec, make);
  for (const ask of asked) yield whole(await (makeOrKept ?? make)(ask), ask);
}
