/** Reads the fixed pieces of a job: the names that identify each, and its place on a sheet or an offcut. */

import type { YamlPath } from '../../core/issue.ts';
import type { Point } from '../../geometry/types.ts';
import type { Problems } from '../../spec/read/problems.ts';
import type { JobSpec } from '../job-types.generated.ts';

export interface FixedEntry {
  readonly spec: string;
  /** Absent if it is not needed to identify the piece. */
  readonly order?: string;
  readonly tag?: string;
  readonly piece?: string;
  /** Number of the copy, from 1. */
  readonly copy: number;
  readonly on: { readonly kind: 'sheet' | 'offcut'; readonly number: number };
  /** Lower left corner of the finished piece's box, from that of the sheet, in mm. */
  readonly at: Point;
  /** In degrees, counter-clockwise. */
  readonly turned: number;
  readonly path: YamlPath;
}

type FixedSpec = NonNullable<JobSpec['fixed']>[number];

/** Entries with schema errors may lack keys. */
export function readFixed({ fixed = [] }: Partial<JobSpec>, problems: Problems): FixedEntry[] {
  return [...(fixed as readonly (Partial<FixedSpec> | undefined)[])].flatMap((entry, index): FixedEntry[] => {
    const path: YamlPath = ['fixed', index];
    if (entry?.spec === undefined) return [];
    const { spec, piece, copy, sheet, offcut, turned } = entry;
    const wrote = (key: string) => problems.wrote([...path, key]);
    if (wrote('sheet') === wrote('offcut')) {
      const message = wrote('sheet')
        ? 'A piece lies on a “sheet” or on an “offcut”, not on both.'
        : 'Say on which “sheet” the piece lies, counting from 1, or on which “offcut”.';
      problems.error(wrote('sheet') ? 'bad-value' : 'missing-key', path, message);
      return [];
    }
    const number = sheet ?? offcut;
    const side = (axis: 0 | 1) => problems.length(entry.at?.[axis], [...path, 'at', axis], 'signed');
    const [x, y] = [side(0), side(1)];
    const isWhole = (['order', 'tag', 'piece', 'copy', 'turned'] as const).every(
      (key) => entry[key] !== undefined || !wrote(key),
    );
    if (number === undefined || x === undefined || y === undefined || !isWhole) return [];
    const written = (key: 'order' | 'tag') => {
      const value = entry[key];
      return typeof value === 'number' ? (problems.source.written?.([...path, key]) ?? String(value)) : value;
    };
    const [order, tag] = [written('order'), written('tag')];
    return [
      {
        spec,
        ...(order === undefined ? {} : { order }),
        ...(tag === undefined ? {} : { tag }),
        ...(piece === undefined ? {} : { piece }),
        copy: copy ?? 1,
        on: { kind: sheet === undefined ? 'offcut' : 'sheet', number },
        at: { x, y },
        turned: turned ?? 0,
        path,
      },
    ];
  });
}
