/** “New Job…”: what a spec brings to a job, and the texts that are written for it. */

import type { TextEdit } from '../core/issue.ts';
import { newLineOf } from '../core/lines.ts';
import { specName } from '../core/names.ts';
import { mmPer, trimmed } from '../core/units.ts';
import type { Units } from '../core/units.ts';
import { isGroup, unitsOf, valueAt } from '../core/values.ts';
import type { Report } from '../engine/engine.ts';
import { sheetSizesFor } from '../edits/sheet-size.ts';
import { boundsOf } from '../geometry/measure.ts';
import { columnsOf } from '../spec/batch/batch.ts';
import { tableText } from '../spec/files/table.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { stockOf } from '../tag/by-stock.ts';
import type { Tag } from '../tag/tag.ts';
import { yamlText } from './completion/snippets.ts';
import { stockName } from './workshop-text.ts';

export interface JobSheets {
  readonly stock: string;
  /** Width and height, with their units. */
  readonly size: readonly [string, string];
  /** File that what is left is kept in. */
  readonly offcuts?: string;
}

export interface JobChoices {
  readonly title: string;
  readonly units: Units;
  /** As the spec has it. */
  readonly use: readonly string[];
  /** Margin, gap and turn of the spec's own `sheet`, as written: a job knows only those of a workshop's file. */
  readonly laying: readonly string[];
  readonly spec: string;
  readonly make: { readonly quantity: number } | { readonly orders: string };
  readonly sheets: readonly JobSheets[];
}

export function jobText({ title, units, use, laying, spec, make, sheets }: JobChoices): string {
  const names = use.map(yamlText);
  const made = 'orders' in make ? `orders: ${yamlText(make.orders)}` : `quantity: ${make.quantity}`;
  const own = laying.map((entry) => `, ${entry}`).join('');
  return [
    '# “Show Sheets to the Side” shows how everything lies. “Export Job…” writes the cut files,',
    '# a map for the bench, a pick list and labels.',
    'tagwright_job: 1',
    `title: ${yamlText(title)}`,
    ...(units === 'in' ? ['units: in'] : []),
    ...(names.length === 0 ? [] : [`use: ${names.length === 1 ? names[0] : `[${names.join(', ')}]`}`]),
    '',
    'tags:',
    `  - {spec: ${yamlText(spec)}, ${made}}`,
    '',
    'sheets:',
    ...sheets.map(({ stock, size, offcuts }) => {
      const kept = offcuts === undefined ? '' : `{offcuts: ${yamlText(offcuts)}${own}}, `;
      return `  ${stock}: [${kept}{size: [${size.join(', ')}]${own}}]`;
    }),
    '',
  ].join('\n');
}

/** What a job takes from the spec as it is written. */
export function ofSpec({ value }: Pick<SpecSource, 'value'>): Pick<JobChoices, 'units' | 'use' | 'laying'> {
  const use = valueAt(value, ['use']);
  const sheet = valueAt(value, ['sheet']);
  return {
    units: unitsOf(value),
    use: (Array.isArray(use) ? use : [use]).filter((name) => typeof name === 'string'),
    laying: isGroup(sheet)
      ? ['margin', 'gap', 'turn'].flatMap((key) => {
          const own = sheet[key];
          return typeof own === 'string' || typeof own === 'number' ? [`${key}: ${own}`] : [];
        })
      : [],
  };
}

/** Title of a new job: the tag's, unless it differs from tag to tag. */
export function jobTitle({ batch, model, source }: Report, fileName: string): string {
  const isTitled = valueAt(source.value, ['title']) !== undefined;
  const title = (isTitled && (batch?.title ?? model?.title)) || '';
  return title.trim() === '' || /[{}…]/.test(title) ? specName(fileName).replaceAll(/[-_]+/g, ' ') : title;
}

/** Names of the stocks that a tag is cut from; `undefined` stands for one without a name. */
export function stocksOf(tag: Tag): readonly (string | undefined)[] {
  return [...new Set(tag.pieces.map((piece) => stockOf(piece, tag).name))];
}

/** Columns that a table of orders needs for the spec. */
export function orderColumns({ source, uses }: Pick<Report, 'source' | 'uses'>): readonly string[] {
  return [...columnsOf(source, uses.used)];
}

/** A new table of orders: a line for each tag of the spec's own batch, else one to fill in. */
export function ordersText(report: Pick<Report, 'source' | 'uses' | 'batch'>): string {
  const asked = orderColumns(report).filter((column) => !/^(order|quantity)$/i.test(column));
  const rows = report.batch?.rows ?? [{ cells: new Map<string, string>() }];
  return tableText(
    ['order', 'quantity', ...asked],
    rows.map(({ cells }, index) => [index + 1, 1, ...asked.map((column) => cells.get(column) ?? '')]),
  );
}

/** Width and height of the sheets to begin with, in the spec's units: its own, or the smallest usual one that holds each piece. */
export function usualSize({ model, tag }: Pick<Report, 'model' | 'tag'>, units: Units): readonly [number, number] {
  if (model?.sheet) {
    const inUnit = (mm: number) => Number(trimmed(mm / mmPer[units], 4));
    return [inUnit(model.sheet.width), inUnit(model.sheet.height)];
  }
  const [most, across] = largestPiece(tag);
  const fitting = sheetSizesFor({ width: most, height: across }, units);
  const { width, height } = fitting[2] ?? fitting.at(-1) ?? sheetSizesFor({ width: 0, height: 0 }, units).at(-1)!;
  return [width, height];
}

/** The longer and the shorter side that a sheet must have at the least, in mm. */
export function largestPiece(tag: Tag | undefined): readonly [number, number] {
  const sides = (tag?.pieces ?? []).map(({ region }) => {
    const box = boundsOf(region);
    return box ? [box.maxX - box.minX, box.maxY - box.minY].sort((a, b) => b - a) : [0, 0];
  });
  return [Math.max(0, ...sides.map(([long]) => long!)), Math.max(0, ...sides.map(([, short]) => short!))];
}

/** Gives the stock that a spec describes itself a name, so that a job knows its sheets; `undefined` where it has none of its own. */
export function namedStock(source: SpecSource): { readonly name: string; readonly edit: TextEdit } | undefined {
  const stock = valueAt(source.value, ['stock']);
  if (!isGroup(stock) || valueAt(source.value, ['stocks']) !== undefined) return undefined;
  const own = (key: string) =>
    typeof stock[key] === 'string' || typeof stock[key] === 'number' ? `${stock[key]}` : '';
  const name = stockName(own('material'), own('thickness'));
  const [key, value] = [source.keyRange(['stock']), source.range(['stock'])];
  const written = source.text.slice(value.start, value.end);
  const between = source.text.slice(key.end, value.start);
  const isBlock = /[\r\n]/.test(between);
  const deeper = (lines: string) => lines.replaceAll(/(\r?\n)(?=[^\r\n])/g, '$1  ');
  const below = isBlock ? `:${deeper(between.replace(/^:/, ''))}${deeper(written)}` : `: ${deeper(written)}`;
  const newLine = newLineOf(source.text);
  const text = [`stocks:`, `  ${name}${below}`, `stock: ${name}`].join(newLine);
  return { name, edit: { range: { start: key.start, end: value.end }, text } };
}
