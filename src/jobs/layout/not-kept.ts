/** What a layout does not keep of what was asked: orders together on one sheet, rush orders on as few as possible. */

import { clip } from '../../core/length.ts';
import { listed } from '../../core/names.ts';
import { counted } from '../../core/units.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { FixedEntry } from '../read/read-fixed.ts';
import type { DraftSheet, JobLayout } from './layout.ts';

export interface NotKept {
  readonly about: 'order' | 'rush';
  readonly stock: string;
  readonly message: string;
  /** In few words, such as “order 7 on several sheets of ply3”. */
  readonly fact: string;
  readonly path: YamlPath;
}

/** Most orders that are named. */
const mostOrders = 4;

export function notKept({ sheets, lost }: JobLayout, keepTogether: boolean): NotKept[] {
  const stocks = [...new Set(sheets.map(({ stock }) => stock))];
  return stocks.flatMap((stock) => {
    const own = sheets.filter((sheet) => sheet.stock === stock);
    const apart = keepTogether ? ordersApart(own) : [];
    const parted = lost.get(stock)?.parted ?? new Set<string>();
    const rush = lost.get(stock)?.rush;
    const byFixing = apart.filter(({ order }) => parted.has(order));
    const otherwise = apart.filter(({ order }) => !parted.has(order));
    const found: NotKept[] = [];
    if (byFixing.length > 0)
      found.push({
        about: 'order',
        stock,
        message: `${lying(byFixing, stock)}, because of what is fixed.`,
        fact: factOf(byFixing, stock),
        path: pathOf(own, new Set(byFixing.map(({ order }) => order))),
      });
    if (otherwise.length > 0)
      found.push({
        about: 'order',
        stock,
        message: `${lying(otherwise, stock)}: no sheet was found to have room for all of it.`,
        fact: factOf(otherwise, stock),
        path: ['keep_together'],
      });
    if (rush)
      found.push({
        about: 'rush',
        stock,
        message: `Rush orders lie on ${counted(rush.sheets, 'sheet')} of “${clip(stock)}”; if nothing were fixed, they would on ${rush.without}.`,
        fact: `on ${counted(rush.sheets, 'sheet')} of ${clip(stock)}; ${rush.without} if nothing were fixed`,
        path: pathOf(own, new Set()),
      });
    return found;
  });
}

interface Apart {
  readonly order: string;
  readonly sheets: readonly DraftSheet[];
}

function ordersApart(sheets: readonly DraftSheet[]): Apart[] {
  const found = new Map<string, Set<DraftSheet>>();
  for (const sheet of sheets)
    for (const { of } of sheet.pieces)
      if (of.of.order !== '') found.set(of.of.order, (found.get(of.of.order) ?? new Set()).add(sheet));
  return [...found].filter(([, on]) => on.size > 1).map(([order, on]) => ({ order, sheets: [...on] }));
}

function lying(apart: readonly Apart[], stock: string): string {
  const [{ order, sheets }, ...others] = apart as [Apart, ...Apart[]];
  if (others.length === 0)
    return `Order ${clip(order)} lies on ${listed(
      sheets.map(({ name }) => clip(name)),
      mostOrders,
    )}`;
  return `${counted(apart.length, 'order')} of “${clip(stock)}” lie on more than one sheet each (${ordersOf(apart)})`;
}

function factOf(apart: readonly Apart[], stock: string): string {
  const isOne = apart.length === 1;
  return `${isOne ? 'order' : 'orders'} ${ordersOf(apart)} on several sheets of ${clip(stock)}`;
}

function ordersOf(apart: readonly Apart[]): string {
  return listed(
    apart.map(({ order }) => clip(order)),
    mostOrders,
  );
}

/** The entry that fixes a piece of these orders, else the first of the stock. */
function pathOf(sheets: readonly DraftSheet[], orders: ReadonlySet<string>): YamlPath {
  const fixed = sheets.flatMap(({ pieces }) => pieces.flatMap((each) => (each.fixed ? [each] : [])));
  const inText = (a: FixedEntry, b: FixedEntry) => Number(a.path.at(-1)) - Number(b.path.at(-1));
  const entries = (some: typeof fixed) => some.map(({ fixed: entry }) => entry!).sort(inText);
  const [first] = [...entries(fixed.filter(({ of }) => orders.has(of.of.order))), ...entries(fixed)];
  return first?.path ?? ['fixed'];
}
