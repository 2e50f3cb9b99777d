/**
 * Table of orders: one line for each, with a quantity and the texts for the tags. Lines that cannot be read are
 * reported at their cell and left out.
 */

import type { Issue } from '../../core/issue.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { clip } from '../../core/length.ts';
import type { BatchRow } from '../../spec/batch/batch.ts';
import { beyondColumns } from '../../spec/batch/beyond-columns.ts';
import { quantityColumn } from '../../spec/batch/quantity-columns.ts';
import { productColumn } from '../read/products.ts';
import { cellRange } from '../../spec/files/table.ts';
import type { Table } from '../../spec/files/table.ts';

export interface OrderLine {
  /** As written in the table; empty without such a column. */
  readonly order: string;
  readonly rush: boolean;
  readonly quantity: number;
  /** Absent if the table does not say, or says it to the tag. */
  readonly product?: string;
  /** The values for its tag. */
  readonly row: BatchRow;
  /** Line of the table, counting from 1. */
  readonly line: number;
}

/** A line that nothing is made from, with the reason. */
export interface LeftOutOrder {
  readonly order: string;
  readonly label: string;
  /** What the table calls it, if that says which spec a line is for. */
  readonly product?: string;
  /** Absent if unknown. */
  readonly quantity?: number;
  readonly why: string;
}

export type FaultyLine = LeftOutOrder & Pick<OrderLine, 'line'>;

export interface Orders {
  readonly lines: readonly OrderLine[];
  readonly leftOut: readonly FaultyLine[];
  readonly issues: readonly Issue[];
}

/** Columns that control the line; all others are for the tag. */
const ownColumns = ['order', quantityColumn, 'rush', productColumn] as const;
type OwnColumn = (typeof ownColumns)[number];

/** A table as it is written in its file. */
export interface NamedTable {
  /** As written in the job. */
  readonly name: string;
  readonly text: string;
  readonly table: Table;
}

/** What is wrong with a product, and what may have been meant. */
export type ProductFault = (product: string) => Pick<CellFault, 'code' | 'message' | 'suggestions'> | undefined;

/** Limit on copies of one tag; no workshop cuts more in one go. */
export const mostOfOne = 1000;

const yes = /^(yes|y|true|x|1|rush)$/i;
const no = /^(no|n|false|0|)$/i;

/** The place of an order among those of the tables; what belongs to none comes first. */
export function turnOf(orders: readonly string[]): (order: string) => number {
  const turns = new Map(orders.map((order, index) => [order, index]));
  return (order) => turns.get(order) ?? -1;
}

/** `inWords`: columns that the words of specs ask for. Without `productFault`, a column `product` is one for the tag. */
export function readOrders(
  { name: file, text, table: { header, rows } }: NamedTable,
  inWords: ReadonlySet<string>,
  productFault?: ProductFault,
): Orders {
  const isOwn = (name: string) => isOwnColumn(name) && (productFault !== undefined || !isProductColumn(name));
  const place = new Map(header.map((name, index) => [isOwn(name) ? name.toLowerCase() : name, index]));
  const lines: OrderLine[] = [];
  const leftOut: FaultyLine[] = [];
  const issues: Issue[] = [];
  for (const { cells, line, beyond } of rows) {
    const cell = (column: OwnColumn) => (place.has(column) ? cells[place.get(column)!]! : undefined);
    const product = productFault && cell(productColumn);
    // The tag may use the order number too.
    const values = new Map(header.map((name, index) => [name, cells[index]!]));
    const row: BatchRow = { label: labelOf({ cells: values, line, product }, inWords), cells: values, path: [], line };
    const extra = beyond && beyondColumns({ label: row.label, line, beyond }, file);
    if (extra) issues.push({ ...extra, path: [], range: cellRange(text, line, header.length) });
    const unknown = product === undefined ? undefined : productFault?.(product);
    const faults = [
      cellFault('order', cell('order') === '', 'missing-key', 'This line has no order.'),
      cellFault(
        'quantity',
        quantityOf(cell('quantity')) === undefined,
        'bad-value',
        quantityFault(cell('quantity') ?? ''),
      ),
      cellFault(
        'rush',
        !isYesOrNo(cell('rush') ?? ''),
        'bad-value',
        `“${clip(cell('rush') ?? '')}” is neither yes nor no.`,
      ),
      unknown && { column: productColumn, ...unknown },
    ].filter((each) => each !== undefined);
    const quantity = quantityOf(cell('quantity'));
    const named = { order: cell('order') ?? '', label: row.label, ...(product === undefined ? {} : { product }) };
    for (const { column, code, message, suggestions } of faults) {
      const range = cellRange(text, line, place.get(column)!);
      const worded = `${message} The line is left out.`;
      issues.push({
        code,
        severity: 'error',
        path: [],
        range,
        message: worded,
        ...(suggestions ? { suggestions } : {}),
      });
    }
    if (faults.length > 0 || quantity === undefined) {
      const why = faults.map(({ message }) => message).join(' ');
      leftOut.push({ ...named, line, ...(quantity === undefined ? {} : { quantity }), why });
    } else lines.push({ ...named, rush: yes.test(cell('rush') ?? ''), quantity, row, line });
  }
  return { lines, leftOut, issues };
}

