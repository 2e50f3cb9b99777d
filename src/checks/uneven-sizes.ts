/**
 * Names of a batch that come out at very different sizes, because each is fitted by itself; or that one of them keeps small,
 * because all have one size.
 */

import { mm } from '../core/figures.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { clip } from '../core/length.ts';
import { listedQuoted } from '../core/names.ts';
import { samePath } from '../core/values.ts';
import { mostSetAside } from '../spec/batch/batch.ts';
import { textsOf } from '../spec/model/shape-model.ts';
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
    const quoted = (text: string) => `“${clip(text.replace(/\s+/g, ' '))}”`;
    const [large, small] = [most, least].map(({ words, label }) => quoted(words ?? label));
    // What all of them say is told apart by the tags.
    const [on, asOn] =
      large === small
        ? [`${large} comes out on ${quoted(most.label)}`, `as on ${quoted(least.label)}`]
        : [`${large} comes out`, `as ${small}`];
    const message = `${on} ${times.toFixed(1)} times as large ${asOn} (small letters ${mm(most.xHeight, 1)} and ${mm(least.xHeight, 1)} high), as each is fitted by itself: beside each other they look like two lots.`;
    return [{ code: 'uneven-sizes', severity: 'info', path, row: least.row, message }];
  });
}

/** The size that each tag of a batch has room for, of a shape that has one size on all. */
export interface SharedSize {
  /** Path of its `fit`. */
  readonly path: YamlPath;
  /** Over its natural size, by row; absent where it has none. */
  readonly scales: readonly (number | undefined)[];
  /** The largest that is asked for. */
  readonly most?: number;
}

/** Without the few names that need it, all others would be at least so many times as large: our own judgement. */
const keptSmallTimes = 2;
/** Less where it is below this share of the size asked for, which did not come out as meant: our own judgement. */
const keptTiny = { share: 0.4, times: 1.5 } as const;
/** Of fewer tags, each has its say. */
const fewTags = 3;

export interface SizeSetters {
  readonly rows: readonly number[];
  /** How many times as large all others would be without. */
  readonly times: number;
  /** Whether it comes out much smaller than asked for. */
  readonly isTiny: boolean;
}

/** The rows that keep all others small; `most` at most. */
export function sizeSetters({ scales, most: asked = 0 }: SharedSize, most: number): SizeSetters | undefined {
  const sorted = scales
    .flatMap((scale, row) => (scale === undefined ? [] : [{ scale, row }]))
    .sort((a, b) => a.scale - b.scale);
  if (sorted.length < fewTags) return undefined;
  const isTiny = sorted[0]!.scale < keptTiny.share * asked;
  for (let count = 1; count <= most && count < sorted.length; count += 1) {
    const times = sorted[count]!.scale / sorted[0]!.scale;
    if (times >= (isTiny ? keptTiny.times : keptSmallTimes))
      return { rows: sorted.slice(0, count).map(({ row }) => row), times, isTiny };
  }
  return undefined;
}

/** One finding for each shape, on the tag that has least room. */
export function keptSmall(sizes: readonly SharedSize[], { made }: Tag, labels: readonly string[]): Finding[] {
  return sizes.flatMap((size): Finding[] => {
    const found = sizeSetters(size, mostSetAside(labels.length));
    const of = [...made].find(([{ path }]) => samePath([...path, 'fit'], size.path));
    const xHeight = Math.max(0, ...(of?.[1].lettering ?? []).map((each) => each.xHeight));
    if (!found || xHeight === 0) return [];
    const { rows, times, isTiny } = found;
    const names = listedQuoted(rows.map((row) => labels[row]!));
    const message = `${names} ${rows.length === 1 ? 'keeps' : 'keep'} all ${labels.length} small, as they have one size (small letters ${mm(xHeight, 1)} high): the others have room for ${mm(xHeight * times, 1)}.`;
    return [
      {
        code: 'uneven-sizes',
        severity: isTiny ? 'warning' : 'info',
        path: size.path,
        row: rows[0]!,
        message,
      },
    ];
  });
}
