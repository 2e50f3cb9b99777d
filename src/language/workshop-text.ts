/** Text of a new workshop file: the answers given, and an explanation of every key that can be filled in later. */

import { yamlText } from './completion/snippets.ts';

export interface WorkshopChoices {
  readonly units: 'mm' | 'in';
  /** Name by which specs refer to it. */
  readonly stock: string;
  readonly material: string;
  readonly thickness: string;
  /** Absent if not measured yet. */
  readonly kerf?: string | undefined;
  readonly sheet?: readonly [string, string] | undefined;
  readonly twine?: string | undefined;
}

export function workshopText({ units, stock, material, thickness, kerf, sheet, twine }: WorkshopChoices): string {
  return [
    '# The stocks, the ties and the machine of this workshop.',
    '# To use them, write “use:” with this file and “stock:” with a name from below.',
    '# For a value you do not know yet, run “Tagwright: New Test Piece…”, cut it, and run',
    '# “Tagwright: Enter a Measurement…”, which writes the value here with its date.',
    'tagwright: 1',
    ...(units === 'in' ? ['units: in'] : []),
    '',
    'stocks:',
    `  ${stock}:`,
    `    material: ${yamlText(material)}`,
    `    thickness: ${thickness}`,
    ...(kerf === undefined
      ? ['    # kerf: 0.16 mm           # removed by the beam: kerf test']
      : [`    kerf: ${kerf}`]),
    '    # min_web: 1.5 mm         # narrowest bridge: web comb',
    '    # min_x_height: 1.2 mm    # smallest engraved letters: engraving ladder',
    '    # machine: {cut: 12 mm/s, engrave: 250 mm/s, hatch: 0.1 mm}',
    '    # price: {amount: 4.20, per: m2, currency: EUR}',
    '    # caution: Printed on the job sheet under Safety.',
    '    # look: {color: "#E9D2A6", grain: left-right, engraving: dark}',
    '',
    ...(twine === undefined ? [] : ['ties:', `  twine: {twine: ${twine}}    # for its “opening”: hole comb`, '']),
    ...(sheet === undefined
      ? []
      : [`sheet: {size: [${sheet[0]}, ${sheet[1]}], margin: ${units === 'in' ? '1/4 in' : '5 mm'}}`, '']),
    '# machine: {travel: 300 mm/s, acceleration: 1500 mm/s2, corner_jump: 5 mm/s}',
    '# More than one? Name them; a spec then says “machine: bench”.',
    '# machines: {bench: {travel: 300 mm/s}, attic: {travel: 150 mm/s}}',
    '',
  ].join('\n');
}

/** For example `ply3` for 3 mm plywood: short, and valid as a name. */
export function stockName(material: string, thickness: string): string {
  const words: readonly string[] = material.toLowerCase().match(/[a-z]+/g) ?? [];
  const word = words.includes('plywood') ? 'ply' : (words.at(-1) ?? 'stock');
  const figure = /[\d.]+/.exec(thickness)?.[0].replace('.', '_') ?? '';
  return `${word}${figure}`;
}
