/** How the files of a tag are cut, for whoever has another machine than the workshop that made them. */

import { lengthIn, sizeIn } from '../../core/in-words.ts';
import { shortSize, shortLength } from '../../core/units.ts';
import type { Tag } from '../../tag/tag.ts';
import { jobsByStock, kerfNote } from '../job/job.ts';
import type { Job, StockJob } from '../job/job.ts';
import { operationNames, styleOf } from '../page/styles.ts';

/** `name`: base name of the files. */
export function cuttingLines(job: Job, name: string): string[] {
  const { tag, along } = job;
  const parts = jobsByStock(job);
  const kerfs = new Map(parts.map(({ job: part }) => [kerfNote(part.tag), part.tag]));
  return [
    ...parts.map((part) => sheetLine(part, name, parts.length > 1)),
    'Lengths in the files are millimetres, at true size: check the size after you have opened one.',
    ...[...kerfs].map(([note, { stock }]) => (kerfs.size > 1 && stock.material ? `${stock.material}: ${note}` : note)),
    otherKerf(tag, along?.text !== undefined),
    ...workLines(parts),
    ...(tag.output.tabs
      ? [
          `Each part is held by ${tag.output.tabs.count} tabs ${lengthIn(tag.output.tabs.width, tag.units)} wide: break or cut them.`,
        ]
      : []),
    'Try on scrap of your own sheet first.',
  ];
}

function sheetLine({ suffix, job: { tag, plan } }: StockJob, name: string, isOneOfSeveral: boolean): string {
  const { material, thickness } = tag.stock;
  const { maxX, maxY } = plan.bounds;
  const inInches = tag.units === 'in' ? ` (${sizeIn(maxX, maxY, 'in')})` : '';
  const what = [material, thickness === undefined ? undefined : shortLength(thickness, tag.units)]
    .filter((each) => each !== undefined)
    .join(', ');
  const of = isOneOfSeveral && what !== '' ? `, of ${what}` : '';
  return `${name}${suffix}.svg or ${name}${suffix}.dxf${of}: everything in it is ${shortSize(maxX, maxY, 'mm')}${inInches}.`;
}

/** What another beam does to the size. */
function otherKerf({ stock, output }: Tag, hasSpec: boolean): string {
  const known = output.compensate && stock.kerf > 0 ? 'With a wider kerf' : 'With a kerf of its own';
  const remedy = hasSpec
    ? 'For your kerf, write it as “kerf” into the spec and export again.'
    : 'For another kerf, files of their own have to be made.';
  return `${known} parts come out smaller by the difference, and openings larger. ${remedy}`;
}

/** What is done along which lines: by colour in SVG files, by layer in DXF files. */
function workLines(parts: readonly StockJob[]): string[] {
  const all = parts.flatMap(({ job: { tag, plan } }) =>
    plan.steps.map(({ operation, layer, paths }) => {
      const style = styleOf(tag, operation, layer);
      const isFilled = operation === 'engrave' && paths.some(({ alongLines }) => !alongLines);
      return `${operationNames[operation]} (${isFilled ? 'areas' : 'lines'} in ${style.color}, layer “${style.layer}”)`;
    }),
  );
  const each = [...new Set(all)];
  return each.length > 1 ? [`In this order: ${each.join('; ')}.`] : each.map((line) => `${line}.`);
}
