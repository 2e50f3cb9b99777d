/**
 * Builds everything the extension and the command line need into `dist/`:
 *
 *     start.cjs  extension.cjs  nest-thread.mjs  cli.mjs  harfbuzz.mjs  harfbuzz.wasm  opentype.mjs  woff2.mjs  dxf.mjs  pdf-lib.mjs  resvg.mjs  resvg.wasm
 *     web/start.js  web/extension.js  web/nest-thread.js  webview/  fonts/  guide/  icon.png  samples.json  third-party-notices.txt
 *
 * `--watch` rebuilds when sources or schemas change; `--minify` is for the package.
 */

import * as esbuild from 'esbuild';
import { rmSync, watch, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { allWithin } from './all-within.ts';
import { copyAssets } from './assets.ts';
import { generate, schemaFile } from './generate.ts';
import { thirdPartyNotices } from './notices.ts';

const root = join(import.meta.dirname, '..', '..');
const dist = join(root, 'dist');

/**
 * Libraries with a file of their own, loaded at run time by `import()` from beside the bundle that asks for them.
 * harfbuzzjs awaits its WebAssembly at the top level of its module, which is impossible in a CommonJS bundle; the
 * others are large and not needed at startup, only with the first font, rarely, or when a file is written.
 */
const apart: Readonly<Record<string, string>> = {
  harfbuzzjs: 'harfbuzz.mjs',
  'opentype.js/dist/opentype.mjs': 'opentype.mjs',
  'wawoff2/decompress.js': 'woff2.mjs',
  '@tarikjabiri/dxf': 'dxf.mjs',
  '@cantoo/pdf-lib': 'pdf-lib.mjs',
  '@resvg/resvg-wasm': 'resvg.mjs',
};

/** The webviews, each with a script and a style sheet. */
const pages = [
  { folder: 'preview', name: 'main' },
  { folder: 'samples', name: 'samples' },
  { folder: 'sheets', name: 'sheets' },
];

const kept: esbuild.Plugin = {
  name: 'kept-apart',
  setup(build) {
    build.onResolve({ filter: /^[@a-z]/ }, ({ path }) => {
      const file = apart[path];
      return file === undefined ? undefined : { path: `./${file}`, external: true };
    });
  },
};

export async function buildAll(options: { minify?: boolean; watch?: boolean } = {}): Promise<void> {
  await generate();
  // A package must not contain leftovers; otherwise the folder stays, because a running editor keeps reading it.
  if (options.minify) rmSync(dist, { recursive: true, force: true });
  copyAssets(dist);

  const bundles = bundleOptions(options.minify ?? false);
  if (!options.watch) {
    const results = await Promise.all(bundles.map((bundle) => esbuild.build(bundle)));
    const inputs = results.flatMap((result) => Object.keys(result.metafile?.inputs ?? {}));
    writeFileSync(join(dist, 'third-party-notices.txt'), thirdPartyNotices(root, inputs));
    return;
  }
  const contexts = await Promise.all(bundles.map((bundle) => esbuild.context(bundle)));
  await Promise.all(contexts.map((context) => context.watch()));
  watch(schemaFile, () => {
    // A half-written schema may not parse; the next save tries again.
    generate().catch((error: unknown) => {
      console.error(error);
    });
  });
}

function bundleOptions(minify: boolean): esbuild.BuildOptions[] {
  const common: esbuild.BuildOptions = {
    absWorkingDir: root,
    bundle: true,
    minify,
    sourcemap: !minify,
    metafile: true,
    logLevel: 'warning',
    legalComments: 'none',
  };
  const node: esbuild.BuildOptions = {
    ...common,
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
    plugins: [kept],
  };
  // Both use the browser builds of libraries, which are ES modules and start faster.
  const extension: esbuild.BuildOptions = {
    ...common,
    platform: 'browser',
    target: 'es2022',
    format: 'cjs',
    external: ['vscode'],
  };
  // CommonJS packages in an ES module bundle still call `require` for Node's own modules.
  const banner = {
    js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
  };
  return [
    {
      ...extension,
      entryPoints: ['src/vscode/start-node.ts'],
      outfile: 'dist/start.cjs',
      external: ['vscode', 'node:*', './extension.cjs'],
    },
    { ...extension, entryPoints: ['src/vscode/extension.ts'], outfile: 'dist/extension.cjs', plugins: [kept] },
    { ...extension, entryPoints: ['src/vscode/start-web.ts'], outfile: 'dist/web/start.js' },
    { ...extension, entryPoints: ['src/vscode/extension.ts'], outfile: 'dist/web/extension.js', plugins: [allWithin] },
    {
      ...extension,
      entryPoints: ['src/nesting/threads/web-serve.ts'],
      outfile: 'dist/web/nest-thread.js',
      format: 'iife',
    },
    { ...node, entryPoints: ['src/nesting/threads/node-serve.ts'], outfile: 'dist/nest-thread.mjs', format: 'esm' },
    { ...node, entryPoints: ['src/cli/main.ts'], outfile: 'dist/cli.mjs', format: 'esm', banner },
    ...Object.entries(apart).map(([library, file]): esbuild.BuildOptions => {
      // wawoff2 asks for its folder but reads nothing from it: its WebAssembly is built in.
      const define = { __dirname: '"."' };
      return { ...node, entryPoints: [library], outfile: `dist/${file}`, format: 'esm', banner, plugins: [], define };
    }),
    {
      ...common,
      entryPoints: pages.flatMap(({ folder, name }) =>
        ['ts', 'css'].map((kind) => ({ in: `webview/${folder}/${name}.${kind}`, out: name })),
      ),
      outdir: 'dist/webview',
      platform: 'browser',
      target: 'es2022',
      format: 'iife',
    },
  ];
}

if (process.argv[1] === import.meta.filename) {
  try {
    await buildAll({ minify: process.argv.includes('--minify'), watch: process.argv.includes('--watch') });
  } catch (error) {
    // esbuild has already printed its errors about source files.
    if (!(error instanceof Error && 'errors' in error)) throw error;
    process.exit(1);
  }
}
