/** Names of a batch that come out at very different sizes, because each is fitted by itself. */

import { mm } from '../core/figures.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { clip } from '../core/length.ts';
import { samePath } from '../core/values.ts';
import { textsOf } from '../spec/shape-model.ts';
import type { Tag } from '../tag/tag.ts';

/**
 * Beside each other, a name more than so many times as large as another looks like one of another lot; less where one size was asked for, as by
 * `at_most`. Our own judgement.
 */
const mostTimes = 2;
const mostLimited = 1.5;

/** Lettering that is as large as its own tag has room for. */
export interface FittedHeight {
  /** Path of its `fit`. */
  readonly path: YamlPath;
  /** Of its largest line, before growth, in mm. */
  readonly xHeight: number;
  /** What it says, if that is a single text. */
  readonly words?: string;
  /** Whether a size was asked for at most. */
  readonly isLimited?: boolean;
}

export function fittedHeights({ made }: Tag): FittedHeight[] {
  return [...made].flatMap(([{ path, modifiers, generator }, { lettering = [] }]) => {
    const { fit } = modifiers;
    if (!fit || fit.sameSize || lettering.length === 0) return [];
    const [first, ...others] = textsOf(generator);
    const xHeight = Math.max(...lettering.map((each) => each.xHeight));
    const words = first && others.length === 0 ? { words: first.text } : {};
    return [{ path: [...path, 'fit'], xHeight, ...words, ...(fit.atMost ? { isLimited: true } : {}) }];
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
    if (times <= (least.isLimited ? mostLimited : mostTimes)) return [];
    const [large, small] = [most, least].map(({ words, label }) => `“${clip((words ?? label).replace(/\s+/g, ' '))}”`);
    const message = `${large} comes out ${times.toFixed(1)} times as large as ${small} (small letters ${mm(most.xHeight, 1)} and ${mm(least.xHeight, 1)} high), as each is fitted by itself: beside each other they look like two lots.`;
    return [{ code: 'uneven-sizes', severity: 'info', path, row: least.row, message }];
  });
}
