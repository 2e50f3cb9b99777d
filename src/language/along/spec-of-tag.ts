/**
 * The spec of one tag alone, for whoever gets its files: the values of its row in the place of columns, and nothing that
 * is for the workshop only, nor the names of others. Written anew from its values, so that nothing else is left in it:
 * comments may hold names too.
 */

import { boundsOf } from '../../geometry/measure.ts';
import type { YamlPath } from '../../core/issue.ts';
import { mmPerInch } from '../../core/units.ts';
import { isGroup, unitsOf, valueAt } from '../../core/values.ts';
import type { Report } from '../../engine/engine.ts';
import { filled, isEmptyIn } from '../../spec/batch/batch.ts';
import type { Batch } from '../../spec/batch/batch.ts';
import { isWords, RowValues } from '../../spec/batch/row-values.ts';
import { onMachine } from '../../spec/read/stock-on-machine.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { sameSized } from '../../tag/build.ts';
import type { RoomAt } from './room-for.ts';

type Group = Readonly<Record<string, unknown>>;

/** What a tag's spec is made from. */
export type TagReport = Pick<Report, 'tag' | 'model' | 'batch' | 'row' | 'accepted'>;

/** How the workshop cuts, what it pays and who approved it: no part of the tag. */
const workshopKeys: ReadonlySet<string> = new Set(['batch', 'approved', 'use', 'sheet', 'machine', 'machines']);
const pricedKeys: ReadonlySet<string> = new Set(['price', 'machine', 'machines', 'measured_on']);

/** `text`: of the spec, with the values of the files it uses; `rooms`: of lettering that stands on one line on all tags. */
export function specOfTag(text: string, { tag, model, batch, row }: TagReport, rooms: readonly RoomAt[] = []): Group {
  const source = new SpecSource(text);
  const read = batch ? inRow(source, batch, row) : source.value;
  const spec = isGroup(read) ? read : {};
  const { machine } = spec;
  const entries = Object.entries(spec)
    .filter(([key]) => !workshopKeys.has(key))
    .map(([key, value]): [string, unknown] => {
      if (key === 'stock') return [key, withoutWorkshop(value, machine)];
      if (key !== 'stocks' || !isGroup(value)) return [key, value];
      return [key, mapped(value, (each) => withoutWorkshop(each, machine))];
    });
  const own = Object.fromEntries(entries);
  if (!batch || !tag || !model) return own;
  return withRooms(withSizes(titled(own, tag.title), tag, model), rooms);
}

/** A stock as the chosen machine cuts it, without speeds, prices and days. */
function withoutWorkshop(stock: unknown, machine: unknown): unknown {
  if (!isGroup(stock)) return stock;
  const over = typeof machine === 'string' ? valueAt(stock, ['machines', machine]) : undefined;
  const own = Object.entries(isGroup(over) ? onMachine(stock, over) : stock);
  return Object.fromEntries(own.filter(([key]) => !pricedKeys.has(key)));
}

/** The tag's title stands in all of its files. */
function titled(spec: Group, title: string): Group {
  const { tagwright, units } = spec;
  return { tagwright, ...(units === undefined ? {} : { units }), ...spec, title };
}

function inRow(source: SpecSource, { rows, columns }: Batch, index: number): unknown {
  const row = rows[index]!;
  const { value } = new RowValues(source, row, columns).of(source).source;
  const read = (each: unknown, path: YamlPath): unknown => {
    if (typeof each === 'string') return isWords(path) ? (filled(each, row, () => undefined) ?? each) : each;
    if (Array.isArray(each)) {
      // Lines that are left out where their cells are empty.
      const kept = each.filter((entry) => !isGroup(entry) || entry['optional'] !== true || !isEmpty(entry['text']));
      return kept.map((entry, at) => read(entry, [...path, at]));
    }
    return isGroup(each) ? mapped(each, (inner, key) => read(inner, [...path, key])) : each;
  };
  const isEmpty = (text: unknown): boolean => typeof text === 'string' && isEmptyIn(text, row, columns);
  return read(value, []);
}

/** Sizes that all tags of the batch share, as this one has them: by itself, it would take all the room there is. */
function withSizes(spec: Group, { made }: NonNullable<Report['tag']>, model: NonNullable<Report['model']>): Group {
  let sized: unknown = spec;
  for (const shape of sameSized(model)) {
    const bounds = boundsOf(made.get(shape)?.region ?? []);
    if (!bounds) continue;
    const mm = bounds.maxX - bounds.minX;
    const width = unitsOf(spec) === 'in' ? `${(mm / mmPerInch).toFixed(4)} in` : `${mm.toFixed(3)} mm`;
    sized = changed(sized, [...inText(shape.path), 'fit'], (fit) => {
      if (!isGroup(fit)) return fit;
      const most = fit['at_most'];
      const rest = Object.entries(fit).filter(([key]) => key !== 'same_size');
      return { ...Object.fromEntries(rest), at_most: { ...(isGroup(most) ? most : {}), width } };
    });
  }
  return sized as Group;
}

/** Letters stand where those of the whole batch make them stand. */
function withRooms(spec: Group, rooms: readonly RoomAt[]): Group {
  let roomy: unknown = spec;
  for (const { path, room } of rooms)
    roomy = changed(roomy, inText(path), (text) =>
      typeof text === 'string' ? { text, room_for: room } : isGroup(text) ? { ...text, room_for: room } : text,
    );
  return roomy as Group;
}

/** What a used file defines is in the text itself now. */
export function inText(path: YamlPath): YamlPath {
  return path[0] === 'use' ? path.slice(typeof path[1] === 'number' ? 2 : 1) : path;
}

function mapped(group: Group, of: (value: unknown, key: string) => unknown): Group {
  return Object.fromEntries(Object.entries(group).map(([key, value]) => [key, of(value, key)]));
}

/** The value with another one at a path, where there is one. */
function changed(value: unknown, [step, ...rest]: YamlPath, change: (value: unknown) => unknown): unknown {
  if (step === undefined) return change(value);
  if (Array.isArray(value))
    return value.map((each: unknown, at): unknown => (at === step ? changed(each, rest, change) : each));
  if (!isGroup(value)) return value;
  return mapped(value, (each, key) => (key === step ? changed(each, rest, change) : each));
}
