/**
 * From an edit to the finished scene, stage by stage, for every sample: `npm run bench`.
 *
 * cold: the first computation of a fresh engine (fonts opened, code not yet warmed by the runtime).
 * lettering: warm, after a change of the text, so that everything made from it is made anew.
 * figure: warm, after a change of one length that no lettering hangs on.
 * Then completion and hover at every offset of every sample.
 * Times in ms; p50 and p95 over the rounds. The scene for the preview's page is counted in `total`.
 */

import { mkdtempSync, cpSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Engine } from '../../src/engine/engine.ts';
import type { Report } from '../../src/engine/engine.ts';
import { sceneOf } from '../../src/scene/scene.ts';
import { bundledFileName, bundledFonts } from '../../src/text/bundled-fonts.ts';
import { languageTimes } from './language.ts';
import { nodeFontFiles } from '../../src/text/node-font-files.ts';

const rounds = 40;
const root = new URL('../../', import.meta.url).pathname;

/** Each round another word of about the same length, so that no round finds the last one's letters. */
const words = ['Marigold', 'Angelica', 'Nasturtium', 'Calendula', 'Chamomile', 'Lavender', 'Valerian', 'Hollyhock'];

/** The sizing case: a script word of twelve letters with a ring. */
const twelveLetters = `tagwright: 1
stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}
tie: {twine: 2 mm}
shapes:
  name: {text: Wordsmithing, font: Pacifico, width: 110 mm, grow: 0.4 mm}
pieces:
  tag: {body: [name], hanger: {ring: {at: left}}}
`;

/** Fitted where it can be largest: in a heart, and on a plate with a hole that stands free. */
const fitted = (plate: string, hanger: string): string => `tagwright: 1
tie: {twine: 2 mm}
shapes:
  plate: ${plate}
  name: {text: Wordsmithing, font: Pacifico, fit: {in: plate, margin: 4 mm, clear: 2 mm}}
pieces:
  tag: {body: [plate], engrave: [name], hanger: {${hanger}}}
`;

type Times = Report['timings'] & { readonly scene: number };

async function timed(engine: Engine, text: string): Promise<Times> {
  const report = await engine.compute(text, { locate: () => undefined });
  const start = performance.now();
  if (report.tag) sceneOf(report.tag, (path) => report.source.range(path).start);
  const scene = performance.now() - start;
  return { ...report.timings, scene, total: report.timings.total + scene };
}

function percentile(values: readonly number[], share: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(1);
}

function print(name: string, kind: string, times: readonly Times[]): void {
  const cells = (['read', 'load', 'make', 'check', 'scene', 'total'] as const).map((stage) => {
    const values = times.map((time) => time[stage]);
    return `${percentile(values, 0.5)}/${percentile(values, 0.95)}`.padStart(14);
  });
  console.log(`${name.padEnd(26)} ${kind.padEnd(10)}${cells.join('')}`);
}

const lettering = (text: string, round: number): string =>
  text.replace(
    /text: [^,}\n]+/,
    () => `text: ${words[round % words.length]!}${'abcdefgh'[Math.floor(round / words.length)]!}`,
  );

/** The kerf is used at export only; the tie decides the hanger; either way no letter is set anew. */
const figure = (text: string, round: number): string =>
  text.replace(
    /(twine|ribbon): [\d.]+ mm/,
    (_, kind: string) => `${kind}: ${(kind === 'twine' ? 1 : 6) + round / 100} mm`,
  );

const fonts = mkdtempSync(join(tmpdir(), 'tagwright-bench-'));
try {
  for (const font of bundledFonts) {
    for (const face of font.faces)
      cpSync(join(root, 'node_modules', font.package, face.file), join(fonts, bundledFileName(face)));
  }
  const samples = readdirSync(join(root, 'samples')).filter((name) => name.endsWith('.tag.yaml'));
  const cases = [
    { name: '12 letters with a ring', text: twelveLetters },
    { name: '12 letters in a heart', text: fitted('{heart: 60 mm}', 'ring: top') },
    {
      name: '12 letters beside a hole',
      text: fitted('{rectangle: [90 mm, 40 mm], radius: 5 mm}', 'hole: {at: {right: 20 mm}}'),
    },
    ...samples.map((name) => ({ name, text: readFileSync(join(root, 'samples', name), 'utf8') })),
  ];
  console.log(
    `${'p50/p95 in ms'.padEnd(37)}${['read', 'load', 'make', 'check', 'scene', 'total'].map((stage) => stage.padStart(14)).join('')}`,
  );
  for (const { name, text } of cases) {
    print(name, 'cold', [await timed(new Engine(nodeFontFiles(fonts)), text)]);
    const engine = new Engine(nodeFontFiles(fonts));
    for (let round = 0; round < 10; round++) await timed(engine, lettering(text, words.length * 6 + round));
    for (const [kind, edit] of [
      ['lettering', lettering],
      ['figure', figure],
    ] as const) {
      const times: Times[] = [];
      for (let round = 0; round < rounds; round++) times.push(await timed(engine, edit(text, round)));
      print(name, kind, times);
    }
  }
  const times = await languageTimes(join(root, 'samples'), new Engine(nodeFontFiles(fonts)));
  for (const [name, values] of times) {
    const [p50, p95] = [percentile(values, 0.5), percentile(values, 0.95)];
    console.log(`${name} at ${values.length} offsets: p50 ${p50}, p95 ${p95} ms`);
  }
} finally {
  rmSync(fonts, { recursive: true });
}
