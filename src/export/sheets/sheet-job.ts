/** Export of sheets: a job for each sheet, as for a tag, and totals. */

import type { Issue } from '../../core/issue.ts';
import { boundsArea } from '../../geometry/measure.ts';
import { nestHere } from '../../nesting/best-of.ts';
import { mostPieces } from '../../nesting/layout.ts';
import { materialCost, estimateJob, sumEstimates } from '../../toolpath/estimate.ts';
import { labelOf } from '../../spec/batch/batch.ts';
import type { Batch } from '../../spec/batch/batch.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { byStock, fromStock } from '../../tag/by-stock.ts';
import type { Tag } from '../../tag/tag.ts';
import { issuesAtLines } from '../job/job.ts';
import type { Job } from '../job/job.ts';
import { extentOf } from '../../toolpath/cut-plan.ts';
import { money, sizeIn } from '../../core/in-words.ts';
import { capitalised } from '../../core/names.ts';
import { planSheets } from './sheet-plan.ts';
import type { NamedTag, PlannedSheet, SheetPlan } from './sheet-plan.ts';
import { sumOfCosts } from '../job/sum-of-costs.ts';
import { estimateFacts } from '../words/estimate-facts.ts';
import type { Fact } from '../words/estimate-facts.ts';

/** The report of one tag: a spec's only one, or one of its batch. */
export interface TagReport {
  readonly tag?: Tag;
  readonly issues: readonly Issue[];
  readonly row: number;
  readonly source?: Pick<SpecSource, 'position'>;
  readonly batch?: Pick<Batch, 'title' | 'rows'>;
}

export interface SheetJobs {
  readonly title: string;
  readonly plan: SheetPlan;
  /** One for each sheet. */
  readonly jobs: readonly Job[];
  readonly facts: readonly Fact[];
}

/** `problem`: why there are no sheets, as a sentence. `lacksSheet`: because the spec gives no sheet size. */
export async function sheetJobs(
  reports: readonly TagReport[],
  checkpoint: () => Promise<void>,
  nest = nestHere,
): Promise<SheetJobs | { readonly problem: string; readonly lacksSheet?: boolean }> {
  const tags = reports.flatMap((report): NamedTag[] => {
    return report.tag ? [{ name: labelOf(report) ?? '', row: report.row, tag: report.tag }] : [];
  });
  const [first] = tags;
  if (!first) return { problem: 'There is nothing to lay out yet.' };
  const { sheet } = first.tag;
  if (!sheet) {
    const problem = 'No sheet size given: add “sheet: {size: [600 mm, 400 mm]}”.';
    return { problem, lacksSheet: true };
  }
  const count = sheet.copies * tags.reduce((sum, { tag }) => sum + tag.pieces.length, 0);
  if (count > mostPieces) {
    const ways = [
      ...(sheet.copies > 1 ? ['ask for fewer “copies”'] : []),
      ...(tags.length > 1 || sheet.copies === 1 ? ['split the table and lay out one part after the other'] : []),
    ];
    const problem = `These are ${count} pieces; at most ${mostPieces} are laid out at once. ${capitalised(ways.join(', or '))}.`;
    return { problem };
  }
  const plan = await planSheets(tags, sheet, checkpoint, nest);
  const title = reports[0]?.batch?.title ?? first.tag.title;
  const issues = reports.flatMap((report) => issuesAtLines(report, labelOf(report)));
  const stocks = new Set(plan.sheets.map(({ from }) => from.stock.name));
  const jobs = plan.sheets.map(({ plan: work, pieces, from }, index): Job => {
    const numbered = plan.sheets.length === 1 ? title : `${title}, sheet ${index + 1} of ${plan.sheets.length}`;
    const named = stocks.size > 1 && from.stock.name !== undefined ? `${numbered} (${from.stock.name})` : numbered;
    const on = pieces.map(({ piece }) => piece);
    const tag = { ...fromStock(first.tag, from, on), title: named };
    return { tag, plan: work, issues, fonts: [] };
  });
  return { title, plan, jobs, facts: factsOf(plan, jobs, tags) };
}

function factsOf(plan: SheetPlan, jobs: readonly Job[], tags: readonly NamedTag[]): Fact[] {
  const { sheet, sheets, left } = plan;
  const { units } = tags[0]!.tag;
  const count = sheets.reduce((sum, { pieces }) => sum + pieces.length, 0);
  const names = [...new Set(left.map(({ name, piece }) => (name === '' ? piece.title : `${name} (${piece.title})`)))];
  const [first, ...others] = jobs.map(({ tag, plan: work }) => estimateJob(tag, work));
  // The material used by sheets has two figures of its own.
  const taken = first && estimateFacts(sumEstimates([first, ...others]), units);
  return [
    { name: 'Pieces', value: String(count) },
    { name: 'Sheets', value: `${sheets.length} of ${sizeIn(sheet.width, sheet.height, units)}` },
    // Counts whole sheets, whatever is left of them.
    ...(sheets.length > 0
      ? [
          {
            name: 'Filled',
            value: sheets.map(({ use }) => percent(use.area / (sheet.width * sheet.height))).join(', '),
          },
        ]
      : []),
    ...(sheets.length > 0 ? [{ name: 'Left over', value: leftOver(sheets, units) }] : []),
    ...(taken ?? []).filter(({ name }) => name !== 'Sheet' && name !== 'Material cost'),
    ...costs(plan, tags),
    ...(names.length > 0 ? [{ name: 'Too large', value: names.join(', ') }] : []),
  ];
}

/** Cost of all tags by area, and of the whole sheets cut for them; empty if a stock has no price. */
function costs({ sheet, sheets, left }: SheetPlan, tags: readonly NamedTag[]): Fact[] {
  const lost = new Set(left.map(({ piece }) => piece));
  const shares = tags.flatMap(({ tag }) =>
    byStock({ ...tag, pieces: tag.pieces.filter((piece) => !lost.has(piece)) }).map((part) => {
      const extent = extentOf(part);
      const area = extent ? boundsArea(extent) : 0;
      return materialCost(part, sheet.copies * area);
    }),
  );
  const share = sumOfCosts(shares);
  const whole = sumOfCosts(sheets.map(({ from }) => materialCost({ ...from, sheet }, sheet.width * sheet.height)));
  return [
    ...(share ? [{ name: 'Material cost', value: `${money(share)} for the boxes round the tags` }] : []),
    ...(whole ? [{ name: 'Whole sheets', value: money(whole) }] : []),
  ];
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** The part of the last sheet that is worth keeping. */
function leftOver(sheets: readonly PlannedSheet[], units: Tag['units']): string {
  const { offcut } = sheets.at(-1)!.use;
  if (!offcut) return 'nothing worth keeping';
  const size = sizeIn(offcut.maxX - offcut.minX, offcut.maxY - offcut.minY, units);
  return `${size}${sheets.length > 1 ? ' of the last' : ''}`;
}
