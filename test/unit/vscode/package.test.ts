/** The package, unpacked again: what the editor shows of the extension, and every link and file that it names. */

import { createVSIX } from '@vscode/vsce';
import assert from 'node:assert/strict';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, posix } from 'node:path';
import { unzipSync } from 'fflate';
import { PNG } from 'pngjs';
import { copyAssets } from '../../../src/dev/assets.ts';
import { iconPng } from '../../../src/dev/icon.ts';

const root = join(import.meta.dirname, '..', '..', '..');
const readmePath = 'src/vscode/listing/page.md';

interface Manifest {
  readonly icon: string;
  readonly main: string;
  readonly browser: string;
  readonly bin: Readonly<Record<string, string>>;
  readonly keywords: readonly string[];
  readonly galleryBanner: { readonly color: string; readonly theme: string };
  readonly scripts?: Readonly<Record<string, string>>;
  readonly contributes: {
    readonly commands: readonly { readonly title: string; readonly category: string }[];
    readonly grammars: readonly { readonly path: string }[];
    readonly languages: readonly { readonly configuration: string }[];
    readonly yamlValidation: readonly { readonly url: string }[];
    readonly walkthroughs: readonly { readonly steps: readonly { readonly media: { readonly image: string } }[] }[];
  };
}

const { scripts, ...manifest } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Manifest;
const entries = [manifest.main, manifest.browser, ...Object.values(manifest.bin)];

/** As `npm run package` packs it, but for the bundles, which nothing here reads: they are empty. */
async function packed(): Promise<ReadonlyMap<string, Uint8Array>> {
  const cwd = mkdtempSync(join(tmpdir(), 'tagwright-package-'));
  try {
    for (const name of ['CHANGELOG.md', 'README.md', 'LICENSE', '.vscodeignore', 'schemas', 'samples', 'src'])
      cpSync(join(root, name), join(cwd, name), { recursive: true });
    writeFileSync(join(cwd, 'package.json'), JSON.stringify(manifest));
    copyAssets(join(cwd, 'dist'));
    for (const entry of entries) {
      mkdirSync(join(cwd, posix.dirname(entry)), { recursive: true });
      writeFileSync(join(cwd, entry), '');
    }
    const packagePath = join(cwd, 'tagwright.vsix');
    await createVSIX({
      cwd,
      packagePath,
      readmePath,
      dependencies: false,
      allowMissingRepository: true,
      rewriteRelativeLinks: false,
    });
    return new Map(Object.entries(unzipSync(readFileSync(packagePath))));
  } finally {
    rmSync(cwd, { recursive: true, force: true });
  }
}

/** Of links and pictures, without what stands in code. */
function targetsIn(markdown: string): string[] {
  const prose = markdown.replaceAll(/^ *```[^]*?^ *```$/gm, '').replaceAll(/`[^`]*`/g, '');
  return [
    ...[...prose.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target!),
    ...[...prose.matchAll(/^\[[^\]]+\]: (\S+)$/gm)].map(([, target]) => target!),
  ];
}

describe('The package', () => {
  let files: ReadonlyMap<string, Uint8Array>;
  const text = (name: string): string => new TextDecoder().decode(files.get(`extension/${name}`));
  const has = (name: string): boolean => files.has(posix.join('extension', name));

  before(async function () {
    this.timeout(180_000);
    files = await packed();
  });

  it('is made by the script as it is here', () => {
    const { package: script = '' } = scripts!;
    for (const option of [`--readme-path ${readmePath}`, '--no-dependencies', '--no-rewrite-relative-links'])
      assert.ok(script.includes(option), option);
  });

  it('holds what its manifest names, and no sources', () => {
    const { icon, contributes } = manifest;
    const named = [
      ...entries,
      icon,
      ...contributes.grammars.map(({ path }) => path),
      ...contributes.languages.map(({ configuration }) => configuration),
      ...contributes.yamlValidation.map(({ url }) => url),
      ...contributes.walkthroughs.flatMap(({ steps }) => steps.map(({ media }) => media.image)),
    ];
    for (const name of named) assert.ok(has(name), name);
    assert.deepEqual(
      [...files.keys()].filter((name) => /^extension\/(src|test|node_modules|README\.md)\b/.test(name)),
      [],
    );
  });

  it('has no link in its pages that leads nowhere', () => {
    const pages = [...files.keys()]
      .filter((name) => name.endsWith('.md'))
      .map((name) => name.slice('extension/'.length));
    assert.ok(pages.includes('readme.md') && pages.includes('changelog.md') && pages.includes('dist/guide/index.md'));
    let followed = 0;
    for (const page of pages)
      for (const target of targetsIn(text(page)).filter((each) => !/^(https:|#)/.test(each))) {
        assert.ok(has(posix.join(posix.dirname(page), target.split('#')[0]!)), `${page}: ${target}`);
        followed += 1;
      }
    assert.ok(followed > 100, String(followed));
  });

  // The editor shows pictures there from the web alone, not from beside the page nor from within it, and opens links to the web
  // alone (seen in VS Code 1.139: what is written as `data:` comes out as a broken picture).
  it('has a page that asks for nothing the editor does not show there', () => {
    assert.deepEqual(
      targetsIn(text('readme.md')).filter((target) => !target.startsWith('https:')),
      [],
    );
    assert.doesNotMatch(text('readme.md'), /<img|<svg/);
  });

  it('has a page for makers, not for developers', () => {
    const page = text('readme.md');
    assert.doesNotMatch(page, /\bnpm\b|```sh|node_modules|DEVELOPERS/);
    for (const caution of ['**Never leave a running job alone**', '**Never cut** PVC'])
      assert.ok(page.includes(caution));
  });

  it('names commands only that there are, in every page', () => {
    const titles = manifest.contributes.commands.map(({ category, title }) => `${category}: ${title}`);
    const pages = [...files.keys()].filter((name) => name.endsWith('.md') && !name.includes('changelog'));
    const named = pages.flatMap((name) =>
      [...text(name.slice('extension/'.length)).matchAll(/\*(Tagwright:[^*]+)\*/g)].map(([, words]) =>
        words!.replaceAll(/\s+/g, ' '),
      ),
    );
    assert.ok(named.length > 15, String(named.length));
    for (const words of named) assert.ok(titles.includes(words), words);
  });

  it('has an icon of 256 pixels, as it is drawn', () => {
    const shown = PNG.sync.read(Buffer.from(files.get(`extension/${manifest.icon}`)!));
    assert.deepEqual([shown.width, shown.height], [256, 256]);
    const drawn = PNG.sync.read(Buffer.from(iconPng()));
    assert.equal(Buffer.compare(shown.data, drawn.data), 0, 'npm run icon draws it again');
  });

  it('has a banner in the colour of its icon, and words to be found by', () => {
    assert.ok(readFileSync(join(root, 'src/vscode/listing/icon.svg'), 'utf8').includes(manifest.galleryBanner.color));
    assert.ok(manifest.keywords.length > 4);
  });
});
