/** The note that goes with a pack: what it is, how to cut it, whose letters it is set in, how to treat it. Plain text. */

import { materialOf } from '../measure/materials.ts';
import type { UsedFont } from '../tag/fonts-used.ts';
import { errorNote, kerfNote } from './job.ts';
import type { Job } from './job.ts';
import { proofFacts } from './proof-facts.ts';
import { operationNames, styleOf } from './styles.ts';

/** As wide as mail and terminals have shown plain text for ever. */
const widest = 76;

const contents = [
  ['svg', 'for the laser: lines, arcs and curves in millimetres'],
  ['dxf', 'the same for programs that read drawings: a layer an operation, in millimetres'],
  ['pdf', 'a proof to look at, and the cut page at true size'],
  ['png', 'a picture of the proof'],
] as const;

/** `name`: of the files without their endings. */
export function packReadme(job: Job, name: string): string {
  const { tag } = job;
  const note = errorNote(job);
  const sections: [string, string[]][] = [
    ['In this pack', contents.map(([format, what]) => `${name}.${format}: ${what}`)],
    ['The tag', proofFacts(job).map((fact) => `${fact.name}: ${fact.value}`)],
    ['Cutting it', cutting(job)],
    ['Lettering', lettering(job.fonts)],
    ['Care', care(tag.stock.material)],
    ['Cautions', cautions],
    ['Checked', checked(job)],
  ];
  const head = [
    tag.title,
    '='.repeat(Math.max(1, Array.from(tag.title).length)),
    ...(note ? ['', ...wrapped(note, '')] : []),
  ];
  const body = sections
    .filter(([, lines]) => lines.length > 0)
    .flatMap(([title, lines]) => [
      '',
      title,
      '-'.repeat(title.length),
      ...lines.flatMap((line) => wrapped(line, '- ')),
    ]);
  return [...head, ...body, ''].join('\n');
}

function cutting({ tag, plan }: Job): string[] {
  const order = plan.steps.map(({ operation }) => {
    const { color, layer } = styleOf(tag, operation);
    const name = layer === operation ? '' : `, layer “${layer}”`;
    return `${operationNames[operation]} (${color}${name})`;
  });
  const { tabs } = tag.output;
  return [
    `In this order: ${order.join('; ')}. What lies inside is cut before what frees it.`,
    kerfNote(tag),
    ...(tabs
      ? [
          `Each part is held by ${tabs.count} ${tabs.count === 1 ? 'tab' : 'tabs'} of ${tabs.width} mm; break or cut them.`,
        ]
      : []),
    'Kerf differs from machine to machine and sheet to sheet: cut one on scrap first, and measure it.',
  ];
}

function lettering(fonts: readonly UsedFont[]): string[] {
  if (fonts.length === 0) return [];
  const each = fonts.flatMap(({ family, style, licence, embedding }) => {
    const { copyright, text, url } = licence;
    const said = [copyright, text, url]
      .filter((part) => part !== undefined && part.trim() !== '')
      .map((part) => part!.trim());
    return [
      `${family} ${style}. ${said.length > 0 ? said.join(' ') : 'The font states no licence.'}`,
      `The font ${embedding}, it says.`,
    ];
  });
  return [
    ...each,
    'The files hold outlines of letters and no font. What may be sold with them is for the licence to say.',
  ];
}

/** Common practice, no source. */
function care(material: string | undefined): string[] {
  const kind = material === undefined ? undefined : materialOf(material)?.kind;
  if (kind === 'plastic')
    return [
      'Wipe with a soft damp cloth; no alcohol and no glass cleaner, which craze cut edges.',
      'Peel the film off when all is cut.',
    ];
  const wood = [
    'Keep dry; wipe with a dry cloth. Wood moves with the weather.',
    'Brush soot off the edges, or sand them lightly, before oil or wax.',
  ];
  return kind === undefined ? [] : wood;
}

const cautions = [
  'Laser cutting makes fumes and can start fires. Extract the fumes, keep an extinguisher within reach, and never leave a running job alone.',
  'Never cut PVC, vinyl or other halogenated plastics, polycarbonate, ABS, PTFE, carbon fibre, or epoxy or glass-fibre boards.',
  'Small parts, twine and ribbon are not for small children: they choke and strangle.',
  'Widths in these files are geometry. Grain, knots and glue are not looked at: pull at the first piece before you trust the rest.',
];

function checked({ issues }: Job): string[] {
  if (issues.length === 0) return ['No problems were found.'];
  const words = { error: 'Error', warning: 'Warning', info: 'Note' } as const;
  return issues.map(({ severity, message }) => `${words[severity]}: ${message}`);
}

function wrapped(text: string, mark: string): string[] {
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
