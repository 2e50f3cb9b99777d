/** How the machine is set for the work on a tag or a sheet, in words, with what nobody has said. */

import { shortLength } from '../../core/units.ts';
import type { Tag } from '../../tag/tag.ts';
import { lengthIn } from '../../core/in-words.ts';
import { materialInWords } from './material-in-words.ts';

/** In the order of the work: “engrave 30 %, 220 mm/s; score: not set; cut 95 %, 8 mm/s, 2 passes”. */
export function settingsInWords({ pieces, machine, units }: Pick<Tag, 'pieces' | 'machine' | 'units'>): string {
  const marked = new Set(pieces.flatMap(({ marks }) => marks.map(({ operation }) => operation)));
  const needed = (['engrave', 'score'] as const).filter((operation) => marked.has(operation));
  return [...needed, 'cut' as const]
    .map((operation) => {
      const [power, speed] = [machine?.power?.[operation], machine?.[operation]];
      if (power === undefined && speed === undefined) return `${operation}: not set`;
      const passes = machine?.passes[operation] ?? 1;
      return [
        power === undefined ? `${operation}: power not set` : `${operation} ${power}`,
        speed === undefined ? 'speed not set' : `${shortLength(speed, units)}/s`,
        ...(passes > 1 ? [`${passes} passes`] : []),
      ].join(', ');
    })
    .join('; ');
}

/** For the head of a sheet’s page: the stock, how the machine is set for it, and its own caution. */
export function stockLine(tag: Tag): string {
  const { thickness, caution } = tag.stock;
  const material = materialInWords(tag) ?? 'Material not named';
  const thick = thickness === undefined ? 'thickness not given' : lengthIn(thickness, tag.units);
  const parts = [`${material}, ${thick}`, settingsInWords(tag), ...(caution === undefined ? [] : [caution])];
  return parts.join(' · ');
}