interface Unnamed extends Pick<BatchRow, 'cells'> {
  readonly line: number;
  readonly product: string | undefined;
}

/** The first cell for the tag that the words of its spec ask for, or the first of all if they ask for none; what is empty does not count. */
function labelOf({ cells, line, product }: Unnamed, inWords: ReadonlySet<string>): string {
  const isForTag = (name: string) => !isOwnColumn(name) || (product === undefined && isProductColumn(name));
  const own = [...cells].filter(([column]) => isForTag(column));
  const wanted = own.filter(([column]) => inWords.has(column));
  const filled = (wanted.length > 0 ? wanted : own).find(([, cell]) => cell !== '');
  return filled?.[1] ?? (product || `line ${line}`);
}

/** The line, named by what the words of the spec that makes it ask for. */
export function named(order: OrderLine, inWords: ReadonlySet<string>): OrderLine {
  const { row, line, product } = order;
  return { ...order, row: { ...row, label: labelOf({ cells: row.cells, line, product }, inWords) } };
}

export function isProductColumn(name: string): boolean {
  return name.toLowerCase() === productColumn;
}

export function isOwnColumn(name: string): boolean {
  return ownColumns.some((own) => own === name.toLowerCase());
}

interface CellFault {
  readonly column: OwnColumn;
  readonly code: IssueCode;
  readonly message: string;
  readonly suggestions?: readonly string[];
}

function cellFault(column: OwnColumn, isThere: boolean, code: IssueCode, message: string): CellFault | undefined {
  return isThere ? { column, code, message } : undefined;
}

/** 1 without such a column. */
function quantityOf(written: string | undefined): number | undefined {
  if (written === undefined) return 1;
  const count = /^\+?\d{1,9}$/.test(written) ? Number(written) : 0;
  return count >= 1 && count <= mostOfOne ? count : undefined;
}

function quantityFault(written: string): string {
  if (written === '') return 'This line has no quantity.';
  if (/^[+-]?\d+$/.test(written))
    return Number(written) < 1
      ? `A quantity of ${clip(written)} makes nothing.`
      : `A quantity of ${clip(written)} is more than ${mostOfOne}, the most of one tag in a job.`;
  return `“${clip(written)}” is not a quantity; write a whole number.`;
}

function isYesOrNo(written: string): boolean {
  return yes.test(written) || no.test(written);
}

/** Labels of lines: their own, and with it all others that their tags ask for where it is not the same tag for all of that label. */
export function lineLabels(lines: readonly OrderLine[], asked: ReadonlySet<string>): (line: OrderLine) => string {
  const wordsOf = ({ row }: OrderLine): string =>
    [row.label, ...[...row.cells].flatMap(([column, cell]) => (asked.has(column) && cell !== row.label ? [cell] : []))]
      .filter((word) => word.trim() !== '')
      .join(', ');
  const known = new Map<string, Set<string>>();
  for (const line of lines) known.set(line.row.label, (known.get(line.row.label) ?? new Set()).add(wordsOf(line)));
  return (line) => (known.get(line.row.label)!.size > 1 ? wordsOf(line) : line.row.label);
}
