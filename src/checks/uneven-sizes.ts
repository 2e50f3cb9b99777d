/** Names of a batch that come out at very different sizes, because each is fitted by itself. */

import { mm } from '../core/figures.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { samePath } from '../core/values.ts';
import type { Tag } from '../tag/tag.ts';

/** Beside each other, a name more than so many times as large as another looks like one of another lot (our own judgement). */
const mostTimes = 2;

/** Lettering that is as large as its own tag has room for. */
export interface FittedHeight {
  /** Path of its `fit`. */
  readonly path: YamlPath;
  /** Of its largest line, before growth, in mm. */
  readonly xHeight: number;
}

/** A size that `at_most` limits is what was asked for, smaller only where the name is long. */
export function fittedHeights({ made }: Tag): FittedHeight[] {
  return [...made].flatMap(([{ path, modifiers }, { lettering = [] }]) => {
    const { fit } = modifiers;
    if (!fit || fit.sameSize || fit.atMost || lettering.length === 0) return [];
    return [{ path: [...path, 'fit'], xHeight: Math.max(...lettering.map(({ xHeight }) => xHeight)) }];
  });
}

/** A tag of a batch, and what is fitted on it. */
export interface FittedRow {
  readonly row: number;
  readonly label: string;
  readonly fitted: readonly FittedHeight[];
}

/** One finding for each shape, on the tag on which it is smallest. */
export function unevenSizes(rows: readonly FittedRow[]): Finding[] {
  const all = rows.flatMap(({ row, label, fitted }) => fitted.map((each) => ({ ...each, row, label })));
  const shapes = all.filter(({ path }, index) => all.findIndex((other) => samePath(other.path, path)) === index);
  return shapes.flatMap(({ path }): Finding[] => {
    const heights = all.filter((other) => samePath(other.path, path)).sort((a, b) => a.xHeight - b.xHeight);
    const [least, most] = [heights[0]!, heights.at(-1)!];
    const times = most.xHeight / least.xHeight;
    if (times <= mostTimes) return [];
    const message = `“${most.label}” comes out ${times.toFixed(1)} times as large as “${least.label}” (small letters ${mm(most.xHeight, 1)} and ${mm(least.xHeight, 1)} high), as each name is fitted by itself: beside each other they look like two lots.`;
    return [{ code: 'uneven-sizes', severity: 'info', path, row: least.row, message }];
  });
}
