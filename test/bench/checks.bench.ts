/**
 * Each check by itself, on lettering that it has not seen: `npm run bench`. Every round has another word, so that nothing is
 * remembered; the code is warm. What several checks share (necks, letters) is paid by the first of them. Means in ms of processor time,
 * which hardly depend on what else the machine does.
 */

import { checks } from '../../src/checks/all.ts';
import type { IssueCode } from '../../src/core/issue-kinds.ts';
import { parseSpec } from '../../src/spec/parse.ts';
import { SpecSource } from '../../src/spec/yaml/source.ts';
import { loadUses } from '../../src/spec/files/used-files.ts';
import { buildTag } from '../../src/tag/build.ts';
import { StageCache } from '../../src/tag/cache.ts';
import { loadFiles } from '../../src/tag/load.ts';
import type { Tag } from '../../src/tag/tag.ts';
import { FontLibrary } from '../../src/text/font-library.ts';
import { packagedFontFiles } from '../fonts/font-files.ts';

const rounds = 16;
const words = [
  'Wordsmithing',
  'Seedlibrary',
  'Greenhouses',
  'Marigolds',
  'Lovageleaves',
  'Beanflowers',
  'Quincejelly',
  'Thymebundle',
];

const head = 'tagwright: 1\nstock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}\ntie: {twine: 2 mm}\nshapes:\n';
const cases: Readonly<Record<string, string>> = {
  'script with a ring': `${head}  name: {text: WORD, font: Pacifico, width: 110 mm, grow: 0.4 mm}\npieces:\n  tag: {body: [name], hanger: {ring: {at: left}}}\n`,
  'script on a backing': `${head}  name: {text: WORD, font: Pacifico, width: 110 mm}\n  back: {around: name, by: 6 mm}\npieces:\n  tag: {body: [back], engrave: [name], hanger: {hole: {at: left}}}\n`,
  'glued letters': `${head}  name: {text: WORD, font: Nunito, weight: 800, width: 110 mm}\n  back: {around: name, by: 6 mm}\npieces:\n  tag: {body: [back], score: [{from: name, grow: -0.5 mm}], hanger: {hole: {at: left}}}\n  letters: {body: [name], parts: many, glue_to: tag}\n`,
};

const files = packagedFontFiles();
const library = new FontLibrary(files);
const cache = new StageCache();
const checkpoint = () => Promise.resolve();

async function made(text: string): Promise<Tag> {
  const unread = new SpecSource(text);
  const uses = await loadUses(unread, { read: () => Promise.reject(new Error('no files')), locate: () => undefined });
  const { model } = parseSpec(unread, uses, 0);
  const loaded = await loadFiles(model!, {
    library,
    read: (path) => files.read(path),
    beside: () => Promise.resolve([]),
    locate: () => undefined,
  });
  return buildTag(model!, {
    cache,
    font: (asked) => loaded.fonts.get(asked),
    drawing: (file) => loaded.drawings.get(file),
    report: () => undefined,
    minWeb: model!.stock.minWeb,
    checkpoint,
  });
}

function spent(run: () => void): number {
  const start = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Whether a name can be read, and what is plainly wrong: together at most 4 ms on a script of twelve letters. */
const judging = new Set<IssueCode>([
  'hard-to-read',
  'marks-overlap',
  'cut-off-body',
  'off-backing',
  'pieces-overlap',
  'sharp-point',
  'hangs-askew',
  'hard-to-scan',
]);

for (const [name, text] of Object.entries(cases)) {
  const times = new Map([...checks.keys()].map((code) => [code, [] as number[]]));
  for (let round = 0; round < 2 * rounds; round++) {
    const tag = await made(
      text.replace('WORD', `${words[round % words.length]!}${'abcd'[Math.floor(round / words.length)]!}`),
    );
    for (const [code, check] of checks) {
      const ms = spent(() => check(tag));
      // The first half warms the code.
      if (round >= rounds) times.get(code)!.push(ms);
    }
  }
  const means = [...times].map(([each, values]) => ({ each, ms: mean(values) }));
  const sumOf = (list: typeof means): string => list.reduce((total, { ms }) => total + ms, 0).toFixed(1);
  const slowest = means.filter(({ ms }) => ms >= 0.05).map(({ each, ms }) => `${each} ${ms.toFixed(1)}`);
  console.log(
    `${name.padEnd(22)} all ${sumOf(means)} ms, judging ${sumOf(means.filter(({ each }) => judging.has(each)))}: ${slowest.join(', ')}`,
  );
}
