/** A table of orders, with its lines by the specs of the job that make them. */

import type { Issue } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { didYouMean, nearestWords } from '../../spec/schema/suggest.ts';
import type { TagEntry } from '../read/model.ts';
import { MeantColumns } from './meant-columns.ts';
import { isProductColumn, readOrders } from './orders.ts';
import type { LeftOutOrder, NamedTable, OrderLine, ProductFault } from './orders.ts';
import { fileKey, makersOf, productColumn, productsOf } from '../read/products.ts';

export interface OrderTable extends NamedTable {
  /** In the order of the lines, those that cannot be made among them. */
  readonly orders: readonly string[];
  /** What the lines call the specs; empty if every spec makes every line. */
  readonly products: readonly string[];
  /** Lines that no spec of the job makes. */
  readonly leftOut: readonly LeftOutOrder[];
  readonly issues: readonly Issue[];
  linesOf(entry: TagEntry): readonly OrderLine[];
  leftOutOf(entry: TagEntry): readonly LeftOutOrder[];
  /** Columns that specs ask for, of which is told that they are called otherwise. */
  readonly told: ReadonlySet<string>;
  /** Why none of its lines can be made: which spec they are for, or how many are wanted, cannot be told. */
  readonly fault?: { readonly lacks: 'product' | 'quantity'; readonly why: string; readonly isTold: boolean };
}

/** Columns that specs ask for, anywhere and in their words. */
export interface AskedColumns {
  /** With the specs that ask for them. */
  readonly all: ReadonlyMap<string, readonly string[]>;
  readonly inWords: ReadonlySet<string>;
}

/**
 * `entries`: all of the job that name the table, with what their specs ask for. A column `product` says
 * which of them a line is for, unless it is a text for the tag.
 */
export function orderTable(
  { name, text, table }: NamedTable,
  entries: readonly TagEntry[],
  { all: asked, inWords }: AskedColumns,
): OrderTable {
  const column = table.header.find(isProductColumn);
  const isTold = entries.some(({ products }) => products !== undefined);
  const isSorted = column !== undefined && (isTold || !asked.has(column));
  const products = isSorted ? [...new Set(table.rows.map(({ cells }) => cells[table.header.indexOf(column)]!))] : [];
  const { lines, leftOut, issues } = readOrders(
    { name, text, table },
    inWords,
    isSorted ? faultAmong(entries, products) : undefined,
  );
  const isOf = (entry: TagEntry) => {
    const known = new Map<string | undefined, boolean>([[undefined, true]]);
    return ({ product }: Pick<OrderLine, 'product'>) => {
      if (!known.has(product)) known.set(product, makersOf(product!, entries).includes(entry));
      return known.get(product)!;
    };
  };
  const lacksColumn = isTold && column === undefined;
  const making = entries.filter((entry) => lines.some(isOf(entry))).map(({ spec }) => spec);
  const meant = new MeantColumns({
    table,
    text,
    asked: lacksColumn ? new Map([...asked, [productColumn, [theJob]]]) : asked,
    making: new Set(lacksColumn ? [...making, theJob] : making),
  });
  return {
    name,
    text,
    table,
    orders: [...new Set([...lines, ...leftOut].sort((a, b) => a.line - b.line).map(({ order }) => order))],
    products,
    leftOut: leftOut.filter(({ product }) => product !== undefined && makersOf(product, entries).length === 0),
    issues: [...issues, ...meant.issues],
    told: meant.told,
    linesOf: (entry) => lines.filter(isOf(entry)),
    leftOutOf: (entry) => leftOut.filter(isOf(entry)),
    ...faultOf(name, meant, lacksColumn),
  };
}

/** What asks for a product, beside the specs. */
const theJob = 'The job';

function faultOf(name: string, { told, fault }: MeantColumns, lacksProduct: boolean): Pick<OrderTable, 'fault'> {
  const noProduct = `“${clip(name)}” has no column “${productColumn}”.`;
  if (lacksProduct) return { fault: { lacks: 'product', why: noProduct, isTold: told.has(productColumn) } };
  return fault === undefined ? {} : { fault: { lacks: 'quantity', why: fault, isTold: true } };
}

/** `written`: what the lines call the specs. */
function faultAmong(entries: readonly TagEntry[], written: readonly string[]): ProductFault {
  const names = [...new Set(entries.flatMap((entry) => (entry.products ? entry.products : productsOf(entry)[0]!)))];
  const right = written.filter((product) => product !== '' && makersOf(product, entries).length > 0);
  // As the other lines spell them.
  const known = names.map((name) => right.find((product) => fileKey(product) === fileKey(name)) ?? name);
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
