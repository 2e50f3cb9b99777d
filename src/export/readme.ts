/** Readme of a pack, for the buyer of the tag: what it is, which fonts it uses, how to look after it. Plain text. */

import { lookNames } from '../look/looks.ts';
import type { LookName } from '../look/looks.ts';
import { materialOf } from '../strength/materials.ts';
import { byStock } from '../tag/by-stock.ts';
import type { UsedFont } from '../tag/lettering/fonts-used.ts';
import { isLayered } from './bench/assembly-sheet.ts';
import { endings } from './formats.ts';
import { draftNote, isDraft, jobsByStock } from './job/job.ts';
import type { Job } from './job/job.ts';
import { proofFacts } from './proof/proof-facts.ts';
import { wordsOn } from './words/words-on.ts';

/** Line length of plain text that mail programs and terminals have always shown. */
const widest = 76;

/** `name`: base name of the files. */
export function packReadme(job: Job, name: string): string {
  const { tag } = job;
  const { png, pdf, job: sheet, assembly, svg, dxf } = endings;
  const papers = [name + sheet, ...(isLayered(tag) ? [name + assembly] : [])];
  const parts = jobsByStock(job);
  const cut = (ends: readonly string[]) => ends.flatMap((end) => parts.map(({ suffix }) => name + suffix + end));
  const sections: [string, string[]][] = [
    ['The tag', [...wordingLines(job), ...factLines(job)]],
    [
      'In this pack',
      [
        `${name}${png}: a picture of it.`,
        `${name}${pdf}: the proof, to look at and to sign.`,
        `${[...papers, ...cut([svg, dxf])].join(', ').replace(/, ([^,]*)$/, ' and $1')}: for the workshop that makes it.`,
        ...(job.spec === undefined ? [] : [`${name}.tag.yaml: what it was made from, to change it or make it again.`]),
      ],
    ],
    ['Lettering', fontLines(job.fonts)],
    ['Care', [...new Set(byStock(tag).flatMap(({ stock }) => careLines(stock.material)))]],
    ['Please note', notes],
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

function fontLines(fonts: readonly UsedFont[]): string[] {
  if (fonts.length === 0) return [];
  const each = fonts.flatMap(({ family, style, licence, embedding }) => {
    const { copyright, text, url } = licence;
    const licenceText = [copyright, text, url]
      .filter((part) => part !== undefined && part.trim() !== '')
      .map((part) => part!.trim());
    return [
      `${family} ${style}. ${licenceText.length > 0 ? licenceText.join(' ') : 'The font states no licence.'}`,
      `According to its file, the font ${embedding}.`,
    ];
  });
  return [
    ...each,
    'The files hold outlines of letters and no font. What may be sold with them is for the licence to say.',
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
  'Colours in pictures are a close likeness only.',
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
