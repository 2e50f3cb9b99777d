/** What the guide and the README show is true: their specs, their rows of generators, the command line's words. */

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { usage } from '../../../src/cli/usage.ts';
import { generatorKeys } from '../../../src/spec/read/read-generator.ts';
import { newEngine, report } from '../support/engine.ts';

const root = join(import.meta.dirname, '..', '..', '..');
const folder = join(root, 'src', 'guide');
const page = (name: string): string => readFileSync(join(folder, name), 'utf8');
const names = readdirSync(folder).filter((name) => name.endsWith('.md'));

/** Whole specs, out of the lists they may stand in. */
function specsIn(text: string): string[] {
  return [...text.matchAll(/^( *)```yaml\n([^]*?)^ *```$/gm)]
    .map(([, indent = '', spec = '']) => spec.replaceAll(new RegExp(`^${indent}`, 'gm'), ''))
    .filter((spec) => /^pieces:/m.test(spec) && /^tagwright: 1$/m.test(spec));
}

const shared = /^# house-style\.yaml\n[^]*?(?=^```)/m.exec(page('language.md'))![0];
const engine = newEngine({
  'house-style.yaml': shared,
  'leaf.svg': /^```svg\n([^]*?)^```/m.exec(page('recipes.md'))![1]!,
});

describe('The specs that are shown', () => {
  const shown = [
    ...names.flatMap((name) => specsIn(page(name)).map((spec) => [name, spec] as const)),
    ...['README.md', 'src/vscode/listing/page.md'].flatMap((name) =>
      specsIn(readFileSync(join(root, name), 'utf8')).map((spec) => [name, spec] as const),
    ),
  ];

  it('are several', () => {
    assert.ok(shown.length > 3);
  });

  for (const [name, spec] of shown)
    it(`in ${name} have nothing wrong with them`, async () => {
      const made = await report(spec, engine);
      assert.deepEqual(
        made.issues.map(({ message }) => message),
        [],
      );
      assert.ok(made.tag);
    });
});

describe('The generators that are shown', () => {
  const rows = [...page('language.md').matchAll(/^\| `(\w+)` \| (`\{.*?) \| .* \|$/gm)];

  it('are all there are', () => {
    assert.deepEqual(rows.map(([, key = '']) => key).sort(), [...generatorKeys].sort());
  });

  for (const [, key = '', cell = ''] of rows)
    for (const [, shape] of cell.matchAll(/`(\{.*?\})`/g))
      it(`make what they say: ${shape}`, async () => {
        const spec = `tagwright: 1
shapes:
  word: {text: Sorrel, font: Alfa Slab One, width: 60 mm}
  plate: {rectangle: [60 mm, 30 mm]}
  disc: {ellipse: 40 mm}
  dot: {ellipse: 3 mm}
  oval: {oval: {size: [60 mm, 40 mm]}}
  neck: {rectangle: [26 mm, 18 mm], radius: 6 mm}
  body: {rectangle: [84 mm, 40 mm], radius: 6 mm}
  shown: ${shape}
pieces:
  tag: {body: [${key === 'stick' ? 'plate, shown' : 'shown'}], parts: many}
`;
        const made = await report(spec, engine);
        assert.deepEqual(
          made.issues.filter(({ severity }) => severity === 'error').map(({ message }) => message),
          [],
        );
        assert.ok(made.tag!.pieces[0]!.region.length > 0, key);
      });
});

describe('The page on the command line', () => {
  const text = page('command-line.md');

  it('has every command and every option, and no others', () => {
    const commands = [...usage.matchAll(/^ {2}tagwright ([\w-]+)/gm)].map(([, command]) => command!);
    const options = [...new Set([...usage.matchAll(/--[a-z-]+/g)].map(([option]) => option))];
    assert.ok(commands.length === 8 && options.length > 8);
    assert.deepEqual(
      [...text.matchAll(/^\| `([\w-]+)` +\| [a-z]+ .*\|$/gm)].map(([, command]) => command).slice(0, 8),
      commands,
    );
    const shown = [...text.matchAll(/^\| `(--[a-z-]+)/gm)].map(([, option]) => option!);
    assert.deepEqual(shown.sort(), options.sort());
  });
});
