/** The tags that orders ask for: each different one is made once, however many lines want it. */

import type { ComputeOptions, Report } from '../../engine/engine.ts';
import type { Batch } from '../../spec/batch/batch.ts';
import { isMadeTogether } from '../../tag/build.ts';
import type { MadeTag } from './left-out.ts';
import type { OrderLine } from './orders.ts';
import type { JobReading, TagAsk } from './reading.ts';

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
  first: Pick<Report, 'model'> | undefined,
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
}

/** Tags of a spec, one after another as they are asked for. `first`: one of the spec's own that there is already. */
export async function* madeInTurn(
  { engine, eachTag }: JobReading,
  { file, text, options }: SpecAsked,
  asked: readonly TagAsk[],
  first: MadeTag | undefined,
): AsyncGenerator<MadeTag, undefined> {
  if (!eachTag || !first) {
    for (const ask of asked)
      yield first && !ask.batch && ask.row === first.row ? first : await engine.compute(text, { ...options, ...ask });
    return;
  }
  let next = 0;
  for await (const made of eachTag(file, text, asked)) {
    const batch = asked[next++]!.batch ?? first.batch;
    yield { ...made, source: first.source, ...(batch ? { batch } : {}) };
  }
}
