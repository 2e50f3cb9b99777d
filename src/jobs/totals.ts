/** Totals of a job: pieces, sheets, minutes, weight, cost. */

import { materialCost, estimateJob, sumEstimates } from '../toolpath/estimate.ts';
import type { Cost, JobEstimate } from '../toolpath/estimate.ts';
import { fromStock } from '../tag/by-stock.ts';
import type { Tag } from '../tag/tag.ts';
import { clip } from '../core/length.ts';
import { counted } from '../core/units.ts';
import { money, sizeIn } from '../core/in-words.ts';
import { estimateOfTag } from '../export/job/known-estimates.ts';
import { sumOfCosts } from '../export/job/sum-of-costs.ts';
import { estimateFacts, speedsLacking } from '../export/words/estimate-facts.ts';
import type { Fact } from '../export/words/estimate-facts.ts';
import type { LaidOutJob } from './job.ts';
import type { JobSheet } from './layout/layout.ts';
import { notKept } from './layout/not-kept.ts';
import type { JobTag } from './orders/work.ts';

/** A sheet as a single tag, for code that exports or estimates tags. */
export function sheetTag(sheet: JobSheet, title: string): Tag {
  const { tag } = sheet.pieces[0]!.of.of;
  const pieces = sheet.pieces.map(({ of }) => of.piece);
  return { ...fromStock(tag, sheet.from, pieces), output: sheet.output, title };
}

export function estimateOfSheet(sheet: JobSheet): JobEstimate {
  return estimateJob(sheetTag(sheet, sheet.name), sheet.plan);
}

/** `undefined` if nothing is laid out. */
export function estimateOfJob({ layout }: Pick<LaidOutJob, 'layout'>): JobEstimate | undefined {
  const [first, ...others] = layout.sheets.map(estimateOfSheet);
  return first && sumEstimates([first, ...others]);
}

export function piecesWanted(tags: readonly JobTag[]): number {
  return tags.reduce((sum, { copies, tag }) => sum + copies * tag.pieces.length, 0);
}

/** Cost of the tags by area, and of the sheets taken from the shelf; offcuts have been paid for. */
export function costsOfJob({ layout, pieces }: Pick<LaidOutJob, 'layout' | 'pieces'>): {
  readonly material?: Cost;
  readonly sheets?: Cost;
} {
  const material = sumOfCosts(
    pieces.tags.map(({ tag, copies }) => {
      const cost = estimateOfTag(tag)?.cost;
      return cost && { ...cost, amount: cost.amount * copies };
    }),
  );
  const whole = layout.sheets.filter(({ offcut }) => !offcut);
  const sheets = sumOfCosts(
    whole.map(({ from, width, height, pieces: [first] }) =>
      materialCost({ stock: from.stock, sheet: first!.of.of.tag.sheet ?? sheetOfSize(width, height) }, width * height),
    ),
  );
  return { ...(material ? { material } : {}), ...(sheets ? { sheets } : {}) };
}

/** Prices that are for sheets of another size than those that are cut: “wal4 by area, 9 EUR for 400 × 300 mm”. */
function pricedByArea({ layout, model: { units } }: Pick<LaidOutJob, 'layout' | 'model'>): string[] {
  const found = layout.sheets.flatMap(({ stock, from, offcut, width, height, pieces: [first] }) => {
    const { price } = from.stock;
    const { sheet } = first!.of.of.tag;
    if (offcut || price?.per !== 'sheet' || !sheet) return [];
    if (Math.abs(sheet.width * sheet.height - width * height) < sameAreaMm2) return [];
    return [`${clip(stock)} by area, ${money(price)} for ${sizeIn(sheet.width, sheet.height, units)}`];
  });
  return [...new Set(found)];
}

/** Of sheets of the same size, written in other units. */
const sameAreaMm2 = 1;

/** A price per sheet refers to sheets of this size if nothing else is stated. */
function sheetOfSize(width: number, height: number): NonNullable<Tag['sheet']> {
  return { width, height, margin: 0, gap: 0, turn: 'half', copies: 1 };
}

