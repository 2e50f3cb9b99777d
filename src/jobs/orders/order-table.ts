/** A table of orders, with its lines by the specs of the job that make them. */

import type { Issue } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { didYouMean, nearestWords } from '../../spec/schema/suggest.ts';
import type { Table } from '../../spec/files/table.ts';
import type { TagEntry } from '../read/model.ts';
import { isProductColumn, nearColumns, readOrders } from './orders.ts';
import type { LeftOutOrder, OrderLine, ProductFault } from './orders.ts';
import { makersOf, productColumn, productsOf } from '../read/products.ts';

export interface OrderTable {
  /** As written in the job. */
  readonly name: string;
  readonly text: string;
  readonly table: Table;
  /** In the order of the lines, those that cannot be made among them. */
  readonly orders: readonly string[];
  /** What the lines call the specs; empty if every spec makes every line. */
  readonly products: readonly string[];
  /** Lines that no spec of the job makes. */
  readonly leftOut: readonly LeftOutOrder[];
  readonly issues: readonly Issue[];
  linesOf(entry: TagEntry): readonly OrderLine[];
  leftOutOf(entry: TagEntry): readonly LeftOutOrder[];
  /** Why it cannot be told which spec its lines are for. */
  readonly fault?: string;
}

/** Columns that specs ask for, anywhere and in their words. */
export interface AskedColumns {
  readonly all: ReadonlySet<string>;
  readonly inWords: ReadonlySet<string>;
}

/**
 * `entries`: all of the job that name the table, with what their specs ask for. A column `product` says
 * which of them a line is for, unless it is a text for the tag.
 */
export function orderTable(
  { name, text, table }: Pick<OrderTable, 'name' | 'text' | 'table'>,
  entries: readonly TagEntry[],
  { all: asked, inWords }: AskedColumns,
): OrderTable {
  const column = table.header.find(isProductColumn);
  const isTold = entries.some(({ products }) => products !== undefined);
  const isSorted = column !== undefined && (isTold || !asked.has(column));
  const { lines, leftOut, issues } = readOrders(table, text, inWords, isSorted ? faultAmong(entries) : undefined);
  const isOf = (entry: TagEntry) => {
    const known = new Map<string | undefined, boolean>([[undefined, true]]);
    return ({ product }: Pick<OrderLine, 'product'>) => {
      if (!known.has(product)) known.set(product, makersOf(product!, entries).includes(entry));
      return known.get(product)!;
    };
  };
  const lacksColumn = isTold && column === undefined;
  return {
    name,
    text,
    table,
    orders: [...new Set([...lines, ...leftOut].sort((a, b) => a.line - b.line).map(({ order }) => order))],
    products: isSorted ? [...new Set(table.rows.map(({ cells }) => cells[table.header.indexOf(column)]!))] : [],
    leftOut: leftOut.filter(({ product }) => product !== undefined && makersOf(product, entries).length === 0),
    issues: lacksColumn ? [...issues, ...nearColumns([productColumn], [...asked], table, text, 'The job')] : issues,
    linesOf: (entry) => lines.filter(isOf(entry)),
    leftOutOf: (entry) => leftOut.filter(isOf(entry)),
    ...(lacksColumn ? { fault: `“${clip(name)}” has no column “${productColumn}”.` } : {}),
  };
}

function faultAmong(entries: readonly TagEntry[]): ProductFault {
  const known = [...new Set(entries.flatMap((entry) => (entry.products ? entry.products : productsOf(entry)[0]!)))];
  return (product) => {
    if (product === '') return { code: 'missing-key', message: 'This line has no product.' };
    if (makersOf(product, entries).length > 0) return undefined;
    const suggestions = nearestWords(product, known);
    const message = `No spec of this job makes “${clip(product)}”.`;
    // A name with a separator would need quotes, which a fix does not know.
    const safe = suggestions.filter((word) => !/[",;\t\r\n]/.test(word));
    const hint = ` Write “product: ${clip(product)}” at the one that does.`;
    const end = suggestions.length > 0 ? didYouMean(suggestions) : hint;
    return { code: 'unknown-name', message: `${message}${end}`, suggestions: safe };
  };
}
