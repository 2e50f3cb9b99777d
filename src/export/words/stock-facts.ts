/** Facts about one stock of a tag, and how the machine is set for it, for the bench. */

import { limitOf } from '../../checks/measures/thin-places.ts';
import { shortLength } from '../../core/units.ts';
import { measuredOn } from '../../spec/model/measured-values.ts';
import type { Tag } from '../../tag/tag.ts';
import type { Fact } from './estimate-facts.ts';
import { lengthIn } from '../../core/in-words.ts';
import { kerfNote } from '../job/job.ts';
import { settingsInWords } from './machine-settings.ts';
import { materialInWords } from './material-in-words.ts';

/** What to check and to set before a sheet is cut. */
export function stockFacts(tag: Tag): Fact[] {
  const { stock, units, output, machine } = tag;
  const { thickness } = stock;
  const kerfDay = stock.measuredOn?.kerf;
  const all: (Fact | undefined)[] = [
    { name: 'Material', value: materialInWords(tag) ?? 'not named in the spec' },
    { name: 'Thickness', value: thickness === undefined ? 'not given: measure it' : lengthIn(thickness, units) },
    {
      name: 'Kerf',
      value: `${kerfNote(tag)} ${kerfDay === undefined ? 'It differs from machine to machine and sheet to sheet: try on scrap first.' : `Measured on ${kerfDay}.`}`,
    },
    machine?.name === undefined ? undefined : { name: 'Machine', value: machine.name },
    { name: 'Set by hand', value: settingsInWords(tag) },
    { name: 'Least width', value: leastWidths(tag) },
    output.tabs && {
      name: 'Tabs',
      value: `Each part is held by ${output.tabs.count} × ${lengthIn(output.tabs.width, units)}; break or cut them.`,
    },
  ];
  return all.filter((fact) => fact !== undefined);
}

/** Pieces that others carry may be narrower. */
function leastWidths({ stock, units, pieces }: Tag): string {
  const { minWeb, measuredOn: days } = stock;
  const carried = pieces.map((piece) => limitOf(piece, stock)).find((limit) => limit < minWeb);
  const glued = carried === undefined ? '' : `, ${shortLength(carried, units)} for pieces glued on others`;
  return `${shortLength(minWeb, units)}${measuredOn(days?.min_web)}${glued}; take care with what is narrower.`;
}