export function jobFacts(job: LaidOutJob): Fact[] {
  const { layout, pieces, leftOut, model } = job;
  const orders = new Set(pieces.tags.map(({ order }) => order));
  orders.delete('');
  const tags = pieces.tags.reduce((sum, { copies }) => sum + copies, 0);
  const estimate = estimateOfJob(job);
  const taken = estimate ? estimateFacts(estimate, model.units) : [];
  const unknown = timeUnknown(job);
  const { material, sheets } = costsOfJob(job);
  const lost = layout.left.length;
  return [
    ...(orders.size > 0 ? [{ name: 'Orders', value: String(orders.size) }] : []),
    { name: 'Tags', value: String(tags) },
    { name: 'Pieces', value: `${piecesWanted(pieces.tags)}${lost > 0 ? `, ${lost} of them on no sheet` : ''}` },
    ...stocksOf(job).map(({ stock, list }) => ({ name: stock, value: sheetsInWords(list, model.units) })),
    ...notKept(layout, model.keepTogether).map(({ about, fact }) => ({
      name: about === 'order' ? 'Not together' : 'Rush orders',
      value: fact,
    })),
    ...taken.filter(({ name }) => !(name === 'Sheet' || name === 'Material cost' || (name === 'Machine' && unknown))),
    ...(unknown === undefined ? [] : [{ name: 'Machine', value: unknown }]),
    ...(material ? [{ name: 'Material cost', value: `${money(material)} for the boxes round the tags` }] : []),
    ...(sheets ? [{ name: 'Whole sheets', value: [money(sheets), ...pricedByArea(job)].join('; ') }] : []),
    ...(leftOut.length > 0 ? [{ name: 'Left out', value: counted(leftOut.length, 'line') }] : []),
  ];
}

/** “unknown: wal4 has no speed to score”; `undefined` if the time is known, or no stock has a machine. */
function timeUnknown(job: LaidOutJob): string | undefined {
  const stocks = stocksOf(job).map(({ stock, list: [first, ...others] }) => {
    const estimate = sumEstimates([estimateOfSheet(first!), ...others.map(estimateOfSheet)]);
    const isWithout = 'missing' in estimate.time && estimate.time.missing.includes('machine');
    return { stock, isWithout, lacking: isWithout ? 'no machine' : speedsLacking(estimate) };
  });
  const lacking = stocks.filter((each) => each.lacking !== undefined);
  if (lacking.length === 0 || stocks.every(({ isWithout }) => isWithout)) return undefined;
  return `unknown: ${lacking.map(({ stock, lacking: what }) => `${clip(stock)} has ${what!}`).join('; ')}`;
}

function stocksOf({ layout }: LaidOutJob): { readonly stock: string; readonly list: readonly JobSheet[] }[] {
  const names = [...new Set(layout.sheets.map(({ stock }) => stock))];
  return names.map((stock) => ({ stock, list: layout.sheets.filter((sheet) => sheet.stock === stock) }));
}

/** “1 offcut, 2 sheets of 600 × 300 mm; filled 71 %, 64 %, 80 %”. */
function sheetsInWords(list: readonly JobSheet[], units: 'mm' | 'in'): string {
  const sizes = new Map<string, number>();
  for (const { width, height } of list.filter(({ offcut }) => !offcut)) {
    const size = sizeIn(width, height, units);
    sizes.set(size, (sizes.get(size) ?? 0) + 1);
  }
  const offcuts = list.filter(({ offcut }) => offcut).length;
  const parts = [
    ...(offcuts > 0 ? [counted(offcuts, 'offcut')] : []),
    ...[...sizes].map(([size, count]) => `${counted(count, 'sheet')} of ${size}`),
  ];
  return `${parts.join(', ')}; filled ${list.map(({ filled }) => `${Math.round(100 * filled)} %`).join(', ')}`;
}
