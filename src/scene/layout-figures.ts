/** Figures of a layout by which two are compared: what it takes, and what is left. */

import { enclosedArea } from '../jobs/layout/layout.ts';
import type { JobSheet } from '../jobs/layout/layout.ts';
import type { LaidOutJob } from '../jobs/job.ts';
import { leftoversOf } from '../jobs/offcuts/leftovers.ts';
import { costsOfJob, estimateOfJob } from '../jobs/totals.ts';
import type { Units } from '../core/units.ts';
import type { SheetJobs } from '../export/sheets/sheet-job.ts';
import { area, boundsArea, boundsOf } from '../geometry/measure.ts';
import type { LayoutFigure } from '../protocol/sheets.ts';
import { estimateJob, materialCost, sumEstimates } from '../toolpath/estimate.ts';
import type { Cost, JobEstimate } from '../toolpath/estimate.ts';
import { sumOfCosts } from '../export/job/sum-of-costs.ts';

export function figuresOfJob(job: LaidOutJob): LayoutFigure[] {
  const { sheets } = job.layout;
  const { units } = job.model;
  const offcuts = sheets.filter(({ offcut }) => offcut);
  const whole = sheets.filter(({ offcut }) => !offcut);
  const stocks = [...new Set(whole.map(({ stock }) => stock))];
  const covered = sheets.reduce((sum, sheet) => sum + enclosedArea(sheet), 0);
  const cut = sheets.reduce((sum, { outline }) => sum + area(outline), 0);
  const kept = sheets.flatMap(leftoversOf).reduce((sum, { region }) => sum + area(region), 0);
  return [
    count('Sheets', whole.length),
    ...(job.offcuts.size > 0 ? [count('Offcuts used', offcuts.length)] : []),
    filled(covered, cut),
    ...stocks.map((stock) =>
      length(
        stocks.length === 1 ? 'Free on the last sheet' : `Free on the last sheet of ${stock}`,
        freeOn(whole.filter((sheet) => sheet.stock === stock).at(-1)!),
        units,
      ),
    ),
    areaOf('Left, worth keeping', kept, units),
    ...takes(estimateOfJob(job), costsOfJob(job).sheets),
  ];
}

export function figuresOfSheets({ plan, jobs }: SheetJobs, units: Units): LayoutFigure[] {
  const { sheet, sheets } = plan;
  const whole = sheet.width * sheet.height;
  const [first, ...others] = jobs.map(({ tag, plan: work }) => estimateJob(tag, work));
  const offcut = sheets.at(-1)?.use.offcut;
  return [
    count('Sheets', sheets.length),
    filled(
      sheets.reduce((sum, { use }) => sum + use.area, 0),
      whole * sheets.length,
    ),
    length(
      'Free on the last sheet',
      offcut ? Math.min(offcut.maxX - offcut.minX, offcut.maxY - offcut.minY) : 0,
      units,
    ),
    areaOf(
      'Left, worth keeping',
      sheets.reduce((sum, { use }) => sum + (use.offcut ? boundsArea(use.offcut) : 0), 0),
      units,
    ),
    ...takes(
      first && sumEstimates([first, ...others]),
      sumOfCosts(sheets.map(({ from }) => materialCost({ ...from, sheet }, whole))),
    ),
  ];
}

/** How far from its end nothing lies, at the end where that leaves more. */
function freeOn({ width, height, margin, pieces }: JobSheet): number {
  const used = boundsOf(pieces.flatMap(({ enclosed }) => enclosed));
  if (!used) return 0;
  const [up, across] = [height - used.maxY - margin, width - used.maxX - margin];
  return Math.max(0, up * width >= across * height ? up : across);
}

function takes(estimate: JobEstimate | undefined, cost: Cost | undefined): LayoutFigure[] {
  const time = estimate?.time;
  return [
    ...(time && 'seconds' in time ? [{ name: 'Machine', value: time.seconds / 60, unit: 'min', digits: 1 }] : []),
    ...(cost ? [{ name: 'Whole sheets', value: cost.amount, unit: cost.currency ?? '', digits: 2 }] : []),
  ];
}

function count(name: string, value: number): LayoutFigure {
  return { name, value, unit: '', digits: 0 };
}

function filled(covered: number, of: number): LayoutFigure {
  return { name: 'Filled', value: of > 0 ? (100 * covered) / of : 0, unit: '%', digits: 1 };
}

const mmPerInch = 25.4;

function length(name: string, mm: number, units: Units): LayoutFigure {
  return units === 'in'
    ? { name, value: mm / mmPerInch, unit: 'in', digits: 2 }
    : { name, value: mm, unit: 'mm', digits: 0 };
}

function areaOf(name: string, mm2: number, units: Units): LayoutFigure {
  return units === 'in'
    ? { name, value: mm2 / mmPerInch ** 2, unit: 'in²', digits: 1 }
    : { name, value: mm2 / 100, unit: 'cm²', digits: 0 };
}
