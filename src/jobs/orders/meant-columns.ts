/** Columns of a table of orders that are called otherwise than what is asked for, each told once at its name. */

import type { Issue } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { listed } from '../../core/names.ts';
import { lettersIn, quantityColumn, saysHowMany } from '../../spec/batch/quantity-columns.ts';
import { didYouMean, isMeantAs, nearestWords } from '../../spec/schema/suggest.ts';
import { cellRange } from '../../spec/files/table.ts';
import type { Table } from '../../spec/files/table.ts';
import { productColumn } from '../read/products.ts';
import { isOwnColumn } from './orders.ts';

/** What shops call the columns of a job, in letters alone. */
const otherWords: Readonly<Record<string, readonly string[]>> = {
  order: ['orderno', 'ordernr', 'ordernumber', 'orderid', 'ordernum', 'parcel'],
  rush: ['urgent', 'express', 'priority'],
  [productColumn]: ['item', 'article', 'sku'],
};

/** What nobody uses and is probably one of the job's own, and what comes of it. */
const without: Readonly<Record<string, string>> = {
  order: 'nothing is listed by order.',
  rush: 'nothing is a rush.',
  [productColumn]: 'each spec makes every line.',
};

export interface AskedOf {
  readonly table: Table;
  readonly text: string;
  /** The specs that ask for each column. */
  readonly asked: ReadonlyMap<string, readonly string[]>;
  /** The specs that have lines. */
  readonly making: ReadonlySet<string>;
}

export class MeantColumns {
  readonly issues: Issue[] = [];
  /** Columns that are asked for and are told here to be called otherwise. */
  readonly told = new Set<string>();
  /** Why no line can be made: how many are wanted is not known. */
  fault: string | undefined;
  readonly #of: AskedOf;
  /** Columns that nobody uses, as far as is known. */
  readonly #free: Set<string>;

  constructor(of: AskedOf) {
    const { table, asked } = of;
    this.#of = of;
    this.#free = new Set(table.header.filter((column) => !asked.has(column) && !isOwnColumn(column)));
    this.#readAsked();
    this.#readQuantity();
    for (const own of Object.keys(without)) if (own !== productColumn || of.making.size > 1) this.#readOwn(own);
  }

  #readAsked(): void {
    const { table, asked, making } = this.#of;
    for (const [column, all] of asked) {
      const specs = all.filter((spec) => making.has(spec));
      const [near] = nearestWords(column, [...this.#free]);
      if (table.header.includes(column) || specs.length === 0 || near === undefined) continue;
      this.told.add(column);
      const ask = specs.length === 1 ? 'asks' : 'ask';
      const message = `${listed(specs)} ${ask} for a column “${clip(column)}”; this one is called “${clip(near)}”.`;
      this.#tell(near, 'error', message, column);
    }
  }

  #readQuantity(): void {
    if (!this.#lacks(quantityColumn)) return;
    const { header, rows } = this.#of.table;
    const cellsOf = (column: string) => rows.map(({ cells }) => cells[header.indexOf(column)]!);
    const found = [...this.#free].map((column) => ({ column, how: saysHowMany(column, cellsOf(column)) }));
    const meant = found.find(({ how }) => how === 'surely') ?? found.find(({ how }) => how === 'probably');
    if (meant?.how === undefined) return;
    const { column, how } = meant;
    const isFault = how === 'surely' && cellsOf(column).some((cell) => Number(cell) > 1);
    if (isFault) this.fault = `how many are wanted stands in a column “${clip(column)}”, which is not “quantity”.`;
    const what = isFault ? 'all lines are left out.' : 'one of each line is made.';
    this.#tellUnused(column, quantityColumn, isFault ? 'error' : 'warning', what);
  }

  #readOwn(own: string): void {
    const isMeant = (column: string) => isMeantAs(column, own) || otherWords[own]!.includes(lettersIn(column));
    const meant = this.#lacks(own) ? [...this.#free].find(isMeant) : undefined;
    if (meant !== undefined) this.#tellUnused(meant, own, 'warning', without[own]!);
  }

  /** A spec may ask for it as a text: then it is told to be missing. */
  #lacks(own: string): boolean {
    const { table, asked } = this.#of;
    return !asked.has(own) && !table.header.some((column) => column.toLowerCase() === own);
  }

  #tellUnused(column: string, own: string, severity: 'error' | 'warning', what: string): void {
    const message = `Nothing uses the column “${clip(column)}”, and there is no “${own}”: ${what}${didYouMean([own])}`;
    this.#tell(column, severity, message, own);
  }

  #tell(column: string, severity: 'error' | 'warning', message: string, suggestion: string): void {
    this.#free.delete(column);
    const { table, text } = this.#of;
    const range = cellRange(text, 1, table.header.indexOf(column));
    const code = severity === 'error' ? 'unknown-name' : 'odd-value';
    this.issues.push({ code, severity, path: [], range, message, suggestions: [suggestion] });
  }
}
