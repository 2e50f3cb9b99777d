/** Readme of a pack, for whoever gets the files of a tag: what it is, how to cut it, whose letters it has. Plain text. */

import { lookNames } from '../look/looks.ts';
import type { LookName } from '../look/looks.ts';
import { materialOf } from '../strength/materials.ts';
import { byStock } from '../tag/by-stock.ts';
import { isLayered } from './bench/assembly-sheet.ts';
import { endings } from './formats.ts';
import { draftNote, isDraft } from './job/job.ts';
import type { Job } from './job/job.ts';
import { proofFacts } from './proof/proof-facts.ts';
import { cuttingLines } from './words/cutting.ts';
import { fontLicences } from './words/font-licences.ts';
import { wordsOn } from './words/words-on.ts';

/** Line length of plain text that mail programs and terminals have always shown. */
const widest = 76;

/** `name`: base name of the files. */
export function packReadme(job: Job, name: string): string {
  const { tag } = job;
  const care = [...new Set(byStock(tag).flatMap(({ stock }) => careLines(stock.material)))];
  const sections: [string, string[]][] = [
    ['The tag', [...wordingLines(job), ...factLines(job)]],
    ['In this pack', packLines(job, name)],
    ['Cutting it', cuttingLines(job, name)],
    ['Lettering', fontLines(job)],
    ['For whoever gets the tag', [...care, ...notes]],
  ];
  const head = [
    tag.title,
    '='.repeat(Math.max(1, Array.from(tag.title).length)),
    ...(isDraft(job) ? ['', ...wrappedLines(draftNote, '')] : []),
  ];
  const body = sections
    .filter(([, lines]) => lines.length > 0)
    .flatMap(([title, lines]) => [
      '',
      title,
      '-'.repeat(title.length),
      ...lines.flatMap((line) => wrappedLines(line, '- ')),
    ]);
  return [...head, ...body, ''].join('\n');
}

function wordingLines(job: Job): string[] {
  return wordsOn(job).map(({ lines, way, font }) => `“${lines.join(' / ')}”, ${way}, in ${font}`);
}

/** Unknown facts are left to the proof, where there is room to write them in. */
function factLines({ tag }: Job): string[] {
  return proofFacts(tag).flatMap(({ name, value }) => (value === undefined ? [] : [`${name}: ${value}`]));
}

function packLines({ tag, along }: Job, name: string): string[] {
  const { cover, pdf, assembly } = endings;
  const beside = [...new Set(Object.keys(along?.files ?? {}).map((file) => file.slice(0, file.indexOf('/'))))];
  const folders = beside.length === 0 ? '' : ` It needs what is in ${beside.map((each) => `“${each}”`).join(' and ')}.`;
  return [
    `${name}${cover}: a picture of it. Its colours are a close likeness only.`,
    `SVG and DXF files: to cut it. ${name}${pdf}: the same lines at true size, to look at or to print.`,
    ...(isLayered(tag) ? [`${name}${assembly}: how its layers are glued together.`] : []),
    ...(along?.text === undefined
      ? []
      : [`${name}.tag.yaml: the spec that Tagwright makes these files from, to change it or make it again.${folders}`]),
    ...(along?.lacking ?? []),
  ];
}

function fontLines({ fonts, along }: Job): string[] {
  if (fonts.length === 0) return [];
  const hasFonts = Object.keys(along?.files ?? {}).some((file) => file.startsWith('fonts/'));
  return [
    ...fontLicences(fonts),
    `The cut files hold outlines of letters and no font${hasFonts ? '; the folder “fonts” holds fonts, for the spec' : ''}. What may be sold with them is for the licence to say.`,
  ];
}

const wooden: readonly LookName[] = ['light', 'dark', 'red', 'alder', 'beech', 'tan'];

/** Rules of thumb, no source. Empty for an unknown material. */
function careLines(material = ''): string[] {
  const kind = materialOf(material)?.kind;
  const { look } = lookNames(material);
  if (kind === 'plastic' || look === 'acrylic')
    return [
      'Wipe with a soft damp cloth. No alcohol and no glass cleaner: they make fine cracks at the edges.',
      'If there is a film on it, peel it off.',
    ];
  const isWooden =
    kind === 'wood' || kind === 'plywood' || (kind === undefined && material.trim() !== '' && wooden.includes(look));
  if (!isWooden) return [];
  return [
    'Keep it dry, and wipe it with a dry cloth. Wood moves a little with the weather.',
    'Dark edges may rub off at first: brush them, or sand them lightly, before you oil or wax it.',
  ];
}

const notes = [
  'Small parts, twine and ribbon are not for small children: they can choke on them or be strangled.',
  'It is not a toy, and it has not been tested for contact with food.',
  'It is made to be tied on and looked at. Do not hang anything heavy from it.',
];

function wrappedLines(text: string, mark: string): string[] {
  const lines: string[] = [];
  let line = mark;
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    if (line.trim().length > mark.trim().length && line.length + word.length > widest) {
      lines.push(line.trimEnd());
      line = ' '.repeat(mark.length);
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()];
}
