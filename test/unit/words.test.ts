/** What users read keeps to one word for one thing: strings of the code, pages of the guide, the manifest and the schemas. */

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync, Visitor } from 'oxc-parser';
import { tally } from '../../src/core/issue.ts';
import { stateOf } from '../../src/language/hover/tag-state.ts';
import { lensesOf } from '../../src/language/navigation/lenses.ts';
import { pinsOf } from '../../src/scene/pins.ts';
import { sceneSentence } from '../../webview/preview/announcer.ts';
import { report, specOf } from './support/engine.ts';

const root = join(import.meta.dirname, '..', '..');

/** The glossary: what is not said, and what is said instead. */
const glossary: readonly (readonly [not: RegExp, but: string])[] = [
  [/\b(findings?(?! your way)|issues?)\b/i, 'problem'],
  [/\b(tells|told)\b/i, 'says, shows, reports'],
  [/\bmend(s|ed|ing)?\b/i, 'fix'],
  [/\bunless said\b/i, 'default'],
  [/\banew\b/i, 'again'],
  [/\bis wanted\b/i, 'minimum'],
  [/\bgoes on the sheet\b/i, 'fits the sheet'],
  [/\bwithout a source\b/i, 'rule of thumb, no source'],
  [/\bthe figure\b/i, 'number'],
  [/\b(centered|centering)\b/, 'centred'],
  [/\b(islands?|components?|loose bits?)\b/i, 'part'],
  [/\bcounter-?shapes?\b/i, 'counter'],
  [/\b(parser|token|null|NaN|\w+ is undefined|regex)\b/, 'what the user wrote, and what is wrong with it'],
];

interface Said {
  readonly place: string;
  readonly text: string;
}

const sourcesIn = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.startsWith('dev'))
    .map((name) => join(folder, name));

/** Strings and parts of templates with more than one word: names in the code have one. */
function sentencesOf(file: string): Said[] {
  const found: Said[] = [];
  const add = (said: unknown): void => {
    if (typeof said !== 'string') return;
    const text = said.replaceAll(/<[^>]*>|^[^<]*>|<[^>]*$/g, ' ');
    if (/\S\s+\S/.test(text)) found.push({ place: file, text });
  };
  const { program } = parseSync(file, readFileSync(join(root, file), 'utf8'));
  new Visitor({
    Literal: ({ value }) => {
      add(value);
    },
    TemplateElement: ({ value }) => {
      add(value.cooked);
    },
  }).visit(program);
  return found;
}

/** Every string under these keys, however deep. */
function stringsUnder(value: unknown, keys: RegExp, place: string): Said[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => [
    ...(typeof each === 'string' && keys.test(key) ? [{ place: `${place}: ${key}`, text: each }] : []),
    ...stringsUnder(each, keys, place),
  ]);
}

/** Paragraphs without what stands in backticks, which may be a key or a file’s name. */
function paragraphsOf(file: string): Said[] {
  const text = readFileSync(join(root, file), 'utf8').replaceAll(/```[\s\S]*?```|`[^`]*`|\]\([^)]*\)/g, ' ');
  return text.split(/\n\s*\n/).map((paragraph) => ({ place: file, text: paragraph.replaceAll(/\s+/g, ' ') }));
}

const pagesIn = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md') && !name.startsWith('design'))
    .map((name) => join(folder, name));

describe('What users read', () => {
  const json = (file: string): unknown => JSON.parse(readFileSync(join(root, file), 'utf8'));
  const schemas = readdirSync(join(root, 'schemas')).map((name) => join('schemas', name));
  const all: Readonly<Record<string, readonly Said[]>> = {
    'the code': [...sourcesIn('src'), ...sourcesIn('webview')].flatMap(sentencesOf),
    'the guide and README': ['README.md', ...pagesIn('src/guide')].flatMap(paragraphsOf),
    'the manifest': stringsUnder(json('package.json'), /title|description|displayName|name/i, 'package.json'),
    'the schemas': schemas.flatMap((file) => stringsUnder(json(file), /description|title/i, file)),
  };

  for (const [where, said] of Object.entries(all))
    it(`in ${where} keeps to the glossary`, () => {
      assert.ok(said.length > 30, `${said.length} sentences were read`);
      const faults = said.flatMap(({ place, text }) =>
        glossary.flatMap(([not, but]) => {
          const match = not.exec(text);
          return match ? [`${place}: “${match[0]}” (say: ${but}) in “${text.trim().slice(0, 120)}”`] : [];
        }),
      );
      assert.deepEqual(faults, []);
    });

  it('counts the same problems above a piece, in the status bar and in the preview, whatever their severity', async () => {
    const shapes = ['plate: {rectangle: [60, 20]}', 'dot: {ellipse: 9, nudge: {up: 30}}'];
    const specs = [
      specOf(shapes, 'body: [plate], hanger: {hole: {opening: 4, at: left}}'),
      specOf(shapes, 'body: [plate, dot]'),
      specOf(shapes, 'body: [plate], hanger: {hole: {diameter: 4, at: top}}'),
    ];
    const severities = new Set<string>();
    for (const text of specs) {
      const made = await report(text);
      const { issues, tag, source } = made;
      for (const { severity } of issues) severities.add(severity);
      const pins = pinsOf(issues, () => 1);
      const { long, short } = stateOf(issues, tag, false);
      const scene = { type: 'scene', source: '', fileName: '', version: 1, stale: false, pins, accepted: [] } as const;
      const spoken = sceneSentence(scene);
      const [lens] = lensesOf(made, source);
      if (issues.length === 0) {
        for (const words of [long, spoken, lens!.text]) assert.match(words, /no problems/);
        continue;
      }
      const inAll = `${issues.length} problem${issues.length === 1 ? '' : 's'}`;
      assert.deepEqual([short, long], [inAll, tally(issues)]);
      assert.ok(spoken.includes(inAll), spoken);
      assert.ok(lens!.text.endsWith(tally(issues).replaceAll(', ', ' · ')), lens!.text);
    }
    assert.ok(severities.has('error') && severities.has('info'), [...severities].join(' '));
  });
});
